#include "survey/recce_quotes.h"

#include "survey/recce_cursor.h"
#include "survey/recce_words.h"

#include <algorithm>

namespace throwline::survey {

namespace {

bool is_word(const std::string& name) {
    const std::string lower = lower_case(name);
    const auto is_it = [&](std::string_view word) { return word == lower; };
    return std::any_of(kLineWords.begin(), kLineWords.end(), is_it)
           || std::any_of(kInnerWords.begin(), kInnerWords.end(), is_it);
}

} // namespace

std::string recce_quoted(const std::string& text) {
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '\n') {
            quoted += "\\n";
            continue;
        }
        if (c == '"' || c == '\\') {
            quoted += '\\';
        }
        quoted += c;
    }
    return quoted + '"';
}

std::string recce_name(const std::string& name) {
    return is_bare_name(name) && !is_word(name) ? name : recce_quoted(name);
}

} // namespace throwline::survey
