#include "catalogue/utf8_sequence.h"

namespace throwline::catalogue {

namespace {

unsigned byte_at(std::string_view text, std::size_t index) {
    return index < text.size() ? static_cast<unsigned char>(text[index]) : 0U;
}

bool in_range(unsigned value, unsigned low, unsigned high) {
    return value >= low && value <= high;
}

/// The second byte is limited further after four lead bytes (RFC 3629, section 4).
bool valid_second(unsigned lead, unsigned second) {
    const unsigned low = lead == 0xE0U ? 0xA0U : lead == 0xF0U ? 0x90U : 0x80U;
    const unsigned high = lead == 0xEDU ? 0x9FU : lead == 0xF4U ? 0x8FU : 0xBFU;
    return in_range(second, low, high);
}

std::size_t length_from_lead(unsigned lead) {
    if (lead < 0x80U) {
        return 1;
    }
    if (in_range(lead, 0xC2U, 0xDFU)) {
        return 2;
    }
    if (in_range(lead, 0xE0U, 0xEFU)) {
        return 3;
    }
    return in_range(lead, 0xF0U, 0xF4U) ? 4 : 0;
}

char as_char(unsigned byte) {
    return static_cast<char>(static_cast<unsigned char>(byte));
}

} // namespace

std::size_t utf8_length(std::string_view text) {
    if (text.empty()) {
        return 0;
    }
    const unsigned lead = byte_at(text, 0);
    const std::size_t length = length_from_lead(lead);
    if (length > text.size() || (length > 1 && !valid_second(lead, byte_at(text, 1)))) {
        return 0;
    }
    for (std::size_t i = 2; i < length; ++i) {
        if (!in_range(byte_at(text, i), 0x80U, 0xBFU)) {
            return 0;
        }
    }
    return length;
}

void append_utf8(std::string& text, unsigned code) {
    if (code < 0x80U) {
        text.push_back(as_char(code));
        return;
    }
    const unsigned following = code < 0x800U ? 1U : code < 0x10000U ? 2U : 3U;
    const unsigned marks[] = {0U, 0xC0U, 0xE0U, 0xF0U};
    text.push_back(as_char(marks[following] | (code >> (6U * following))));
    for (unsigned left = following; left > 0; --left) {
        text.push_back(as_char(0x80U | ((code >> (6U * (left - 1U))) & 0x3FU)));
    }
}

} // namespace throwline::catalogue
