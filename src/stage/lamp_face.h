#pragma once

#include "stage/light_at.h"

namespace throwline::stage {

/// Points over a lamp's bright face, in a fixed pattern, every one standing for the same area.
/// `fine` for single receivers, coarse for maps. All-round lamps show a disc to the receiver.
std::vector<Vec3> face_points(const PlacedLamp& lamp, const Vec3& receiver, bool fine);

/// The bright face of a soft lamp as it burns; nothing for hard ones.
std::optional<photometry::SoftPanel> panel_of(const PlacedLamp& lamp);

/// Whether a soft lamp spreads less wide than an even diffuse face.
bool is_narrowed(const PlacedLamp& lamp);
/// Intensity towards an angle over that of an even diffuse face with the same peak, at most 1. 1
/// for faces that spread as wide as a diffuse one (50 % at 60 degrees).
double narrowing_at(const PlacedLamp& lamp, Angle off_axis);

} // namespace throwline::stage
