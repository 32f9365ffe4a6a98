#pragma once

#include "sheet/composition.h"

#include <optional>
#include <string>
#include <vector>

/// Where a section cuts a room, and how places lie on it.
namespace throwline::sheet {

/// A stretch of the cut from one wall to the next, metres along it.
struct CutStretch {
    double from_m = 0.0;
    double to_m = 0.0;
};

/// An upright plane through the room. Seen from its right, so that `along` runs to the right on
/// paper and what is ahead lies to the left of the line.
struct SectionCut {
    Vec2 origin = Vec2::Zero();
    Vec2 along = Vec2::UnitX();
    Vec2 ahead = Vec2::UnitY();
    /// How far ahead things are shown, metres.
    double depth_m = 0.0;
    /// "Section along shot 2A"
    std::string name;
    /// The shot that it was laid along; null for a line of its own.
    const checks::ShotScene* shot = nullptr;
    const stage::Stage* stage = nullptr;
    /// Where the cut is inside the room, in order.
    std::vector<CutStretch> inside;

    double along_m(const Vec2& place) const { return (place - origin).dot(along); }
    double ahead_m(const Vec2& place) const { return (place - origin).dot(ahead); }
    /// Along the cut, and up.
    Vec2 at(const Vec3& place) const { return {along_m(floor_of(place)), place.z()}; }
    Vec2 place(double s_m) const { return origin + along * s_m; }
};

/// The cut that the options ask for: along the line or the shot named, else the first shot shown,
/// else across the room's middle along its longer side. `bare` takes the stage of a plan without
/// beats; `input` and it must outlive the cut. Errors: an unknown shot, one that sees nothing, two
/// ends in one place, a line that misses the room.
Result<SectionCut> section_cut(const SheetInput& input, const SheetOptions& options,
                               stage::Stage& bare);

/// Stretches of the cut's line inside an outline (even-odd), in order.
std::vector<CutStretch> stretches_inside(const SectionCut& cut, const Polygon& outline);

/// The parts of a stretch where the cut is inside the room: beside them a wall hides what is ahead.
std::vector<CutStretch> seen_parts(const SectionCut& cut, const CutStretch& stretch);

} // namespace throwline::sheet
