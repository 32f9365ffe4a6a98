#pragma once

#include "checks/check.h"

#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

/// Where things fall in the frame of a shot; shared by the checks that look through a lens.
namespace throwline::checks {

/// Farther than any room: rays from a lens end here.
inline constexpr double kSight_m = 1000.0;

/// The subjects of a shot who are on the floor in its beat, in the order of the shot.
std::vector<const stage::Figure*> subjects_on_floor(const ShotScene& scene);

/// A rectangle in frame coordinates (u right, v up, each -1..1 across the frame).
struct FrameBounds {
    Vec2 least = Vec2::Zero();
    Vec2 most = Vec2::Zero();

    bool is_empty() const { return !(most.x() > least.x() && most.y() > least.y()); }
    /// Share of the whole frame that the rectangle takes, when it lies inside.
    double share_of_frame() const;
    Vec2 middle() const { return 0.5 * (least + most); }
    /// The part inside the frame; empty when there is none.
    FrameBounds inside_frame() const;
};

/// Around the places where some points fall, also outside the frame. Nothing when all of them are
/// behind the lens; the whole frame and more when only some are.
std::optional<FrameBounds> bounds_of(const optics::Frame& frame, std::span<const Vec3> points);

/// Corners of all solids of an owner; of one part of it when `part` is given.
std::vector<Vec3> corners_of(const stage::Stage& stage, int owner,
                             std::optional<stage::Part> part = std::nullopt);

/// Unit directions through the middles of a grid of cells over a rectangle of the frame, row by row
/// from its upper left.
struct GridSize {
    int columns = 0;
    int rows = 0;
};
std::vector<Vec3> directions_over(const optics::Frame& frame, const FrameBounds& bounds,
                                  GridSize grid);

/// "upper left", "top", "right", "middle", ...: the frame parted in thirds.
std::string place_in_frame(const Vec2& frame_point);

/// A finding about one shot at one beat, with nothing said yet.
Finding finding_in(const ShotScene& scene, std::string_view check, Severity severity);

/// Runs `look(scene, view, findings)` for every shot that could be resolved, until stopped.
template <class Look>
std::vector<Finding> over_shots(const CheckInput& input, const std::stop_token& stop, Look look) {
    std::vector<Finding> findings;
    for (const ShotScene& scene : input.shots) {
        if (stop.stop_requested()) {
            break;
        }
        if (scene.view) {
            look(scene, *scene.view, findings);
        }
    }
    return findings;
}

} // namespace throwline::checks
