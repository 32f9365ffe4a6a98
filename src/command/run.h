#pragma once

#include <iosfwd>
#include <span>
#include <string>

namespace throwline::command {

/// The three streams of a program.
struct Streams {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
};

/// Runs one command line, without the program's name. Results go to `out`, messages to `err`.
/// Returns an ExitCode. A result that cannot be written is the user's to put right: 2. Exceptions
/// pass through, since they are faults of ours.
int run(std::span<const std::string> arguments, Streams streams);

} // namespace throwline::command
