#pragma once

#include "base/result.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// JSON (RFC 8259) with the place of every value, so that whatever is wrong with a table or a plan
/// can be shown in its line. Reading it into typed values is left to the rooms that own the types.
namespace throwline::catalogue {

enum class JsonKind { null, boolean, number, string, array, object };

struct JsonMember;

/// One value and all it holds. Line and column (in characters) are those of its first character,
/// counted from 1.
struct JsonNode {
    JsonKind kind = JsonKind::null;
    bool boolean = false;
    /// Always finite.
    double number = 0.0;
    /// A string's value in valid UTF-8 without NUL, or a number exactly as it was written.
    std::string text;
    /// Of an array, in order.
    std::vector<JsonNode> items;
    /// Of an object, in the order of the file; no key twice.
    std::vector<JsonMember> members;
    int line = 0;
    int column = 0;

    bool is(JsonKind wanted) const { return kind == wanted; }
    /// The value of a key; null when this is no object or has no such key.
    const JsonNode* find(std::string_view key) const;
};

struct JsonMember {
    std::string key;
    JsonNode value;
    /// Of the key's opening quotation mark.
    int line = 0;
    int column = 0;
};

/// Deeper nesting is refused: no plan or table needs more, and recursion stays bounded.
inline constexpr int kDeepestJson = 64;
/// More values are refused: at about 100 bytes each the tree would outgrow small machines.
inline constexpr int kMostJsonValues = 2'000'000;
/// Bytes. Longer keys are refused, so that pointers and messages stay short.
inline constexpr std::size_t kLongestJsonKey = 1000;

/// Reads one JSON text. Stricter than RFC 8259 where a document could be taken in two ways or harm
/// a later reader: refused are duplicate keys, NUL (raw or escaped), invalid UTF-8, lone
/// surrogates, numbers that overflow a double or vanish to zero, nesting beyond kDeepestJson and
/// more than kMostJsonValues values. A byte order mark at the start is skipped. Errors carry
/// `file`, pointer, line and column; reading stops at the first that leaves the structure unclear,
/// duplicate keys do not.
Checked<JsonNode> parse_json(std::string_view text, const std::string& file = {});

/// RFC 6901: the pointer to a member or item of what `parent` points to ("" is the whole document).
std::string pointer_to(std::string_view parent, std::string_view key);
std::string pointer_to(std::string_view parent, std::size_t index);

/// "an object", "a string": for "expected a string, found an object".
std::string_view name_of(JsonKind kind);

} // namespace throwline::catalogue
