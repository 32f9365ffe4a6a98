#include "catalogue/json_document.h"
#include "fuzz/property.h"
#include "fuzz/targets.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace throwline::fuzz {

namespace {

using catalogue::JsonKind;
using catalogue::JsonNode;
using Library = nlohmann::json;

/// Deeper than any value lies, so that the caller's own recursion is bounded.
void require_same(const JsonNode& node, const Library& other, int depth) {
    require(depth <= catalogue::kDeepestJson, "nesting is bounded");
    require(node.line > 0 && node.column > 0, "a value has a place");
    switch (node.kind) {
    case JsonKind::null:
        require(other.is_null(), "null is null");
        return;
    case JsonKind::boolean:
        require(other.is_boolean() && other.get<bool>() == node.boolean, "a boolean is kept");
        return;
    case JsonKind::number:
        require(std::isfinite(node.number), "a number is finite");
        require(other.is_number() && other.get<double>() == node.number, "a number is kept");
        return;
    case JsonKind::string:
        require(other.is_string() && other.get_ref<const std::string&>() == node.text,
                "a string is kept");
        return;
    case JsonKind::array:
        require(other.is_array() && other.size() == node.items.size(), "an array is kept");
        for (std::size_t i = 0; i < node.items.size(); ++i) {
            require_same(node.items[i], other[i], depth + 1);
        }
        return;
    case JsonKind::object:
        require(other.is_object() && other.size() == node.members.size(), "an object is kept");
        for (const catalogue::JsonMember& member : node.members) {
            require(other.contains(member.key), "a key is kept");
            require_same(member.value, other[member.key], depth + 1);
        }
        return;
    }
}

} // namespace

void json_input(std::string_view bytes) {
    const Checked<JsonNode> root = catalogue::parse_json(bytes, "input");
    if (!root) {
        require_readable(root.error());
        for (const Error& error : root.error()) {
            require(error.place.line > 0 && error.place.column > 0, "an error has a place");
        }
        return;
    }
    const Library other = Library::parse(bytes, nullptr, false);
    require(!other.is_discarded(), "what is accepted is JSON to others too");
    require_same(*root, other, 0);
}

} // namespace throwline::fuzz
