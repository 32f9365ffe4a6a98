#include "sun/position.h"

#include "base/length_text.h"

#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sun {

namespace {

constexpr double kDegree_rad = std::numbers::pi / 180.0;
constexpr double kCentury_days = 36525.0;
constexpr double kJ2000 = 2451545.0;
/// Terrestrial less universal time. About this in 2000-2030; a minute more or less moves the sun by
/// 0.0007 deg.
constexpr double kDeltaT_s = 69.0;
constexpr double kParallax_rad = 8.794 / 3600.0 * kDegree_rad;

double sin_deg(double angle_deg) {
    return std::sin(angle_deg * kDegree_rad);
}
double cos_deg(double angle_deg) {
    return std::cos(angle_deg * kDegree_rad);
}

/// Where the sun stands among the stars, and how the sky is turned above Greenwich.
struct Ephemeris {
    double right_ascension_rad = 0.0;
    double declination_rad = 0.0;
    /// Apparent sidereal time.
    double greenwich_rad = 0.0;
    double distance_au = 1.0;
};

/// Longitude along the ecliptic, before aberration and nutation, and the true anomaly.
struct EclipticSun {
    double longitude_deg = 0.0;
    double distance_au = 1.0;
};

EclipticSun ecliptic_sun(double centuries) {
    const double t = centuries;
    const double mean_longitude_deg = 280.46646 + 36000.76983 * t + 0.0003032 * t * t;
    const double anomaly_deg = 357.52911 + 35999.05029 * t - 0.0001537 * t * t;
    const double eccentricity = 0.016708634 - 0.000042037 * t;
    const double centre_deg = (1.914602 - 0.004817 * t - 0.000014 * t * t) * sin_deg(anomaly_deg)
                              + (0.019993 - 0.000101 * t) * sin_deg(2.0 * anomaly_deg)
                              + 0.000289 * sin_deg(3.0 * anomaly_deg);
    const double distance_au = 1.000001018 * (1.0 - eccentricity * eccentricity)
                               / (1.0 + eccentricity * cos_deg(anomaly_deg + centre_deg));
    return {mean_longitude_deg + centre_deg, distance_au};
}

Ephemeris ephemeris(UtcTime time) {
    const double universal_days = julian_date(time) - kJ2000;
    const double t = (universal_days + kDeltaT_s / 86400.0) / kCentury_days;
    const double t_universal = universal_days / kCentury_days;
    const EclipticSun sun = ecliptic_sun(t);
    const double node_deg = 125.04 - 1934.136 * t;
    const double longitude_deg = sun.longitude_deg - 0.00569 - 0.00478 * sin_deg(node_deg);
    const double obliquity_deg = 23.4392911 - 0.0130041667 * t + 0.00256 * cos_deg(node_deg);
    const double greenwich_deg = 280.46061837 + 360.98564736629 * universal_days
                                 + 0.000387933 * t_universal * t_universal
                                 - 0.00478 * sin_deg(node_deg) * cos_deg(obliquity_deg);
    return {std::atan2(cos_deg(obliquity_deg) * sin_deg(longitude_deg), cos_deg(longitude_deg)),
            std::asin(sin_deg(obliquity_deg) * sin_deg(longitude_deg)),
            std::fmod(greenwich_deg, 360.0) * kDegree_rad, sun.distance_au};
}

double whole_turn_deg(double angle_deg) {
    const double turned = std::fmod(angle_deg, 360.0);
    return turned < 0.0 ? turned + 360.0 : turned;
}

} // namespace

SunPosition sun_position(const EarthPlace& place, UtcTime time, const Atmosphere& air) {
    const Ephemeris sun = ephemeris(time);
    const double hour_rad = sun.greenwich_rad + place.longitude.rad() - sun.right_ascension_rad;
    const double sin_lat = std::sin(place.latitude.rad());
    const double cos_lat = std::cos(place.latitude.rad());
    const double sin_dec = std::sin(sun.declination_rad);
    const double cos_dec = std::cos(sun.declination_rad);
    const double east = -cos_dec * std::sin(hour_rad);
    const double north = sin_dec * cos_lat - cos_dec * std::cos(hour_rad) * sin_lat;
    const double up = sin_lat * sin_dec + cos_lat * cos_dec * std::cos(hour_rad);
    // The geocentric elevation from all three parts keeps its digits near the zenith, where asin()
    // does not.
    const double geocentric_rad = std::atan2(up, std::hypot(east, north));
    const Angle airless =
        Angle::radians(geocentric_rad - kParallax_rad / sun.distance_au * std::cos(geocentric_rad));
    return {Angle::degrees(whole_turn_deg(std::atan2(east, north) / kDegree_rad)),
            airless + refraction(airless, air), airless};
}

Angle refraction(Angle airless_elevation, const Atmosphere& air) {
    // Half the sun's disc and the refraction at the horizon: lower, no part of it is seen.
    constexpr double kDiscBelow_deg = -(0.26667 + 0.5667);
    const double elevation_deg = airless_elevation.deg();
    if (elevation_deg < kDiscBelow_deg) {
        return Angle{};
    }
    const double argument_deg = elevation_deg + 10.3 / (elevation_deg + 5.11);
    return Angle::degrees(air.pressure_mbar / 1010.0 * 283.0 / (273.0 + air.temperature_c) * 1.02
                          / (60.0 * std::tan(argument_deg * kDegree_rad)));
}

Vec3 toward_sun(const SunPosition& position, Angle north) {
    const Vec2 bearing = unit_at(north.rad() - position.azimuth.rad());
    const double cos_elevation = std::cos(position.elevation.rad());
    return {bearing.x() * cos_elevation, bearing.y() * cos_elevation,
            std::sin(position.elevation.rad())};
}

Working sun_position_working(const EarthPlace& place, UtcTime time, const Atmosphere& air) {
    const SunPosition position = sun_position(place, time, air);
    return {"low-precision series for the sun's ecliptic longitude, turned to the place's horizon, "
            "with "
            "parallax and refraction",
            {{"", "latitude, north positive", degrees_text(place.latitude, 4)},
             {"", "longitude, east positive", degrees_text(place.longitude, 4)},
             {"", "time", time_text(time)},
             {"P", "air pressure", fixed(air.pressure_mbar, 0) + " mbar"},
             {"T", "air temperature", fixed(air.temperature_c, 0) + " C"},
             {"", "refraction", degrees_text(position.elevation - position.airless_elevation, 3)}},
            fmt::format("azimuth {} from true north, elevation {}",
                        degrees_text(position.azimuth, 2), degrees_text(position.elevation, 2)),
            "low-precision almanac series, from memory; refraction as in NREL/TP-560-34302"};
}

} // namespace throwline::sun
