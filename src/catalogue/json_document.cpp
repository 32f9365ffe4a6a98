#include "catalogue/json_document.h"

#include "catalogue/json_scanner.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fmt/format.h>
#include <numeric>

namespace throwline::catalogue {

namespace {

/// Enough to mend a file by; a hostile one could hold a million.
constexpr std::size_t kMostJsonErrors = 100;

/// Escapes one step of a pointer (RFC 6901, section 3).
void append_step(std::string& pointer, std::string_view key) {
    pointer.push_back('/');
    for (const char c : key) {
        if (c == '~' || c == '/') {
            pointer.append(c == '~' ? "~0" : "~1");
        } else {
            pointer.push_back(c);
        }
    }
}

class JsonReader {
  public:
    JsonReader(std::string_view text, const std::string& file) : scan_{text}, file_{file} {}

    Checked<JsonNode> document() {
        JsonNode root;
        scan_.skip_space();
        if (scan_.at_end()) {
            scan_.fail("the file is empty");
        } else if (value(root, 0)) {
            scan_.skip_space();
            if (!scan_.at_end()) {
                scan_.fail(fmt::format("expected the end of the file, found {}", scan_.found()));
            }
        }
        if (!scan_.fault().empty()) {
            report(scan_.fault(), scan_.fault_position(), pointer_);
        }
        if (!errors_.empty()) {
            return tl::unexpected<Errors>{std::move(errors_)};
        }
        return root;
    }

  private:
    void report(std::string message, TextPosition at, std::string pointer) {
        errors_.push_back({std::move(message), {file_, std::move(pointer), at.line, at.column}});
    }

    bool value(JsonNode& node, int depth) {
        const TextPosition at = scan_.here();
        node.line = at.line;
        node.column = at.column;
        if (++values_ > kMostJsonValues) {
            return scan_.fail(fmt::format("there are more than {} values", kMostJsonValues));
        }
        switch (scan_.peek()) {
        case '{':
            return deeper(depth) && object(node, depth + 1);
        case '[':
            return deeper(depth) && array(node, depth + 1);
        case '"':
            return string(node);
        default:
            return word(node) || number(node);
        }
    }

    bool deeper(int depth) {
        return depth < kDeepestJson
               || scan_.fail(fmt::format("values are nested more than {} deep", kDeepestJson));
    }

    bool word(JsonNode& node) {
        if (scan_.take_word("null")) {
            return true;
        }
        node.boolean = scan_.take_word("true");
        if (node.boolean || scan_.take_word("false")) {
            node.kind = JsonKind::boolean;
            return true;
        }
        return false;
    }

    bool string(JsonNode& node) {
        std::optional<std::string> text = scan_.string();
        if (!text) {
            return false;
        }
        node.kind = JsonKind::string;
        node.text = std::move(*text);
        return true;
    }

    bool number(JsonNode& node) {
        const char first = scan_.peek();
        if (first != '-' && (first < '0' || first > '9')) {
            return scan_.fail(fmt::format("expected a value, found {}", scan_.found()));
        }
        const std::optional<std::string_view> text = scan_.number();
        if (!text) {
            return false;
        }
        const auto [end, code] =
            std::from_chars(text->data(), text->data() + text->size(), node.number);
        if (code != std::errc{} || !std::isfinite(node.number)) {
            constexpr std::size_t kShown = 40;
            return scan_.fail(fmt::format("the number {} is too large or too small to be held",
                                          text->substr(0, kShown)));
        }
        node.kind = JsonKind::number;
        node.text = *text;
        return true;
    }

    bool array(JsonNode& node, int depth) {
        node.kind = JsonKind::array;
        scan_.take('[');
        scan_.skip_space();
        if (scan_.take(']')) {
            return true;
        }
        const std::size_t outer = pointer_.size();
        do {
            scan_.skip_space();
            pointer_.resize(outer);
            pointer_ += fmt::format("/{}", node.items.size());
            if (!value(node.items.emplace_back(), depth)) {
                return false;
            }
            scan_.skip_space();
        } while (scan_.take(','));
        return closed(']', outer);
    }

    bool object(JsonNode& node, int depth) {
        node.kind = JsonKind::object;
        scan_.take('{');
        scan_.skip_space();
        if (scan_.take('}')) {
            return true;
        }
        const std::size_t outer = pointer_.size();
        do {
            scan_.skip_space();
            pointer_.resize(outer);
            if (!member(node.members.emplace_back(), depth)) {
                return false;
            }
            scan_.skip_space();
        } while (scan_.take(','));
        return closed('}', outer) && (refuse_duplicates(node), true);
    }

    bool member(JsonMember& member, int depth) {
        const TextPosition at = scan_.here();
        member.line = at.line;
        member.column = at.column;
        if (scan_.peek() != '"') {
            return scan_.fail(fmt::format("expected a key in quotes, found {}", scan_.found()));
        }
        std::optional<std::string> key = scan_.string();
        if (!key) {
            return false;
        }
        member.key = std::move(*key);
        if (member.key.size() > kLongestJsonKey) {
            return scan_.fail(fmt::format("a key is longer than {} bytes", kLongestJsonKey));
        }
        append_step(pointer_, member.key);
        scan_.skip_space();
        if (!scan_.take(':')) {
            return scan_.fail(fmt::format("expected ':', found {}", scan_.found()));
        }
        scan_.skip_space();
        return value(member.value, depth);
    }

    bool closed(char bracket, std::size_t outer) {
        pointer_.resize(outer);
        return scan_.take(bracket)
               || scan_.fail(fmt::format("expected ',' or '{}', found {}", bracket, scan_.found()));
    }

    /// Sorted, so that an object with very many members does not cost their number squared.
    void refuse_duplicates(const JsonNode& node) {
        const std::vector<JsonMember>& members = node.members;
        std::vector<std::size_t> order(members.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return members[a].key < members[b].key;
        });
        for (std::size_t i = 1; i < order.size(); ++i) {
            const JsonMember& before = members[order[i - 1]];
            const JsonMember& again = members[order[i]];
            if (before.key == again.key && errors_.size() < kMostJsonErrors) {
                report(fmt::format("key \"{}\" is given twice, before in line {}", again.key,
                                   before.line),
                       {again.line, again.column}, pointer_to(pointer_, again.key));
            }
        }
    }

    JsonScanner scan_;
    const std::string& file_;
    Errors errors_;
    std::string pointer_;
    int values_ = 0;
};

} // namespace

const JsonNode* JsonNode::find(std::string_view key) const {
    const auto found = std::find_if(members.begin(), members.end(),
                                    [&](const JsonMember& member) { return member.key == key; });
    return found == members.end() ? nullptr : &found->value;
}

Checked<JsonNode> parse_json(std::string_view text, const std::string& file) {
    return JsonReader{text, file}.document();
}

std::string pointer_to(std::string_view parent, std::string_view key) {
    std::string pointer{parent};
    append_step(pointer, key);
    return pointer;
}

std::string pointer_to(std::string_view parent, std::size_t index) {
    return fmt::format("{}/{}", parent, index);
}

std::string_view name_of(JsonKind kind) {
    switch (kind) {
    case JsonKind::null:
        return "null";
    case JsonKind::boolean:
        return "true or false";
    case JsonKind::number:
        return "a number";
    case JsonKind::string:
        return "a string";
    case JsonKind::array:
        return "an array";
    case JsonKind::object:
        return "an object";
    }
    return "";
}

} // namespace throwline::catalogue
