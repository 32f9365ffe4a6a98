#include "fuzz/property.h"

#include "base/utf8.h"

#include <algorithm>

namespace throwline::fuzz {

namespace {

bool is_control(char32_t character) {
    return character < 0x20 || (character >= 0x7f && character < 0xa0);
}

bool is_tidy(std::string_view line) {
    const std::vector<char32_t> characters = characters_of(line);
    // Broken bytes come back as other bytes.
    return utf8_of(characters) == line
           && std::none_of(characters.begin(), characters.end(), is_control);
}

} // namespace

void require(bool holds, std::string_view property) {
    if (!holds) {
        throw PropertyBroken{std::string{property}};
    }
}

void require_readable(const Errors& errors) {
    require(!errors.empty(), "a refusal says why");
    for (const Error& error : errors) {
        require(!error.message.empty(), "an error has a message");
        require(is_tidy(text_of(error)), "an error is one line of clean text: " + text_of(error));
    }
}

} // namespace throwline::fuzz
