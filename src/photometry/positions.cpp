#include "photometry/positions.h"

#include "base/length_text.h"
#include "photometry/words.h"

#include <cmath>

namespace throwline::photometry {

namespace {

// Common practice, no source.
constexpr Angle kFlatKey = Angle::degrees(15.0);
constexpr Angle kWideKey = Angle::degrees(60.0);
constexpr Angle kDarkEyes = Angle::degrees(50.0);
constexpr Angle kShadowsOnSet = Angle::degrees(20.0);
constexpr Angle kLowBackLight = Angle::degrees(30.0);

Angle magnitude(Angle angle) {
    return Angle::radians(std::abs(angle.rad()));
}

bool within(const UsualRange& range, const LampDirection& direction) {
    const Angle azimuth = magnitude(direction.azimuth);
    return azimuth >= range.azimuth_least && azimuth <= range.azimuth_most
           && direction.elevation >= range.elevation_least
           && direction.elevation <= range.elevation_most;
}

void warn_of_key(const LampDirection& direction, std::vector<PlacementWarning>& warnings) {
    if (magnitude(direction.azimuth) < kFlatKey) {
        warnings.push_back(PlacementWarning::flat_key);
    }
    if (magnitude(direction.azimuth) > kWideKey) {
        warnings.push_back(PlacementWarning::wide_key);
    }
    if (direction.elevation > kDarkEyes) {
        warnings.push_back(PlacementWarning::dark_eyes);
    }
    if (direction.elevation < kShadowsOnSet) {
        warnings.push_back(PlacementWarning::shadows_on_set);
    }
}

void warn_of_fill(const LampDirection& direction, const std::optional<LampDirection>& key,
                  std::vector<PlacementWarning>& warnings) {
    if (direction.elevation > kDarkEyes) {
        warnings.push_back(PlacementWarning::dark_eyes);
    }
    if (key && key->azimuth.rad() * direction.azimuth.rad() > 0.0) {
        warnings.push_back(PlacementWarning::fill_beside_key);
    }
}

} // namespace

std::optional<LampDirection> lamp_direction(const Vec3& eyes, const Vec3& camera,
                                            const Vec3& lamp) {
    const Vec2 to_camera = floor_of(camera) - floor_of(eyes);
    const Vec2 to_lamp = floor_of(lamp) - floor_of(eyes);
    const double rise_m = lamp.z() - eyes.z();
    if (to_camera.norm() == 0.0 || (to_lamp.norm() == 0.0 && rise_m == 0.0)) {
        return std::nullopt;
    }
    // Camera right is anticlockwise from the direction to the camera, seen from above.
    const double azimuth_rad =
        to_lamp.norm() == 0.0 ? 0.0 : wrapped(angle_of(to_lamp) - angle_of(to_camera));
    return LampDirection{Angle::radians(azimuth_rad),
                         Angle::radians(std::atan2(rise_m, to_lamp.norm()))};
}

std::string name_of(LampRole role) {
    return std::string{kLampRoleNames[static_cast<std::size_t>(role)].name};
}

std::optional<UsualRange> usual_range(LampRole role) {
    const auto range = [](double az_least, double az_most, double el_least, double el_most) {
        return UsualRange{Angle::degrees(az_least), Angle::degrees(az_most),
                          Angle::degrees(el_least), Angle::degrees(el_most)};
    };
    switch (role) {
    case LampRole::key:
        return range(30.0, 45.0, 30.0, 45.0);
    case LampRole::fill:
        return range(15.0, 60.0, 0.0, 30.0);
    case LampRole::back:
        return range(135.0, 180.0, 45.0, 60.0);
    case LampRole::background:
    case LampRole::effect:
    case LampRole::practical:
        return std::nullopt;
    }
    return std::nullopt;
}

std::string sentence_of(PlacementWarning warning) {
    switch (warning) {
    case PlacementWarning::flat_key:
        return "the key stands within 15 degrees of the camera and flattens the face";
    case PlacementWarning::wide_key:
        return "the key stands more than 60 degrees from the camera";
    case PlacementWarning::dark_eyes:
        return "the lamp is higher than 50 degrees and leaves the eye sockets dark";
    case PlacementWarning::shadows_on_set:
        return "the lamp is lower than 20 degrees and throws shadows on what is behind";
    case PlacementWarning::low_back_light:
        return "the back light is lower than 30 degrees and may flare in the lens";
    case PlacementWarning::fill_beside_key:
        return "the fill stands on the same side of the camera as the key";
    case PlacementWarning::outside_range:
        return "the lamp stands outside the usual range for its role";
    }
    return {};
}

std::vector<PlacementWarning> placement_warnings(LampRole role, const LampDirection& direction,
                                                 const std::optional<LampDirection>& key) {
    std::vector<PlacementWarning> warnings;
    if (role == LampRole::key) {
        warn_of_key(direction, warnings);
    } else if (role == LampRole::fill) {
        warn_of_fill(direction, key, warnings);
    } else if (role == LampRole::back && direction.elevation < kLowBackLight) {
        warnings.push_back(PlacementWarning::low_back_light);
    }
    const std::optional<UsualRange> range = usual_range(role);
    if (warnings.empty() && range && !within(*range, direction)) {
        warnings.push_back(PlacementWarning::outside_range);
    }
    return warnings;
}

std::optional<LampDistance> distance_for_elevation(Length eye_height, Length lamp_height,
                                                   Angle elevation) {
    const Length rise = lamp_height - eye_height;
    if (rise.m() <= 0.0 || elevation.rad() <= 0.0 || elevation >= Angle::degrees(90.0)) {
        return std::nullopt;
    }
    return LampDistance{rise / std::tan(elevation.rad()), rise / std::sin(elevation.rad())};
}

Working lamp_direction_working(const Vec3& eyes, const Vec3& camera, const Vec3& lamp) {
    const std::optional<LampDirection> direction = lamp_direction(eyes, camera, lamp);
    return {"azimuth from the direction to the camera, camera right positive; elevation = "
            "atan(rise / run)",
            {{"", "eyes", point_text(eyes)},
             {"", "camera", point_text(camera)},
             {"", "lamp", point_text(lamp)}},
            direction ? "azimuth " + degrees_text(direction->azimuth, 1) + ", elevation "
                            + degrees_text(direction->elevation, 1)
                      : "none: the camera stands over the eyes",
            "plain geometry"};
}

} // namespace throwline::photometry
