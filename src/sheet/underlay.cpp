#include "sheet/underlay.h"

#include "plan/picture_placing.h"
#include "sheet/mask.h"

#include <algorithm>
#include <cmath>

namespace throwline::sheet {

namespace {

/// Whole pixels, `right` and `bottom` beyond the last.
struct PixelBox {
    int left = 0;
    int top = 0;
    int right = 0;
    int bottom = 0;

    int width() const { return right - left; }
    int height() const { return bottom - top; }
};

/// Where the picture lies on paper.
struct PaperPlacing {
    Vec2 corner;
    /// One pixel on.
    Vec2 right;
    Vec2 down;

    Vec2 at(double x_px, double y_px) const { return corner + right * x_px + down * y_px; }
    /// The pixel at a place.
    Vec2 pixel(const Vec2& place) const {
        const Vec2 from = place - corner;
        const double area = cross(right, down);
        return {cross(from, down) / area, cross(right, from) / area};
    }
};

/// The part of a picture that a box of paper needs, a pixel larger all round.
PixelBox needed_pixels(const PaperPlacing& placing, const Box& box, const Pixels& pixels) {
    Vec2 low = placing.pixel({box.left, box.top});
    Vec2 high = low;
    for (const Vec2& corner : {Vec2{box.right(), box.top}, Vec2{box.left, box.bottom()},
                               Vec2{box.right(), box.bottom()}}) {
        low = low.cwiseMin(placing.pixel(corner));
        high = high.cwiseMax(placing.pixel(corner));
    }
    const auto within = [](double value, int most) {
        return static_cast<int>(std::clamp(value, 0.0, static_cast<double>(most)));
    };
    return {within(std::floor(low.x()) - 1.0, pixels.width),
            within(std::floor(low.y()) - 1.0, pixels.height),
            within(std::ceil(high.x()) + 1.0, pixels.width),
            within(std::ceil(high.y()) + 1.0, pixels.height)};
}

std::shared_ptr<const Pixels> cut_out(const std::shared_ptr<const Pixels>& pixels,
                                      const PixelBox& part) {
    if (part.width() == pixels->width && part.height() == pixels->height) {
        return pixels;
    }
    auto cut = std::make_shared<Pixels>();
    cut->width = part.width();
    cut->height = part.height();
    constexpr std::ptrdiff_t kBytesPerPixel = 3;
    cut->rgb.reserve(static_cast<std::size_t>(kBytesPerPixel * part.width() * part.height()));
    for (std::ptrdiff_t row = part.top; row < part.bottom; ++row) {
        const auto from = pixels->rgb.begin() + kBytesPerPixel * (row * pixels->width + part.left);
        cut->rgb.insert(cut->rgb.end(), from, from + kBytesPerPixel * part.width());
    }
    return cut;
}

} // namespace

void draw_underlay(Board& board, const plan::Underlay& underlay, const ReducedPicture& laid,
                   const Box& shown) {
    const std::shared_ptr<const Pixels>& pixels = laid.pixels;
    if (pixels == nullptr || underlay.strength <= 0.0) {
        return;
    }
    const plan::PicturePlacing placing{underlay};
    const auto on_paper = [&](double x_px, double y_px) {
        return board.frame.at(placing.at(Vec2{x_px, y_px} * laid.reduced));
    };
    // Far apart, so that the step of one pixel keeps its digits.
    constexpr double kFar_px = 1e4;
    const Vec2 corner = on_paper(0.0, 0.0);
    const PaperPlacing paper{corner, (on_paper(kFar_px, 0.0) - corner) / kFar_px,
                             (on_paper(0.0, kFar_px) - corner) / kFar_px};
    const PixelBox part = needed_pixels(paper, shown, *pixels);
    if (part.width() < 1 || part.height() < 1) {
        return;
    }
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::underlay)];
    Picture picture;
    picture.pixels = cut_out(pixels, part);
    picture.corner = paper.at(part.left, part.top);
    picture.across = paper.right * part.width();
    picture.down = paper.down * part.height();
    picture.strength = underlay.strength;
    marks.emplace_back(std::move(picture));
}

void draw_underlay_on(Board& board, const plan::Underlay& underlay, const ReducedPicture& picture,
                      const Page& page) {
    draw_underlay(board, underlay, picture, page.field);
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::underlay)];
    if (!marks.empty()) {
        draw_mask_around(marks, page.field, page.width_mm, page.height_mm);
    }
}

} // namespace throwline::sheet
