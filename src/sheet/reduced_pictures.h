#pragma once

#include "plan/site.h"
#include "sheet/drawing.h"

#include <memory>
#include <span>
#include <vector>

namespace throwline::sheet {

/// A picture, or a smaller one of the same.
struct ReducedPicture {
    /// Null for no picture.
    std::shared_ptr<const Pixels> pixels;
    /// Of the picture's own pixels, how many along a side are one of these.
    int reduced = 1;

    bool operator==(const ReducedPicture&) const = default;
};

/// A picture at its own size, a half of it, a quarter and so on, so that a screen can show it small
/// without dropping the thin lines between the pixels that it shows. The last has no side above
/// 512.
std::vector<ReducedPicture> reduced_pictures(std::shared_ptr<const Pixels> picture);

/// The smallest of them that has at least as many pixels a metre as the screen, as the
/// picture lies beneath a plan; none when there are none.
ReducedPicture picture_for(std::span<const ReducedPicture> pictures, const plan::Underlay& underlay,
                           double screen_px_per_m);

} // namespace throwline::sheet
