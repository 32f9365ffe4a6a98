#include "sheet/frame_surfaces.h"

#include "base/parallel.h"

#include <cmath>

namespace throwline::sheet {

namespace {

/// Farther than any room.
constexpr double kSight_m = 1000.0;
/// Faces of round things turn by 22.5 degrees at most; sharper edges are drawn.
const double kCreaseCosine = std::cos(35.0 * 3.14159265358979323846 / 180.0);
/// One surface of a thing stands out from another by this much before a line parts them; bodies are
/// soft.
constexpr double kStep_m = 0.015;
constexpr double kBodyStep_m = 0.04;

Vec3 normal_of(const stage::Solid& solid, int triangle) {
    const auto& [a, b, c] = solid.mesh.triangles[static_cast<std::size_t>(triangle)];
    const Vec3& corner = solid.mesh.vertices[a];
    const Vec3 normal = (solid.mesh.vertices[b] - corner).cross(solid.mesh.vertices[c] - corner);
    const double length = normal.norm();
    return length > 0.0 ? Vec3{normal / length} : Vec3::UnitZ();
}

FrameSurface surface_of(const stage::Stage& stage, const Vec3& from, const Vec3& direction,
                        const std::optional<stage::Hit>& hit) {
    FrameSurface surface;
    surface.backing = checks::backing_of(stage, hit);
    if (!hit) {
        return surface;
    }
    surface.owner = hit->owner;
    surface.solid = hit->solid;
    surface.point = from + direction * hit->distance_m;
    surface.normal = normal_of(stage.solids[static_cast<std::size_t>(hit->solid)], hit->triangle);
    if (surface.normal.dot(direction) > 0.0) {
        surface.normal = -surface.normal;
    }
    return surface;
}

bool is_body(const stage::Solid& solid) {
    return solid.kind == stage::OwnerKind::cast || solid.kind == stage::OwnerKind::crew;
}

} // namespace

FrameSurface surface_along(const stage::Stage& stage, const stage::ShotView& view,
                           const Vec3& direction) {
    return surface_of(
        stage, view.pose.lens, direction,
        stage.rays->nearest_hit(view.pose.lens, direction, kSight_m, {view.owner, -1}));
}

FrameSurfaces surfaces_over_frame(const stage::Stage& stage, const stage::ShotView& view,
                                  int columns, int rows, const std::stop_token& stop) {
    FrameSurfaces surfaces;
    surfaces.columns = columns;
    surfaces.rows = rows;
    const auto across = static_cast<std::size_t>(columns);
    surfaces.cells.resize(across * static_cast<std::size_t>(rows));
    const auto look_along = [&](std::size_t row) {
        const double v = 1.0 - (2.0 * static_cast<double>(row) + 1.0) / rows;
        std::vector<Vec3> directions;
        directions.reserve(across);
        for (int column = 0; column < columns; ++column) {
            directions.push_back(
                view.frame.ray_direction({(2.0 * column + 1.0) / columns - 1.0, v}));
        }
        const auto hits =
            stage.rays->nearest_hits(view.pose.lens, directions, kSight_m, {view.owner, -1});
        for (std::size_t column = 0; column < across; ++column) {
            surfaces.cells[row * across + column] =
                surface_of(stage, view.pose.lens, directions[column], hits[column]);
        }
    };
    parallel_for(static_cast<std::size_t>(rows), look_along, stop);
    return surfaces;
}

Seam seam_between(const stage::Stage& stage, const FrameSurface& a, const FrameSurface& b) {
    if (a.owner != b.owner) {
        return Seam::outline;
    }
    if (a.owner < 0) {
        return Seam::none;
    }
    const bool body = is_body(stage.solids[static_cast<std::size_t>(a.solid)]);
    const Vec3 between = b.point - a.point;
    const double step_m =
        std::min(std::abs(a.normal.dot(between)), std::abs(b.normal.dot(between)));
    if (step_m > (body ? kBodyStep_m : kStep_m)) {
        return body ? Seam::crease : Seam::outline;
    }
    return !body && a.normal.dot(b.normal) < kCreaseCosine ? Seam::crease : Seam::none;
}

} // namespace throwline::sheet
