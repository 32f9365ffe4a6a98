#include "command/program_run.h"

#include "command/call.h"

#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace throwline::command_test {

namespace {

namespace fs = std::filesystem;

/// Far above what any case takes, also on a loaded machine: it tells hanging from slow.
constexpr std::chrono::seconds kDeadline{60};

/// The child's side; only calls that are allowed between fork and exec.
[[noreturn]] void become_program(char* const* arguments, const std::array<int, 3>& streams,
                                 rlim_t largest_file) {
    for (int stream = 0; stream < 3; ++stream) {
        dup2(streams[static_cast<std::size_t>(stream)], stream);
    }
    const rlimit limit{largest_file, largest_file};
    setrlimit(RLIMIT_FSIZE, &limit);
    // Ignored, the limit is met as a failing write instead of a killed process.
    std::signal(SIGXFSZ, SIG_IGN);
    execv(THROWLINE_PROGRAM, arguments);
    _exit(127);
}

void wait_for(pid_t child, ProgramEnd& end) {
    const auto deadline = std::chrono::steady_clock::now() + kDeadline;
    int status = 0;
    rusage usage{};
    while (wait4(child, &status, WNOHANG, &usage) == 0) {
        if (!end.hung && std::chrono::steady_clock::now() > deadline) {
            end.hung = true;
            kill(child, SIGKILL);
        }
        std::this_thread::sleep_for(std::chrono::milliseconds{2});
    }
    constexpr int kSignalled = 128;
    end.code = WIFEXITED(status) ? WEXITSTATUS(status) : kSignalled + WTERMSIG(status);
    end.peak_kib = usage.ru_maxrss;
}

} // namespace

void write_repeated(int descriptor, const std::string& text, std::size_t times) {
    for (std::size_t i = 0; i < times; ++i) {
        std::string_view rest = text;
        while (!rest.empty()) {
            const ssize_t written = ::write(descriptor, rest.data(), rest.size());
            if (written <= 0) {
                return;
            }
            rest.remove_prefix(static_cast<std::size_t>(written));
        }
    }
}

ProgramEnd run_program(const ProgramStart& start, const fs::path& folder) {
    const fs::path out_file = start.out.empty() ? folder / "program.out" : start.out;
    const fs::path err_file = folder / "program.err";
    std::array<int, 2> feed{};
    EXPECT_EQ(pipe2(feed.data(), O_CLOEXEC), 0);
    constexpr int kNew = O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC;
    const std::array streams{feed[0], open(out_file.c_str(), kNew, 0600),
                             open(err_file.c_str(), kNew, 0600)};
    std::vector<std::string> words{THROWLINE_PROGRAM};
    words.insert(words.end(), start.arguments.begin(), start.arguments.end());
    std::vector<char*> pointers;
    for (std::string& word : words) {
        pointers.push_back(word.data());
    }
    pointers.push_back(nullptr);

    setenv("THROWLINE_LENSDATA", THROWLINE_SOURCE_DIR "/lensdata", 1);
    const pid_t child = fork();
    if (child == 0) {
        become_program(pointers.data(), streams, start.largest_file);
    }
    for (const int stream : streams) {
        close(stream);
    }
    std::signal(SIGPIPE, SIG_IGN);
    std::jthread feeder{[&start, end = feed[1]] {
        if (start.feed) {
            start.feed(end);
        }
        close(end);
    }};
    ProgramEnd end;
    wait_for(child, end);
    feeder.join();
    end.out = start.out.empty() ? read(out_file.string()) : std::string{};
    end.err = read(err_file.string());
    if (start.out.empty()) {
        fs::remove(out_file);
    }
    fs::remove(err_file);
    return end;
}

} // namespace throwline::command_test
