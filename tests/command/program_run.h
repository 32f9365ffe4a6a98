#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <sys/resource.h>
#include <vector>

/// Runs the built program as a shell would.
namespace throwline::command_test {

/// How the program is started; what is left out is empty or without a limit.
struct ProgramStart {
    std::vector<std::string> arguments = {};
    /// Writes standard input into a descriptor, until it is done or nobody reads any more.
    std::function<void(int)> feed = {};
    /// Where standard output goes instead of into ProgramEnd::out.
    std::filesystem::path out = {};
    /// Largest file it may write, bytes; a write beyond fails with EFBIG, also for root.
    rlim_t largest_file = RLIM_INFINITY;
};

struct ProgramEnd {
    /// As the shell tells it: 128 and the signal's number when a signal ended the program.
    int code = 0;
    bool hung = false;
    std::string out;
    std::string err;
    /// Most memory that was in use at once.
    long peak_kib = 0;
};

/// `folder` takes the files that its output is caught in. A program that has not ended after a
/// minute counts as hung and is ended.
ProgramEnd run_program(const ProgramStart& start, const std::filesystem::path& folder);

/// Writes all of `text` `times` over; stops early when nobody reads any more.
void write_repeated(int descriptor, const std::string& text, std::size_t times);

} // namespace throwline::command_test
