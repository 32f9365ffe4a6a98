#pragma once

#include "photometry/soft_source.h"
#include "stage/stage.h"

#include <optional>
#include <span>
#include <vector>

/// What each lamp sends to a place, and what stands in its way.
namespace throwline::stage {

/// Something between a place and a lamp's bright face, and the share of the face (0..1) that it is
/// the first to hide.
struct LightBlocker {
    int owner = -1;
    double share = 0.0;

    bool operator==(const LightBlocker&) const = default;
};

/// Light of one lamp at a receiver.
struct LampLight {
    /// Index into Stage::lamps.
    int lamp = -1;
    Vec3 receiver = Vec3::Zero();
    /// Unit vector from the receiver to the middle of the bright face.
    Vec3 to_lamp = Vec3::UnitZ();
    /// From the middle of the bright face.
    double throw_m = 0.0;
    /// Between the lamp's axis and the direction to the receiver.
    Angle off_axis;
    /// Towards the receiver, before barn doors and blockers.
    double intensity_cd = 0.0;
    /// Share of the face (0..1) that barn doors or shutters let the receiver see.
    double passed_share = 1.0;
    /// Share of the face that the receiver sees: passed and with nothing in the way.
    double seen_share = 1.0;
    /// Largest share first, then by owner.
    std::vector<LightBlocker> blockers;
    /// The bright face of a soft lamp.
    std::optional<photometry::SoftPanel> panel;
    /// Intensity towards the receiver over that of an even diffuse face: less than 1 where a grid
    /// narrows a soft lamp.
    double narrowing = 1.0;

    /// Level on a surface through the receiver, `normal` a unit vector: with nothing in the way but
    /// the lamp's own barn doors, and as it is. Hard lamps: I cos(i) / d^2. Soft ones: Lambert's
    /// polygon formula, times `narrowing`. Both times the share of the face.
    double open_level_lx(const Vec3& normal) const;
    double level_lx(const Vec3& normal) const;
    /// On a surface square to the direction of the lamp's middle.
    double open_level_square_lx() const { return open_level_lx(to_lamp); }
    double level_square_lx() const { return level_lx(to_lamp); }
};

/// Light of every lamp, in the order of Stage::lamps. The face of a lamp is sampled in a fixed
/// pattern: one more thing in the way can only lower a level. A lamp's own housing and stand, and
/// `receiver_owner` (the person on whose face the receiver lies), do not block.
std::vector<LampLight> light_at(const Stage& stage, const Vec3& receiver, int receiver_owner = -1);
/// The same for one lamp.
LampLight light_from(const Stage& stage, int lamp, const Vec3& receiver, int receiver_owner = -1);

/// Sums over lamps, lux, on a surface with a unit normal.
double sum_open_level_lx(std::span<const LampLight> lights, const Vec3& normal);
double sum_level_lx(std::span<const LampLight> lights, const Vec3& normal);

/// Levels below this are left dark in maps where no other limit is asked for, and no ray is cast
/// for them.
inline constexpr double kDarkest_lx = 0.01;

/// Level from one lamp (by its index) at many points for maps: `normals` holds one unit vector for
/// all or one a point. Hard lamps take one ray a point to the middle of the face, soft ones a few.
/// Rays go in packets; points in coherent order are fastest. Nothing but the lamp's own parts is
/// let through.
std::vector<double> levels_from(const Stage& stage, int index, std::span<const Vec3> points,
                                std::span<const Vec3> normals, double darkest_lx = kDarkest_lx);

/// Share of light from a point on the bright face that barn doors or shutters let pass in a
/// direction: 1 or 0. Sides as seen from behind the lamp. A side that cuts by c stops what lies
/// beyond (1 - c) of half the field angle, measured in the plane through the axis and that side.
bool passes_cut(const PlacedLamp& lamp, const Vec3& direction);

} // namespace throwline::stage
