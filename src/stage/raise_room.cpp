#include "stage/raising.h"

#include <fmt/format.h>

#include <algorithm>

namespace throwline::stage {

namespace {

/// Thickness of a door's leaf (common practice, no source).
constexpr double kDoorLeaf_m = 0.04;

/// A hole in a wall: along it, and up.
struct Hole {
    double start_m, end_m, sill_m, head_m;
};

/// A wall as a plane: start corner, unit vector along it, unit vector into the room.
struct WallPlane {
    Vec2 start = Vec2::Zero();
    Vec2 along = Vec2::UnitX();
    Vec2 inward = Vec2::UnitY();
    double length_m = 0.0;
    double height_m = 0.0;

    Vec3 at(double along_m, double z_m) const { return raised(start + along * along_m, z_m); }
};

WallPlane wall_plane(const plan::Room& room, std::size_t index) {
    const Vec2& from = room.outline[index];
    const Vec2& to = room.outline[(index + 1) % room.outline.size()];
    WallPlane wall;
    wall.start = from;
    wall.length_m = (to - from).norm();
    wall.along = (to - from) / wall.length_m;
    // The room lies to the left of its walls when they are walked anticlockwise.
    wall.inward = turned_left(wall.along) * (signed_area(room.outline) > 0.0 ? 1.0 : -1.0);
    const Length height = index < room.walls.size() ? room.walls[index].height : Length{};
    wall.height_m = height > Length{} ? height.m() : room.height.m();
    return wall;
}

std::vector<const plan::Opening*> openings_in(const plan::Room& room, std::size_t wall) {
    std::vector<const plan::Opening*> found;
    for (const plan::Opening& opening : room.openings) {
        if (opening.wall >= 0 && static_cast<std::size_t>(opening.wall) == wall) {
            found.push_back(&opening);
        }
    }
    return found;
}

std::vector<double> sorted_cuts(std::vector<double> cuts, double end_m) {
    cuts.push_back(0.0);
    cuts.push_back(end_m);
    for (double& cut : cuts) {
        cut = std::clamp(cut, 0.0, end_m);
    }
    std::sort(cuts.begin(), cuts.end());
    cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
    return cuts;
}

/// The wall as a grid of sheets cut at the edges of its holes, front towards the room.
Mesh with_holes(const WallPlane& wall, const std::vector<Hole>& holes) {
    std::vector<double> along_cuts;
    std::vector<double> up_cuts;
    for (const Hole& hole : holes) {
        along_cuts.insert(along_cuts.end(), {hole.start_m, hole.end_m});
        up_cuts.insert(up_cuts.end(), {hole.sill_m, hole.head_m});
    }
    const std::vector<double> xs = sorted_cuts(std::move(along_cuts), wall.length_m);
    const std::vector<double> zs = sorted_cuts(std::move(up_cuts), wall.height_m);
    const bool inward_is_left = cross(wall.along, wall.inward) > 0.0;
    Mesh mesh;
    for (std::size_t i = 0; i + 1 < xs.size(); ++i) {
        for (std::size_t j = 0; j + 1 < zs.size(); ++j) {
            const double x = (xs[i] + xs[i + 1]) / 2.0;
            const double z = (zs[j] + zs[j + 1]) / 2.0;
            const bool is_open = std::any_of(holes.begin(), holes.end(), [&](const Hole& hole) {
                return x > hole.start_m && x < hole.end_m && z > hole.sill_m && z < hole.head_m;
            });
            if (is_open) {
                continue;
            }
            // Seen from the left of its run, a wall's start is at the right.
            const double first = inward_is_left ? xs[i + 1] : xs[i];
            const double second = inward_is_left ? xs[i] : xs[i + 1];
            mesh.append(sheet(wall.at(first, zs[j]), wall.at(second, zs[j]),
                              wall.at(second, zs[j + 1]), wall.at(first, zs[j + 1])));
        }
    }
    return mesh;
}

/// The leaf stands shut behind the inside face of the wall.
Mesh shut_leaf(const WallPlane& wall, const Hole& hole) {
    const double middle_m = (hole.start_m + hole.end_m) / 2.0;
    const Vec2 centre = wall.start + wall.along * middle_m - wall.inward * (kDoorLeaf_m / 2.0);
    return upright_box(centre, hole.end_m - hole.start_m, kDoorLeaf_m, angle_of(wall.along),
                       hole.sill_m, hole.head_m);
}

Hole hole_of(const plan::Opening& opening) {
    return {opening.from_start.m(), (opening.from_start + opening.width).m(), opening.sill.m(),
            opening.head.m()};
}

Surface wall_surface(const Raising& raising, std::size_t index) {
    const plan::Room& room = raising.moment.plan.room;
    const double rooms = raising.reflectance(room.finish, kUsualReflectance);
    if (index >= room.walls.size()) {
        return {rooms, false};
    }
    const plan::Wall& wall = room.walls[index];
    return {raising.reflectance(wall.finish, rooms), wall.dressed};
}

void raise_wall(Raising& raising, std::size_t index) {
    const plan::Room& room = raising.moment.plan.room;
    const WallPlane wall = wall_plane(room, index);
    const int owner = raising.owner(OwnerKind::room, wall_name(static_cast<int>(index)));
    std::vector<Hole> holes;
    for (const plan::Opening* opening : openings_in(room, index)) {
        holes.push_back(hole_of(*opening));
    }
    raising.add(owner, Part::wall, with_holes(wall, holes), wall_surface(raising, index));
}

void raise_doors(Raising& raising, std::size_t index) {
    const plan::Room& room = raising.moment.plan.room;
    for (const plan::Opening* opening : openings_in(room, index)) {
        if (opening->kind == plan::OpeningKind::door) {
            const int owner = raising.owner(OwnerKind::room, opening->id.name);
            raising.add(owner, Part::door_leaf,
                        shut_leaf(wall_plane(room, index), hole_of(*opening)),
                        wall_surface(raising, index));
        }
    }
}

} // namespace

std::string wall_name(int index) {
    return fmt::format("wall {}", plan::number_of_wall(index));
}

void raise_room(Raising& raising) {
    const plan::Room& room = raising.moment.plan.room;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        raise_wall(raising, i);
    }
    const double rooms = raising.reflectance(room.finish, kUsualReflectance);
    raising.add(raising.owner(OwnerKind::room, "floor"), Part::floor,
                level_sheet(room.outline, 0.0, true),
                {raising.reflectance(room.floor_finish, rooms), room.floor_dressed});
    raising.add(raising.owner(OwnerKind::room, "ceiling"), Part::ceiling,
                level_sheet(room.outline, room.height.m(), false),
                {raising.reflectance(room.ceiling_finish, rooms), room.ceiling_dressed});
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        raise_doors(raising, i);
    }
}

} // namespace throwline::stage
