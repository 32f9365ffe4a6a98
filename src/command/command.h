#pragma once

#include "base/result.h"
#include "base/working.h"
#include "command/json_value.h"

#include <iosfwd>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace throwline::command {

class Arguments;

/// What the program returns to the shell.
enum class ExitCode {
    clean = 0,
    /// A check found errors that nobody has accepted.
    findings = 1,
    /// Something that the user must put right: usage, or a file that is unreadable, malformed or
    /// cannot be written.
    bad_input = 2,
    /// A fault of ours.
    internal = 70
};

/// What a command found out, in both shapes that it can be printed in.
struct Answer {
    /// Whole lines.
    std::string text;
    JsonValue::Object json;
    /// JSON that another room has written, whole lines; in place of `json`.
    std::optional<std::string> written_json = std::nullopt;
    /// Printed behind the text, or as `working` in JSON, when asked for with --working.
    std::vector<Working> workings;
    ExitCode code = ExitCode::clean;
};

/// An option as it is typed: {"--focal", "", "LENGTH", "focal length"}; without `value` it is a
/// switch.
struct Option {
    std::string_view name;
    /// Such as "-o"; empty for none.
    std::string_view short_name;
    /// What stands behind it, in capitals.
    std::string_view value;
    std::string_view help;
    bool repeatable = false;
};

/// One subcommand, as a value. Its help, the reading of its options and the list of all commands
/// are made from it.
struct Command {
    std::string_view name;
    /// What it answers, in a few words.
    std::string_view summary;
    /// What stands behind the name: "PLAN", "TEXT ...", "[TABLE]"; empty for nothing.
    std::string_view operands;
    /// How many operands there may be.
    int operands_min = 0;
    int operands_max = 0;
    std::vector<Option> options;
    /// One command line that works, shown in its help.
    std::string_view example;
    Checked<Answer> (*answer)(const Arguments& arguments, std::istream& in) = nullptr;
};

/// Options that several commands share.
inline constexpr Option kJson{"--json", "", "", "print JSON instead of text"};
inline constexpr Option kWorking{"--working", "", "", "show how each figure came about"};
inline constexpr Option kLensdata{"--lensdata", "", "FILE", "add your own items from a JSON table"};
inline constexpr Option kSystem{"--system", "", "SYSTEM", "metric or imperial"};

/// Every command, in the order of the help. Adding one is a file and a line.
std::span<const Command> all_commands();

} // namespace throwline::command
