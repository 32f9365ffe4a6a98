#include "sheet/reduced_pictures.h"

#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

std::shared_ptr<const Pixels> grey(int width_px, int height_px, std::uint8_t shade = 200) {
    Pixels pixels{width_px, height_px, {}};
    pixels.rgb.assign(std::size_t{3} * static_cast<std::size_t>(width_px * height_px), shade);
    return std::make_shared<const Pixels>(std::move(pixels));
}

plan::Underlay hundred_px_a_metre() {
    return {"scan.png", {0, 0}, {300, 400}, {0, 0}, {3, -4}};
}

TEST(ReducedPictures, AreHalvedUntilTheyAreSmall) {
    const auto pictures = reduced_pictures(grey(3001, 1200));
    ASSERT_EQ(pictures.size(), 4U);
    EXPECT_EQ(pictures[1].pixels->width, 1500);
    EXPECT_EQ(pictures[3].pixels->width, 375);
    EXPECT_EQ(pictures[3].pixels->height, 150);
    EXPECT_EQ(pictures[3].reduced, 8);
    EXPECT_EQ(pictures[3].pixels->rgb, grey(375, 150)->rgb);
}

TEST(ReducedPictures, AreItselfWhenItIsSmall) {
    EXPECT_EQ(reduced_pictures(grey(512, 3)).size(), 1U);
    EXPECT_TRUE(reduced_pictures(nullptr).empty());
}

/// A black line a pixel wide on white, half a pixel wide in the smaller one, is half as dark there.
TEST(ReducedPictures, KeepALineThatIsThinnerThanTheirPixels) {
    auto white = std::make_shared<Pixels>(*grey(1024, 4, 255));
    for (std::size_t y = 0; y < 4; ++y) {
        for (std::size_t i = 0; i < 3; ++i) {
            white->rgb[3 * (y * 1024 + 7) + i] = 0;
        }
    }
    const auto pictures = reduced_pictures(white);
    ASSERT_EQ(pictures.size(), 2U);
    // Pixel 7 is the right one of the fourth pair.
    EXPECT_EQ(pictures[1].pixels->rgb[std::size_t{3} * 3], 128);
    EXPECT_EQ(pictures[1].pixels->rgb[std::size_t{3} * 2], 255);
}

TEST(ReducedPictures, HoldTogetherOnePixelWide) {
    const auto pictures = reduced_pictures(grey(1, 2000));
    EXPECT_EQ(pictures.back().pixels->width, 1);
    EXPECT_EQ(pictures.back().pixels->rgb.front(), 200);
}

TEST(ReducedPictures, TheSmallestThatIsFineEnoughIsTaken) {
    const auto pictures = reduced_pictures(grey(4096, 4096));
    EXPECT_EQ(picture_for(pictures, hundred_px_a_metre(), 400.0).reduced, 1);
    EXPECT_EQ(picture_for(pictures, hundred_px_a_metre(), 60.0).reduced, 1);
    EXPECT_EQ(picture_for(pictures, hundred_px_a_metre(), 50.0).reduced, 2);
    EXPECT_EQ(picture_for(pictures, hundred_px_a_metre(), 0.1).reduced, 8);
    EXPECT_EQ(picture_for({}, hundred_px_a_metre(), 50.0).pixels, nullptr);
}

} // namespace
} // namespace throwline::sheet
