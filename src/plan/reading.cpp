#include "plan/reading.h"

#include "base/nearest_name.h"
#include "base/utf8.h"

#include <algorithm>
#include <fmt/format.h>
#include <tuple>

namespace throwline::plan {

namespace {

/// Edit distance costs the product of both lengths; nobody mistypes a longer name.
constexpr std::size_t kLongestGuess = 64;
/// Enough for any real plan; keeps a hostile one from costing minutes.
constexpr std::size_t kMostCandidates = 1000;

bool starts_with_pointer(std::string_view pointer, std::string_view parent) {
    return pointer.starts_with(parent)
           && (pointer.size() == parent.size() || pointer[parent.size()] == '/');
}

} // namespace

std::optional<Value> Value::member(std::string_view key) const {
    const catalogue::JsonNode* found = node->find(key);
    if (found == nullptr) {
        return std::nullopt;
    }
    return Value{found, catalogue::pointer_to(pointer, key)};
}

Value Value::item(std::size_t index) const {
    if (index >= node->items.size()) {
        return *this;
    }
    return {&node->items[index], catalogue::pointer_to(pointer, index)};
}

Value Value::at(std::string_view key) const {
    return member(key).value_or(*this);
}

void Reading::add(Error error) {
    if (is_full()) {
        ++left_out_;
    } else {
        errors_.push_back(std::move(error));
    }
}

void Reading::wrong(const Value& value, std::string message) {
    add({std::move(message), {file_, value.pointer, value.node->line, value.node->column}});
}

void Reading::wrong_key(const Value& object, const catalogue::JsonMember& member,
                        std::string message) {
    add({std::move(message),
         {file_, catalogue::pointer_to(object.pointer, member.key), member.line, member.column}});
}

void Reading::expected(const Value& value, std::string_view what) {
    wrong(value, fmt::format("expected {}, found {}", what, described(*value.node)));
}

bool Reading::is_spoilt(const Value& value) const {
    return std::any_of(errors_.begin(), errors_.end(), [&](const Error& error) {
        return starts_with_pointer(error.place.pointer, value.pointer);
    });
}

Errors Reading::errors() const {
    Errors sorted = errors_;
    std::stable_sort(sorted.begin(), sorted.end(), [](const Error& a, const Error& b) {
        return std::tie(a.place.line, a.place.column) < std::tie(b.place.line, b.place.column);
    });
    if (left_out_ > 0) {
        sorted.push_back({fmt::format("and {} more", left_out_), {file_, {}, 0, 0}});
    }
    return sorted;
}

std::string nearest_hint(std::string_view typed, std::span<const std::string> candidates) {
    if (typed.size() > kLongestGuess) {
        return {};
    }
    const std::string nearest =
        nearest_name(typed, candidates.first(std::min(candidates.size(), kMostCandidates)));
    return nearest.empty() ? std::string{} : fmt::format("; nearest is {}", in_quotes(nearest));
}

std::string listed(std::span<const std::string> names) {
    return fmt::format("{}", fmt::join(names, ", "));
}

std::string described(const catalogue::JsonNode& node) {
    switch (node.kind) {
    case catalogue::JsonKind::string:
        return in_quotes(node.text);
    case catalogue::JsonKind::number:
        return node.text.size() <= kLongestGuess ? node.text : std::string{"a number"};
    case catalogue::JsonKind::boolean:
        return node.boolean ? "true" : "false";
    case catalogue::JsonKind::null:
    case catalogue::JsonKind::array:
    case catalogue::JsonKind::object:
        return std::string{name_of(node.kind)};
    }
    return {};
}

} // namespace throwline::plan
