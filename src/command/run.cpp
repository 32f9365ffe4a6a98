#include "command/run.h"

#include "command/command.h"
#include "command/help.h"
#include "command/parse_arguments.h"
#include "command/working_output.h"

#include <algorithm>
#include <fmt/format.h>
#include <istream>
#include <ostream>

namespace throwline::command {

namespace {

ExitCode report(const Errors& errors, std::ostream& err) {
    for (const Error& error : errors) {
        err << fmt::format("throwline: {}\n", text_of(error));
    }
    err.flush();
    return ExitCode::bad_input;
}

ExitCode print(const std::string& text, Streams streams, ExitCode code) {
    streams.out << text;
    streams.out.flush();
    if (!streams.out) {
        return report({{"the result cannot be written to standard output", {}}}, streams.err);
    }
    return code;
}

std::string shown(const Arguments& arguments, Answer answer) {
    const bool working = arguments.has(kWorking.name) && !answer.workings.empty();
    if (!arguments.has(kJson.name)) {
        return working ? fmt::format("{}\n{}", answer.text, working_text(answer.workings))
                       : answer.text;
    }
    if (answer.written_json) {
        return *answer.written_json;
    }
    if (working) {
        answer.json.emplace_back("working", working_json(answer.workings));
    }
    return text_of(JsonValue{std::move(answer.json)});
}

ExitCode run_command(const Command& command, std::span<const std::string> typed, Streams streams) {
    const Checked<Arguments> arguments = parse_arguments(command, typed);
    if (!arguments) {
        const ExitCode code = report(arguments.error(), streams.err);
        streams.err << fmt::format("throwline {} --help shows what it takes\n", command.name);
        return code;
    }
    if (arguments->has("--help")) {
        return print(help_text(command), streams, ExitCode::clean);
    }
    const Checked<Answer> answer = command.answer(*arguments, streams.in);
    if (!answer) {
        return report(answer.error(), streams.err);
    }
    return print(shown(*arguments, *answer), streams, answer->code);
}

ExitCode unknown_command(const std::string& typed, Streams streams) {
    std::vector<std::string> names;
    for (const Command& command : all_commands()) {
        names.emplace_back(command.name);
    }
    const bool option = typed.starts_with('-');
    if (option) {
        names = {"--help", "--version"};
    }
    return report({{fmt::format("there is no {} {}{}", option ? "option" : "command", typed,
                                suggestion(typed, names)),
                    {}}},
                  streams.err);
}

} // namespace

int run(std::span<const std::string> arguments, Streams streams) {
    const auto code = [&] {
        if (arguments.empty()) {
            streams.err << help_text(all_commands());
            return ExitCode::bad_input;
        }
        const std::string& first = arguments.front();
        if (first == "--help" || first == "-h") {
            return print(help_text(all_commands()), streams, ExitCode::clean);
        }
        if (first == "--version") {
            return print("throwline " THROWLINE_VERSION "\n", streams, ExitCode::clean);
        }
        const auto commands = all_commands();
        const auto command = std::find_if(commands.begin(), commands.end(),
                                          [&](const Command& c) { return c.name == first; });
        return command == commands.end() ? unknown_command(first, streams)
                                         : run_command(*command, arguments.subspan(1), streams);
    }();
    return static_cast<int>(code);
}

} // namespace throwline::command
