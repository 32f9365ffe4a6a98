#include "command/working_output.h"

#include <fmt/format.h>

namespace throwline::command {

namespace {

std::string paragraph(const Working& working, const std::string& indent) {
    std::string text = fmt::format("{}{}\n", indent, working.formula);
    for (const WorkingTerm& term : working.inputs) {
        const std::string name =
            term.symbol.empty() ? term.name : fmt::format("{}, {}", term.symbol, term.name);
        text += fmt::format("{}  {}: {}\n", indent, name, term.value);
    }
    text += fmt::format("{}  result: {}\n", indent, working.result);
    return text + fmt::format("{}  source: {}\n", indent, working.source);
}

} // namespace

std::string working_text(std::span<const Working> workings, const std::string& indent) {
    std::string text;
    for (const Working& working : workings) {
        text += fmt::format("{}{}", text.empty() ? "" : "\n", paragraph(working, indent));
    }
    return text;
}

JsonValue working_json(const Working& working) {
    JsonValue::Array inputs;
    for (const WorkingTerm& term : working.inputs) {
        inputs.emplace_back(
            JsonValue::Object{{"symbol", term.symbol}, {"name", term.name}, {"value", term.value}});
    }
    return JsonValue::Object{{"formula", working.formula},
                             {"inputs", std::move(inputs)},
                             {"result", working.result},
                             {"source", working.source}};
}

JsonValue working_json(std::span<const Working> workings) {
    JsonValue::Array array;
    for (const Working& working : workings) {
        array.push_back(working_json(working));
    }
    return array;
}

} // namespace throwline::command
