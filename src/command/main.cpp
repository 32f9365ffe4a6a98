#include "command/command.h"
#include "command/run.h"

#include <csignal>
#include <exception>
#include <fcntl.h>
#include <iostream>
#include <string>
#include <vector>

namespace {

/// Takes the numbers of standard streams that the caller closed, so that no file of ours gets one.
/// They are opened the wrong way round: using them must still fail.
void occupy_closed_streams() {
    for (int stream = 0; stream <= 2; ++stream) {
        if (fcntl(stream, F_GETFD) == -1) {
            open("/dev/null", stream == 0 ? O_WRONLY : O_RDONLY);
        }
    }
}

} // namespace

int main(int argc, char** argv) {
    occupy_closed_streams();
    // A reader that went away is noticed where the result is written, not by being killed.
    std::signal(SIGPIPE, SIG_IGN);
    try {
        const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
        return throwline::command::run(arguments, {std::cin, std::cout, std::cerr});
    } catch (const std::exception& fault) {
        std::cerr << "throwline: a fault in the program: " << fault.what() << '\n';
    } catch (...) {
        std::cerr << "throwline: a fault in the program\n";
    }
    return static_cast<int>(throwline::command::ExitCode::internal);
}
