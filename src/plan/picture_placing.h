#pragma once

#include "plan/site.h"

namespace throwline::plan {

/// From a picture to the plan and back: a similarity fixed by two points (complex numbers, plan =
/// at_a + turn * picture), which flips the picture left to right first when the underlay says so.
class PicturePlacing {
  public:
    /// Its two points differ, on the picture and on the plan.
    explicit PicturePlacing(const Underlay& underlay);

    /// The plan place, metres, of a picture point, pixels right and down from its top left corner.
    Vec2 at(const Vec2& pixel) const;
    /// The picture point at a plan place; also one beyond its edges.
    Vec2 pixel(const Vec2& at) const;

  private:
    /// Of a pixel seen from point a, in axes that run right and up before the turn.
    Vec2 upright(const Vec2& pixel) const;

    Vec2 pixel_a_ = Vec2::Zero();
    Vec2 at_a_ = Vec2::Zero();
    bool mirrored_ = false;
    Vec2 turn_ = Vec2::UnitX();
};

} // namespace throwline::plan
