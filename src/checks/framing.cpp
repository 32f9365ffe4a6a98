#include "checks/framing.h"

#include <algorithm>

namespace throwline::checks {

namespace {

/// Bounds of something that reaches behind the lens: beyond every edge of the frame.
constexpr double kBeyondFrame = 10.0;
/// Area of the frame in its own coordinates.
constexpr double kFrameArea = 4.0;
/// Where the outer thirds of the frame begin.
constexpr double kThird = 1.0 / 3.0;

} // namespace

std::vector<const stage::Figure*> subjects_on_floor(const ShotScene& scene) {
    std::vector<const stage::Figure*> subjects;
    for (const plan::Id<plan::Person>& id : scene.shot->subjects) {
        if (const stage::Figure* figure = scene.stage.figure(id)) {
            subjects.push_back(figure);
        }
    }
    return subjects;
}

double FrameBounds::share_of_frame() const {
    return is_empty() ? 0.0 : (most.x() - least.x()) * (most.y() - least.y()) / kFrameArea;
}

FrameBounds FrameBounds::inside_frame() const {
    return {least.cwiseMax(-1.0).cwiseMin(1.0), most.cwiseMax(-1.0).cwiseMin(1.0)};
}

std::optional<FrameBounds> bounds_of(const optics::Frame& frame, std::span<const Vec3> points) {
    std::optional<FrameBounds> bounds;
    bool some_behind = false;
    for (const Vec3& point : points) {
        const std::optional<Vec2> at = frame.project(point);
        if (!at) {
            some_behind = true;
        } else if (!bounds) {
            bounds = FrameBounds{*at, *at};
        } else {
            bounds->least = bounds->least.cwiseMin(*at);
            bounds->most = bounds->most.cwiseMax(*at);
        }
    }
    if (bounds && some_behind) {
        bounds = FrameBounds{Vec2::Constant(-kBeyondFrame), Vec2::Constant(kBeyondFrame)};
    }
    return bounds;
}

std::vector<Vec3> corners_of(const stage::Stage& stage, int owner,
                             std::optional<stage::Part> part) {
    std::vector<Vec3> corners;
    for (const stage::Solid& solid : stage.solids) {
        if (solid.owner_index == owner && (!part || solid.part == *part)) {
            corners.insert(corners.end(), solid.mesh.vertices.begin(), solid.mesh.vertices.end());
        }
    }
    return corners;
}

std::vector<Vec3> directions_over(const optics::Frame& frame, const FrameBounds& bounds,
                                  GridSize grid) {
    std::vector<Vec3> directions;
    directions.reserve(static_cast<std::size_t>(grid.columns)
                       * static_cast<std::size_t>(grid.rows));
    const Vec2 span = bounds.most - bounds.least;
    for (int row = 0; row < grid.rows; ++row) {
        const double v = bounds.most.y() - span.y() * (row + 0.5) / grid.rows;
        for (int column = 0; column < grid.columns; ++column) {
            const double u = bounds.least.x() + span.x() * (column + 0.5) / grid.columns;
            directions.push_back(frame.ray_direction({u, v}));
        }
    }
    return directions;
}

std::string place_in_frame(const Vec2& frame_point) {
    const bool left = frame_point.x() < -kThird;
    const bool right = frame_point.x() > kThird;
    const std::string side = left ? "left" : right ? "right" : "";
    if (frame_point.y() > kThird) {
        return side.empty() ? "top" : "upper " + side;
    }
    if (frame_point.y() < -kThird) {
        return side.empty() ? "bottom" : "lower " + side;
    }
    return side.empty() ? "middle" : side;
}

Finding finding_in(const ShotScene& scene, std::string_view check, Severity severity) {
    Finding finding;
    finding.check = check;
    finding.severity = severity;
    finding.shot = scene.shot->id;
    finding.beat = scene.beat->id;
    return finding;
}

} // namespace throwline::checks
