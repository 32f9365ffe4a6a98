#pragma once

#include "stage/stage.h"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

/// What of a level map is left of use when something on the stage changes.
namespace throwline::stage {

/// What one lamp gives to the points of a map, and a number that stands for the lamp as it burned.
struct LampLayer {
    plan::Id<plan::Lamp> lamp;
    std::uint64_t state = 0;
    /// One a point inside the room; empty for a lamp that does not burn.
    std::vector<double> levels_lx;
};

/// A thing on the stage as it stands in the way of light: the box around it, and a number that
/// stands for its shape and place.
struct OwnerShape {
    OwnerKind kind = OwnerKind::scenery;
    std::string name;
    std::uint64_t shape = 0;
    Vec3 low = Vec3::Zero();
    Vec3 high = Vec3::Zero();
};

/// A number that stands for all that a lamp's light goes by.
std::uint64_t state_of(const PlacedLamp& lamp);
/// In the order of Stage::owners, those without solids left out.
std::vector<OwnerShape> shapes_of(const Stage& stage);

/// Where something stood or stands that was not in the way of a lamp like that before.
struct ChangedBox {
    OwnerKind kind = OwnerKind::scenery;
    std::string name;
    Vec3 low = Vec3::Zero();
    Vec3 high = Vec3::Zero();
};
std::vector<ChangedBox> changed_boxes(std::span<const OwnerShape> before,
                                      std::span<const OwnerShape> now);

/// Indices of the points whose light from the lamp one of the boxes may cut off: those from which a
/// line to the middle of the bright face meets a box grown by half the face. The lamp's own parts
/// never do.
std::vector<std::size_t> points_behind(std::span<const ChangedBox> boxes, const PlacedLamp& lamp,
                                       std::span<const Vec3> points);

} // namespace throwline::stage
