#pragma once

#include "base/quantity.h"
#include "base/vec.h"
#include "base/working.h"
#include "sun/utc_time.h"

namespace throwline::sun {

/// A place on the earth. Latitude north positive, longitude east positive.
struct EarthPlace {
    Angle latitude;
    Angle longitude;
};

/// Air that lifts the sun near the horizon.
struct Atmosphere {
    double pressure_mbar = 1010.0;
    double temperature_c = 10.0;
};

struct SunPosition {
    /// Clockwise from true north, 0..360 deg.
    Angle azimuth;
    /// Of the sun's centre, with refraction: what an eye sees and what is reported.
    Angle elevation;
    /// Without refraction.
    Angle airless_elevation;
};

/// Low-precision series of the almanac kind (from memory: Astronomical Almanac, low-precision
/// formulas for the sun), with aberration, the main terms of nutation and parallax. Within 0.01 deg
/// of NREL/TP-560-34302 and of an astronomy library for 1950..2100. Refraction as in
/// NREL/TP-560-34302, none when the disc is wholly below the horizon.
SunPosition sun_position(const EarthPlace& place, UtcTime time, const Atmosphere& air = {});

/// Lift by refraction of a sun at an elevation without air.
Angle refraction(Angle airless_elevation, const Atmosphere& air);

/// Unit vector from the ground to the sun in plan axes; `north` is the direction of true north on
/// the plan, anticlockwise from +x (90 deg when north is up the page).
Vec3 toward_sun(const SunPosition& position, Angle north);

Working sun_position_working(const EarthPlace& place, UtcTime time, const Atmosphere& air = {});

} // namespace throwline::sun
