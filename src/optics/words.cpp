#include "optics/words.h"

#include "base/length_text.h"

namespace throwline::optics {

std::string mm_text(Length length) {
    std::string digits = fixed(length.mm(), 3);
    digits.erase(digits.find_last_not_of('0') + 1);
    if (digits.back() == '.') {
        digits.pop_back();
    }
    return digits + " mm";
}

std::string distance_text(Length length) {
    return fixed(length.m(), 3) + " m";
}

} // namespace throwline::optics
