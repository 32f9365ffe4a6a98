#include "base/file_mark.h"

#include <cstdint>
#include <fmt/format.h>

namespace throwline {

std::string file_mark(std::string_view bytes) {
    constexpr std::uint32_t kPolynomial = 0xEDB88320U;
    std::uint32_t remainder = 0xFFFFFFFFU;
    for (const char byte : bytes) {
        remainder ^= static_cast<unsigned char>(byte);
        for (int bit = 0; bit < 8; ++bit) {
            remainder = (remainder >> 1U) ^ ((remainder & 1U) != 0 ? kPolynomial : 0U);
        }
    }
    return fmt::format("{:08x}", ~remainder);
}

} // namespace throwline
