#pragma once

#include "base/quantity.h"
#include "base/vec.h"
#include "base/working.h"
#include "optics/shot_size.h"

#include <optional>

namespace throwline::optics {

/// The line of action runs through two subjects; cameras of one scene stay on one side of it, and a
/// cut to the same size turns by 30 degrees at least (both common practice, no source).

enum class LineSide { left, on_line, right };

/// A camera nearer to the line than this is on it: it can be cut with either side.
inline constexpr double kOnLine_m = 0.01;
/// Least change of direction between two shots of one size.
inline constexpr Angle kLeastTurn = Angle::degrees(30.0);
/// Or so many steps of the ladder of shot sizes.
inline constexpr int kLeastSizeSteps = 2;

/// Side of the line from `first` to `second` on which a camera stands, looking along it. On the
/// line when the two subjects stand on one point.
LineSide side_of_line(const Vec2& first, const Vec2& second, const Vec2& camera);
/// Whether two cameras stand on opposite sides; one that is on the line crosses nothing.
bool crosses_line(const Vec2& first, const Vec2& second, const Vec2& camera_a,
                  const Vec2& camera_b);

/// Angle at the subject between the directions to two cameras on the plan, 0..pi. Empty when a
/// camera stands on the subject.
std::optional<Angle> angle_between_cameras(const Vec2& subject, const Vec2& camera_a,
                                           const Vec2& camera_b);

/// Whether a cut turns or changes size enough. `turn` as angle_between_cameras() gives it.
bool cut_is_clear(Angle turn, ShotSize before, ShotSize after);

Working angle_between_cameras_working(const Vec2& subject, const Vec2& camera_a,
                                      const Vec2& camera_b);

} // namespace throwline::optics
