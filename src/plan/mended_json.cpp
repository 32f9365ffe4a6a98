#include "plan/mended_json.h"

#include "base/utf8.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>

namespace throwline::plan {

namespace {

using catalogue::JsonKind;
using catalogue::JsonNode;

/// Enough to see what happened to a file; nobody reads further.
constexpr std::size_t kMostFaults = 100;
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::string_view kSpace = " \t\r\n";
/// What no bare word or number goes on over.
constexpr std::string_view kEndsWord = " \t\r\n,:\"{}[]";
constexpr std::string_view kEndsJunk = ",}]\n";

bool is_one_of(char c, std::string_view set) {
    return set.find(c) != std::string_view::npos;
}

class Mender {
  public:
    Mender(std::string_view text, const std::string& file) : text_{text}, file_{file} {}

    MendedJson whole() {
        if (text_.substr(0, kByteOrderMark.size()) == kByteOrderMark) {
            here_.at = kByteOrderMark.size();
        }
        skip_space();
        MendedJson mended;
        mended.tree.kind = JsonKind::object;
        mended.tree.line = here_.line;
        mended.tree.column = here_.column;
        if (!ends() && peek() == '{') {
            step();
        } else {
            tell("the text does not begin with \"{\"");
        }
        members(mended.tree);
        mended.errors = std::move(errors_);
        return mended;
    }

  private:
    struct Here {
        std::size_t at = 0;
        int line = 1;
        int column = 1;
    };

    bool ends() const { return here_.at >= text_.size(); }
    char peek() const { return text_[here_.at]; }
    void step() {
        const char c = text_[here_.at++];
        if (c == '\n') {
            ++here_.line;
            here_.column = 1;
        } else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) {
            ++here_.column;
        }
    }
    void skip_space() {
        while (!ends() && is_one_of(peek(), kSpace)) {
            step();
        }
    }
    bool only_space_after_this() const {
        return text_.find_first_not_of(kSpace, here_.at + 1) == std::string_view::npos;
    }
    void tell(std::string message) { tell_at(here_, std::move(message)); }
    void tell_at(const Here& where, std::string message) {
        if (errors_.size() < kMostFaults) {
            errors_.push_back({std::move(message), {file_, {}, where.line, where.column}});
        }
    }
    void tell_end() {
        if (!told_end_) {
            told_end_ = true;
            tell("the text breaks off here");
        }
    }

    /// Skips what cannot be made out, whole lists and objects in it too.
    void skip_junk() {
        while (!ends() && !is_one_of(peek(), kEndsJunk)) {
            if (peek() == '{' || peek() == '[') {
                JsonNode unwanted;
                value(unwanted);
            } else {
                step();
            }
        }
    }
    void leave_out_junk() {
        tell("this cannot be made out and is left out");
        skip_junk();
    }

    /// From an opening quotation mark to the closing one in the same line.
    std::optional<JsonNode> string() {
        const Here start = here_;
        bool escaped = false;
        step();
        while (!ends() && peek() != '\n' && (escaped || peek() != '"')) {
            escaped = !escaped && peek() == '\\';
            step();
        }
        if (ends() || peek() == '\n') {
            tell_at(start, "this text has no end in its line and is left out");
            return std::nullopt;
        }
        step();
        const std::string_view token = text_.substr(start.at, here_.at - start.at);
        Checked<JsonNode> node = catalogue::parse_json(token);
        if (!node) {
            // Bytes that are no text are marked; escapes that are none cannot be mended.
            node = catalogue::parse_json(on_one_line(token));
            tell_at(start, node ? "bytes of this text cannot be made out"
                                : "this text cannot be made out and is left out");
        }
        return node ? std::optional{*std::move(node)} : std::nullopt;
    }

    std::optional<JsonNode> word() {
        const Here start = here_;
        while (!ends() && !is_one_of(peek(), kEndsWord)) {
            step();
        }
        Checked<JsonNode> node = catalogue::parse_json(text_.substr(start.at, here_.at - start.at));
        if (!node) {
            tell_at(start, "this is no value and is left out");
        }
        return node ? std::optional{*std::move(node)} : std::nullopt;
    }

    /// Whether there was one. What was told is left out; skipped up to where the parts around it
    /// can go on.
    bool value(JsonNode& node) {
        const Here start = here_;
        if (++values_ > catalogue::kMostJsonValues) {
            tell("there are too many values; the rest is left out");
            here_.at = text_.size();
            return false;
        }
        if (peek() == '{' || peek() == '[') {
            if (!holder(node)) {
                return false;
            }
        } else {
            std::optional<JsonNode> read = peek() == '"' ? string() : word();
            if (!read) {
                skip_junk();
                return false;
            }
            node = *std::move(read);
        }
        node.line = start.line;
        node.column = start.column;
        return true;
    }

    /// An object or a list.
    bool holder(JsonNode& node) {
        const char bracket = peek();
        if (open_.size() >= static_cast<std::size_t>(catalogue::kDeepestJson)) {
            tell("this lies too deep and is left out");
            step();
            return false;
        }
        step();
        open_.push_back(bracket);
        if (bracket == '{') {
            node.kind = JsonKind::object;
            members(node);
        } else {
            node.kind = JsonKind::array;
            items(node);
        }
        open_.pop_back();
        return true;
    }

    /// Whether after a value something else follows than may: then it is not the value that it was.
    bool goes_on_wrongly() {
        if (std::exchange(bracket_was_lost_, false)) {
            return false;
        }
        const int line = here_.line;
        skip_space();
        if (ends() || is_one_of(peek(), ",}]")) {
            return false;
        }
        if (here_.line > line) {
            tell("a comma is missing before this");
            return false;
        }
        return true;
    }

    void member(JsonNode& object) {
        const Here start = here_;
        std::optional<JsonNode> key = string();
        if (!key) {
            skip_junk();
            return;
        }
        skip_space();
        if (ends() || peek() != ':') {
            tell_at(start, "this key has no value and is left out");
            skip_junk();
            return;
        }
        step();
        skip_space();
        catalogue::JsonMember read{std::move(key->text), {}, start.line, start.column};
        if (ends() || !value(read.value)) {
            return;
        }
        if (goes_on_wrongly()) {
            leave_out_junk();
        } else if (read.key.size() <= catalogue::kLongestJsonKey) {
            object.members.push_back(std::move(read));
        }
    }

    bool is_in_list() const { return open_.find('[') != std::string::npos; }
    bool is_in_list_directly() const { return open_.size() >= 2 && open_[open_.size() - 2] == '['; }

    /// Up to the end of an object, or where its end must have been lost.
    void members(JsonNode& object) {
        while (true) {
            skip_space();
            if (ends()) {
                tell_end();
                return;
            }
            const char c = peek();
            if (c == '"') {
                member(object);
            } else if (c == '}' && (open_.size() > 1 || only_space_after_this())) {
                step();
                return;
            } else if ((c == ']' && is_in_list()) || (c == '{' && is_in_list_directly())) {
                tell("a \"}\" is missing before this");
                bracket_was_lost_ = true;
                return;
            } else if (c == '}' || c == ']') {
                tell("this bracket closes nothing");
                step();
            } else if (c == ',') {
                step();
            } else {
                leave_out_junk();
            }
        }
    }

    /// Whether a text is the key of an object around: then the end of the list was lost.
    bool is_key() {
        const Here start = here_;
        const std::size_t faults = errors_.size();
        const bool is_text = string().has_value();
        skip_space();
        const bool found = is_text && !ends() && peek() == ':';
        here_ = start;
        errors_.resize(faults);
        return found;
    }
    /// A "}" that would end the whole, when there is more to come, ends nothing.
    bool would_end_the_whole() const {
        return std::count(open_.begin(), open_.end(), '{') == 1 && !only_space_after_this();
    }

    /// The same for a list.
    void items(JsonNode& list) {
        while (true) {
            skip_space();
            if (ends()) {
                tell_end();
                return;
            }
            const char c = peek();
            if (c == ']') {
                step();
                return;
            }
            if (c == ',') {
                step();
            } else if (c == '}' && would_end_the_whole()) {
                tell("this bracket closes nothing");
                step();
            } else if (c == '}' || (c == '"' && is_key())) {
                tell("a \"]\" is missing before this");
                bracket_was_lost_ = true;
                return;
            } else if (c == ':') {
                leave_out_junk();
            } else {
                item(list);
            }
        }
    }

    void item(JsonNode& list) {
        JsonNode read;
        if (!value(read)) {
            return;
        }
        if (goes_on_wrongly()) {
            leave_out_junk();
        } else {
            list.items.push_back(std::move(read));
        }
    }

    std::string_view text_;
    const std::string& file_;
    Here here_;
    /// Brackets that are open; that of the whole never closes before the end.
    std::string open_ = "{";
    Errors errors_;
    int values_ = 0;
    bool told_end_ = false;
    /// The object or list read last has no end of its own, so anything may follow it.
    bool bracket_was_lost_ = false;
};

} // namespace

MendedJson mended_json(std::string_view text, const std::string& file) {
    return Mender{text, file}.whole();
}

} // namespace throwline::plan
