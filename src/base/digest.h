#pragma once

#include "base/vec.h"

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace throwline {

/// A number that stands for values, to tell whether they changed: FNV-1a over their bytes, 64 bits
/// (Fowler, Noll and Vo). Not for keeping: it differs between machines of another byte order.
class Digest {
  public:
    void add(const void* bytes, std::size_t count) {
        const auto* at = static_cast<const unsigned char*>(bytes);
        for (std::size_t i = 0; i < count; ++i) {
            value_ = (value_ ^ at[i]) * 0x100000001B3ULL;
        }
    }
    void add(double number) { add(&number, sizeof number); }
    void add(int number) { add(&number, sizeof number); }
    void add(std::string_view text) { add(text.data(), text.size()); }
    void add(const Vec3& point) { add(point.data(), 3 * sizeof(double)); }
    std::uint64_t value() const { return value_; }

  private:
    std::uint64_t value_ = 0xCBF29CE484222325ULL;
};

} // namespace throwline
