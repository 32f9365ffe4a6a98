#include "plan/json_out.h"

#include "plan/json_text.h"

namespace throwline::plan {

namespace {

constexpr std::size_t kWidth = 100;
constexpr std::size_t kIndent = 2;

} // namespace

JsonOut JsonOut::leaf(std::string json) {
    JsonOut out;
    out.leaf_ = std::move(json);
    return out;
}

JsonOut JsonOut::array(std::vector<JsonOut> items) {
    JsonOut out;
    out.kind_ = Kind::array;
    for (JsonOut& item : items) {
        out.parts_.emplace_back(std::string{}, std::move(item));
    }
    return out;
}

JsonOut JsonOut::object() {
    JsonOut out;
    out.kind_ = Kind::object;
    return out;
}

void JsonOut::put(std::string_view key, JsonOut value) {
    parts_.emplace_back(json_string(key) + ": ", std::move(value));
}

std::string JsonOut::laid_out() const {
    std::string text;
    if (kind_ == Kind::leaf || parts_.empty()) {
        append(text, 0, 0);
    } else {
        append_broken(text, 0);
    }
    return text + "\n";
}

bool JsonOut::holds_objects() const {
    return kind_ == Kind::array && !parts_.empty() && parts_.front().second.kind_ == Kind::object;
}

/// Whether it fits: `text` must not grow beyond `most` bytes.
bool JsonOut::append_line(std::string& text, std::size_t most) const {
    if (kind_ == Kind::leaf) {
        text += leaf_;
        return text.size() <= most;
    }
    if (holds_objects()) {
        return false;
    }
    const bool spaced = kind_ == Kind::object && !parts_.empty();
    text += kind_ == Kind::array ? "[" : (spaced ? "{ " : "{");
    for (const auto& [key, value] : parts_) {
        text += &key == &parts_.front().first ? "" : ", ";
        text += key;
        if (!value.append_line(text, most)) {
            return false;
        }
    }
    text += kind_ == Kind::array ? "]" : (spaced ? " }" : "}");
    return text.size() <= most;
}

void JsonOut::append_broken(std::string& text, std::size_t indent) const {
    const std::string margin(indent + kIndent, ' ');
    text += kind_ == Kind::array ? "[" : "{";
    for (const auto& [key, value] : parts_) {
        text += &key == &parts_.front().first ? "\n" : ",\n";
        text += margin + key;
        value.append(text, indent + kIndent, key.size());
    }
    text += "\n";
    text.append(indent, ' ');
    text += kind_ == Kind::array ? "]" : "}";
}

/// On the rest of a line of which `indent` and `taken` are used, or broken over several.
void JsonOut::append(std::string& text, std::size_t indent, std::size_t taken) const {
    const std::size_t used = indent + taken + 1;
    std::string line;
    const bool fits = append_line(line, used < kWidth ? kWidth - used : 0);
    if (fits || kind_ == Kind::leaf || parts_.empty()) {
        text += line;
    } else {
        append_broken(text, indent);
    }
}

} // namespace throwline::plan
