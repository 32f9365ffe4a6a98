#pragma once

#include "base/vec.h"
#include "optics/shot_size.h"

#include <optional>

namespace throwline::optics {

/// Frame coordinates throughout: u right and v up, each -1..1 across the frame.

/// Lines at a third of the frame, either side of the centre.
inline constexpr double kThirdLine = 1.0 / 3.0;

/// A usual range of a share of the frame.
struct ShareRange {
    double least = 0.0;
    double most = 0.0;
};

/// Free part of the frame's height above the crown; negative when the crown is cut.
double headroom_share(double crown_v);
/// What is usually left above the crown: nothing or a cut crown in the closest sizes, 3-15 % to
/// full, no upper bound beyond. Common practice, no source.
ShareRange usual_headroom(ShotSize size);

/// Which way somebody looks across the frame.
enum class LookSide { left, right };
/// Free side towards the gaze over the side behind the nose; at least 1.5 is usual (common
/// practice, no source). Empty when the nose is on or outside the edge behind it.
std::optional<double> lead_room(double nose_u, LookSide side);
inline constexpr double kUsualLeadRoom = 1.5;

/// Distance of a point from the nearest crossing of the third lines, in shares of the frame's half
/// width and half height.
double distance_from_thirds(const Vec2& frame_point);

} // namespace throwline::optics
