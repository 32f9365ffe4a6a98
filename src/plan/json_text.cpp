#include "plan/json_text.h"

#include <fmt/format.h>

namespace throwline::plan {

namespace {

std::string escaped(char c) {
    switch (c) {
    case '"':
        return "\\\"";
    case '\\':
        return "\\\\";
    case '\n':
        return "\\n";
    case '\t':
        return "\\t";
    case '\r':
        return "\\r";
    default:
        break;
    }
    const auto code = static_cast<unsigned char>(c);
    return code < 0x20U || code == 0x7fU ? fmt::format("\\u{:04x}", code) : std::string(1, c);
}

std::string array_text(const catalogue::JsonNode& node) {
    std::string text = "[";
    for (const catalogue::JsonNode& item : node.items) {
        text += (text.size() > 1 ? ", " : "") + json_text(item);
    }
    return text + "]";
}

std::string object_text(const catalogue::JsonNode& node) {
    std::string text = "{";
    for (const catalogue::JsonMember& member : node.members) {
        text += (text.size() > 1 ? ", " : "") + json_string(member.key) + ": "
                + json_text(member.value);
    }
    return text + "}";
}

} // namespace

std::string json_text(const catalogue::JsonNode& node) {
    switch (node.kind) {
    case catalogue::JsonKind::null:
        return "null";
    case catalogue::JsonKind::boolean:
        return node.boolean ? "true" : "false";
    case catalogue::JsonKind::number:
        return node.text;
    case catalogue::JsonKind::string:
        return json_string(node.text);
    case catalogue::JsonKind::array:
        return array_text(node);
    case catalogue::JsonKind::object:
        return object_text(node);
    }
    return {};
}

std::string json_string(std::string_view text) {
    std::string quoted = "\"";
    for (const char c : text) {
        quoted += escaped(c);
    }
    return quoted + "\"";
}

} // namespace throwline::plan
