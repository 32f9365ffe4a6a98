#include "sun/direct_beam.h"

#include "base/length_text.h"

#include <cmath>
#include <numbers>
#include <optional>

namespace throwline::sun {

namespace {

constexpr double kOutsideAir_lx = 127500.0;

/// Nothing under a closed sky.
std::optional<double> extinction_of(Sky sky) {
    switch (sky) {
    case Sky::clear:
        return 0.21;
    case Sky::partly_cloudy:
        return 0.80;
    case Sky::overcast:
        return std::nullopt;
    }
    return std::nullopt;
}

} // namespace

std::string name_of(Sky sky) {
    switch (sky) {
    case Sky::clear:
        return "clear";
    case Sky::partly_cloudy:
        return "partly cloudy";
    case Sky::overcast:
        return "overcast";
    }
    return {};
}

DirectBeam direct_beam(int day_of_year, Angle elevation, Sky sky) {
    const std::optional<double> extinction = extinction_of(sky);
    const double sin_elevation = std::sin(elevation.rad());
    if (!extinction || sin_elevation <= 0.0) {
        return {};
    }
    const double season =
        1.0 + 0.034 * std::cos(2.0 * std::numbers::pi * (day_of_year - 2) / 365.0);
    const double normal_lx = kOutsideAir_lx * season * std::exp(-*extinction / sin_elevation);
    return {normal_lx, normal_lx * sin_elevation};
}

Working direct_beam_working(int day_of_year, Angle elevation, Sky sky) {
    const std::optional<double> extinction = extinction_of(sky);
    const DirectBeam beam = direct_beam(day_of_year, elevation, sky);
    return {
        "E = 127500 (1 + 0.034 cos(2 pi (day - 2) / 365)) exp(-c / sin h); level ground E sin h",
        {{"day", "day of the year", fixed(day_of_year, 0)},
         {"h", "elevation of the sun", degrees_text(elevation)},
         {"c", "extinction, sky " + name_of(sky), extinction ? fixed(*extinction, 2) : "no beam"}},
        fixed(beam.normal_lx, 0) + " lx square to the sun, " + fixed(beam.horizontal_lx, 0)
            + " lx on level ground",
        "IESNA daylight equations, as quoted by users; real levels may be half or twice"};
}

} // namespace throwline::sun
