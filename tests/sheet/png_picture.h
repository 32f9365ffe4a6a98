#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace throwline::test {

/// A PNG picture as libpng reads it.
struct PngPicture {
    int width = 0;
    int height = 0;
    /// Of its resolution chunk; 0 without one.
    double pixels_per_mm = 0.0;
    /// Red, green, blue, row by row.
    std::vector<std::uint8_t> rgb;

    const std::uint8_t* at(int x, int y) const;
    /// Share of a pixel that the darkest ink covers, from its red.
    double cover(int x, int y) const;
};

/// Throws std::runtime_error when libpng cannot read it.
PngPicture png_picture(const std::string& bytes);

} // namespace throwline::test
