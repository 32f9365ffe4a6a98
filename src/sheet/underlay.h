#pragma once

#include "plan/site.h"
#include "sheet/board.h"
#include "sheet/page.h"

#include <memory>

namespace throwline::sheet {

/// From a picture to the plan: a similarity fixed by two points (complex numbers, plan = at_a +
/// turn * picture), which flips the picture left to right first when the underlay says so.
class PicturePlacing {
  public:
    explicit PicturePlacing(const plan::Underlay& underlay);

    /// The plan place, metres, of a picture point, pixels right and down from its top left corner.
    Vec2 at(const Vec2& pixel) const;

  private:
    /// Of a pixel seen from point a, in axes that run right and up before the turn.
    Vec2 upright(const Vec2& pixel) const;

    Vec2 pixel_a_ = Vec2::Zero();
    Vec2 at_a_ = Vec2::Zero();
    bool mirrored_ = false;
    Vec2 turn_ = Vec2::UnitX();
};

/// Lays the picture beneath everything in the field of a page, true to scale. Only what shows there
/// is kept of it.
void draw_underlay(Board& board, const plan::Underlay& underlay,
                   const std::shared_ptr<const Pixels>& pixels, const Page& page);

} // namespace throwline::sheet
