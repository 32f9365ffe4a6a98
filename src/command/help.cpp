#include "command/help.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::command {

namespace {

/// Two columns, the left one as wide as its widest entry.
std::string columns(const std::vector<std::pair<std::string, std::string>>& rows) {
    std::size_t width = 0;
    for (const auto& [left, right] : rows) {
        width = std::max(width, left.size());
    }
    std::string text;
    for (const auto& [left, right] : rows) {
        text += fmt::format("  {:<{}}  {}\n", left, width, right);
    }
    return text;
}

std::string typed_form(const Option& option) {
    std::string form{option.name};
    if (!option.short_name.empty()) {
        form = fmt::format("{}, {}", option.short_name, form);
    }
    return option.value.empty() ? form : fmt::format("{} {}", form, option.value);
}

} // namespace

std::string help_text(std::span<const Command> commands) {
    std::vector<std::pair<std::string, std::string>> rows;
    rows.reserve(commands.size());
    for (const Command& command : commands) {
        rows.emplace_back(command.name, command.summary);
    }
    return fmt::format(
        "Plans where cameras, people and lamps stand, and checks that it works.\n\n"
        "throwline COMMAND ...\n\n{}\n"
        "throwline COMMAND --help explains one; throwline --version tells which "
        "this is.\n"
        "Lengths carry their unit: 3.5m, 350cm, 11ft 6in, 6' 2 7/16\".\n"
        "Returns 0 when all is well, 1 when a check found errors that nobody has accepted "
        "or a room must be measured again, 2 when something must be put right first.\n",
        columns(rows));
}

std::string help_text(const Command& command) {
    std::string usage = fmt::format("throwline {}", command.name);
    if (!command.operands.empty()) {
        usage += fmt::format(" {}", command.operands);
    }
    std::vector<std::pair<std::string, std::string>> rows;
    rows.reserve(command.options.size());
    for (const Option& option : command.options) {
        rows.emplace_back(typed_form(option), option.help);
    }
    return fmt::format("{}\n\n{} [OPTION ...]\n\n{}\nFor example:\n  {}\n", command.summary, usage,
                       columns(rows), command.example);
}

} // namespace throwline::command
