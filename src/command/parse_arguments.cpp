#include "command/parse_arguments.h"

#include "base/nearest_name.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <fmt/format.h>

namespace throwline::command {

namespace {

/// Where the parser leaves an option's values. The map's nodes stay in place while it grows.
using Values = std::map<std::string, std::vector<std::string>, std::less<>>;

void declare(CLI::App& app, const Option& option, Values& values) {
    std::string names{option.name};
    if (!option.short_name.empty()) {
        names += fmt::format(",{}", option.short_name);
    }
    if (option.value.empty()) {
        app.add_flag(names);
    } else {
        // One value each time the option is typed.
        app.add_option(names, values[std::string{option.name}])->allow_extra_args(false);
    }
}

std::vector<std::string> option_names(const Command& command) {
    std::vector<std::string> names;
    names.reserve(command.options.size() + 1);
    for (const Option& option : command.options) {
        names.emplace_back(option.name);
    }
    names.emplace_back("--help");
    return names;
}

/// A dash in front of a number belongs to the number.
bool is_negative_number(std::string_view text) {
    if (text.size() < 2 || text[0] != '-') {
        return false;
    }
    const auto second = static_cast<unsigned char>(text[1]);
    constexpr unsigned char kFirstNonAscii = 0x80; // typographic fractions
    return (second >= '0' && second <= '9') || second == '.' || second >= kFirstNonAscii;
}

bool is_option_like(std::string_view text) {
    return text.size() > 1 && text[0] == '-' && !is_negative_number(text);
}

Error unknown_option(const Command& command, const std::string& typed) {
    const std::string name = typed.substr(0, typed.find('='));
    return {fmt::format("{} has no option {}{}", command.name, name,
                        suggestion(name, option_names(command))),
            {}};
}

void check_operands(const Command& command, const std::vector<std::string>& operands,
                    Errors& errors) {
    const auto count = static_cast<int>(operands.size());
    if (count < command.operands_min) {
        errors.push_back({fmt::format("{} needs {}", command.name, command.operands), {}});
    }
    if (count > command.operands_max) {
        const auto first = static_cast<std::size_t>(command.operands_max);
        errors.push_back({fmt::format("{} cannot use \"{}\"", command.name, operands[first]), {}});
    }
}

void check_repetition(const Command& command, const Values& values, Errors& errors) {
    for (const Option& option : command.options) {
        const auto typed = values.find(option.name);
        if (!option.repeatable && typed != values.end() && typed->second.size() > 1) {
            errors.push_back({fmt::format("{} is given more than once", option.name), {}});
        }
    }
}

/// Runs the parser over `typed`. Gives a sentence when it refuses.
std::optional<std::string> parse(CLI::App& app, std::span<const std::string> typed) {
    try {
        app.parse(std::vector<std::string>(typed.rbegin(), typed.rend()));
    } catch (const CLI::ArgumentMismatch& error) {
        // Its text begins with the option's name, and a colon.
        const std::string text = error.what();
        return fmt::format("{} needs a value behind it", text.substr(0, text.find(':')));
    } catch (const CLI::ParseError& error) {
        return error.what();
    }
    return std::nullopt;
}

Arguments::Options typed_options(const CLI::App& app, const Command& command, Values& values) {
    Arguments::Options options;
    for (const Option& option : command.options) {
        const std::string name{option.name};
        if (app.count(name) > 0) {
            options[name] = std::move(values[name]);
        }
    }
    if (app.count("--help") > 0) {
        options["--help"] = {};
    }
    return options;
}

} // namespace

std::string suggestion(std::string_view typed, std::span<const std::string> candidates) {
    const std::string nearest = nearest_name(typed, candidates);
    return nearest.empty() ? nearest : fmt::format("; did you mean {}?", nearest);
}

Checked<Arguments> parse_arguments(const Command& command, std::span<const std::string> typed) {
    CLI::App app;
    app.set_help_flag();
    app.add_flag("-h,--help");
    app.allow_extras();
    Values values;
    for (const Option& option : command.options) {
        declare(app, option, values);
    }
    const auto end_of_options = std::find(typed.begin(), typed.end(), "--");
    const auto before = typed.first(static_cast<std::size_t>(end_of_options - typed.begin()));
    if (const auto refusal = parse(app, before)) {
        return tl::unexpected{Errors{{*refusal, {}}}};
    }
    Errors errors;
    std::vector<std::string> operands;
    for (const std::string& extra : app.remaining()) {
        if (is_option_like(extra)) {
            errors.push_back(unknown_option(command, extra));
        } else {
            operands.push_back(extra);
        }
    }
    if (end_of_options != typed.end()) {
        operands.insert(operands.end(), std::next(end_of_options), typed.end());
    }
    check_repetition(command, values, errors);
    if (errors.empty() && app.count("--help") == 0) {
        check_operands(command, operands, errors);
    }
    if (!errors.empty()) {
        return tl::unexpected{std::move(errors)};
    }
    return Arguments{typed_options(app, command, values), std::move(operands)};
}

} // namespace throwline::command
