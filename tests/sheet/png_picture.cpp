#include "sheet/png_picture.h"

#include <cstddef>
#include <png.h>
#include <stdexcept>

namespace throwline::test {

namespace {

std::uint32_t big_endian(const std::string& bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        value = value << 8U | static_cast<unsigned char>(bytes.at(at + i));
    }
    return value;
}

} // namespace

const std::uint8_t* PngPicture::at(int x, int y) const {
    return rgb.data() + std::ptrdiff_t{3} * (std::ptrdiff_t{y} * width + x);
}

double PngPicture::cover(int x, int y) const {
    constexpr double kWhite = 255.0;
    constexpr double kInk = 31.0;
    return (kWhite - *at(x, y)) / (kWhite - kInk);
}

PngPicture png_picture(const std::string& bytes) {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    if (png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) == 0) {
        throw std::runtime_error{image.message};
    }
    image.format = PNG_FORMAT_RGB;
    PngPicture picture;
    picture.width = static_cast<int>(image.width);
    picture.height = static_cast<int>(image.height);
    picture.rgb.resize(PNG_IMAGE_SIZE(image));
    if (png_image_finish_read(&image, nullptr, picture.rgb.data(), 0, nullptr) == 0) {
        throw std::runtime_error{image.message};
    }
    if (const std::size_t chunk = bytes.find("pHYs"); chunk != std::string::npos) {
        picture.pixels_per_mm = big_endian(bytes, chunk + 4) / 1000.0;
    }
    return picture;
}

} // namespace throwline::test
