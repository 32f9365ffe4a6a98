#pragma once

#include "base/quantity.h"
#include "base/trade_words.h"
#include "base/vec.h"
#include "base/working.h"

#include <optional>
#include <string>
#include <vector>

namespace throwline::photometry {

/// Direction of a lamp seen from a subject.
struct LampDirection {
    /// On the plan from the direction to the camera, (-180, 180] deg; positive at camera right.
    Angle azimuth;
    /// Above the horizontal.
    Angle elevation;
};

/// From the subject's eyes. Azimuth is 0 when the lamp is straight above. Empty when the camera
/// stands straight above or below the eyes, or lamp and eyes are one point. Plain geometry.
std::optional<LampDirection> lamp_direction(const Vec3& eyes, const Vec3& camera, const Vec3& lamp);

using throwline::LampRole;
std::string name_of(LampRole role);

/// Usual place of a lamp by its role: magnitudes of azimuth, and elevation. Common practice, no
/// source.
struct UsualRange {
    Angle azimuth_least;
    Angle azimuth_most;
    Angle elevation_least;
    Angle elevation_most;
};
/// Empty for background, effects and practicals, which are placed by what they light.
std::optional<UsualRange> usual_range(LampRole role);

/// What an unusual direction does. Common practice, no source.
enum class PlacementWarning {
    flat_key,        ///< key within 15 deg of the camera
    wide_key,        ///< key beyond 60 deg
    dark_eyes,       ///< elevation above 50 deg from the front: shadowed eye sockets
    shadows_on_set,  ///< elevation below 20 deg from the front: shadows fall on what is behind
    low_back_light,  ///< back light below 30 deg: flare
    fill_beside_key, ///< fill on the key's side of the camera
    outside_range    ///< outside usual_range() without any of the above
};
std::string sentence_of(PlacementWarning warning);

/// In the order of the enum. `key` is given for fill, to tell the sides apart.
std::vector<PlacementWarning> placement_warnings(LampRole role, const LampDirection& direction,
                                                 const std::optional<LampDirection>& key = {});

/// Horizontal and straight distance from the eyes to a lamp at a height, for an elevation in (0,
/// 90) deg. Empty when the lamp would not be above the eyes.
struct LampDistance {
    Length horizontal;
    Length slant;
};
std::optional<LampDistance> distance_for_elevation(Length eye_height, Length lamp_height,
                                                   Angle elevation);

Working lamp_direction_working(const Vec3& eyes, const Vec3& camera, const Vec3& lamp);

} // namespace throwline::photometry
