#include "sheet/reduced_pictures.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace throwline::sheet {

namespace {

constexpr int kSmallestSide_px = 512;
constexpr std::size_t kChannels = 3;

/// Each pixel the mean of four; the last row or column of an odd number is left out.
Pixels halved(const Pixels& pixels) {
    Pixels half;
    half.width = std::max(1, pixels.width / 2);
    half.height = std::max(1, pixels.height / 2);
    const auto width = static_cast<std::size_t>(half.width);
    const auto height = static_cast<std::size_t>(half.height);
    const std::size_t row_bytes = kChannels * static_cast<std::size_t>(pixels.width);
    // A picture one pixel wide or high has no second to take.
    const std::size_t right = pixels.width > 1 ? kChannels : 0;
    const std::size_t below = pixels.height > 1 ? row_bytes : 0;
    half.rgb.resize(kChannels * width * height);
    for (std::size_t y = 0; y < height; ++y) {
        const auto* from = pixels.rgb.data() + 2 * y * row_bytes;
        auto* to = half.rgb.data() + kChannels * y * width;
        for (std::size_t x = 0; x < width; ++x, from += 2 * kChannels, to += kChannels) {
            for (std::size_t i = 0; i < kChannels; ++i) {
                const int sum =
                    from[i] + from[i + right] + from[i + below] + from[i + right + below];
                to[i] = static_cast<std::uint8_t>((sum + 2) / 4);
            }
        }
    }
    return half;
}

} // namespace

std::vector<ReducedPicture> reduced_pictures(std::shared_ptr<const Pixels> picture) {
    std::vector<ReducedPicture> pictures;
    if (picture == nullptr) {
        return pictures;
    }
    pictures.push_back({std::move(picture), 1});
    while (std::max(pictures.back().pixels->width, pictures.back().pixels->height)
           > kSmallestSide_px) {
        pictures.push_back({std::make_shared<const Pixels>(halved(*pictures.back().pixels)),
                            2 * pictures.back().reduced});
    }
    return pictures;
}

ReducedPicture picture_for(std::span<const ReducedPicture> pictures, const plan::Underlay& underlay,
                           double screen_px_per_m) {
    if (pictures.empty()) {
        return {};
    }
    const double px_per_m =
        (underlay.pixel_b - underlay.pixel_a).norm() / (underlay.at_b - underlay.at_a).norm();
    ReducedPicture best = pictures.front();
    for (const ReducedPicture& picture : pictures) {
        if (px_per_m / picture.reduced >= screen_px_per_m) {
            best = picture;
        }
    }
    return best;
}

} // namespace throwline::sheet
