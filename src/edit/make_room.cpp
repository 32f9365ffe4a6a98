#include "edit/make.h"
#include "edit/new_names.h"
#include "edit/placing.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// A corner is the old one when it is no farther from it than this.
constexpr double kSameCorner_m = 0.01;
/// Of walls that nobody measured (common practice, no source).
constexpr Length kUsualThickness = Length::millimetres(100);

Length usual_height(UnitSystem units) {
    return units == UnitSystem::metric ? Length::metres(2.4) : Length::feet(8);
}

bool same(const Vec2& a, const Vec2& b) {
    return (a - b).norm() <= kSameCorner_m;
}

/// The wall of the new outline that an old one has become, and whether it runs the other way.
struct Became {
    std::size_t wall = 0;
    bool reversed = false;
};

std::optional<Became> became(const Polygon& outline, const Vec2& from, const Vec2& to) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2& start = outline[i];
        const Vec2& end = outline[(i + 1) % outline.size()];
        if (same(start, from) && same(end, to)) {
            return Became{i, false};
        }
        if (same(start, to) && same(end, from)) {
            return Became{i, true};
        }
    }
    return std::nullopt;
}

plan::Wall usual_wall(const plan::Room& room) {
    plan::Wall wall;
    wall.height = room.height;
    wall.thickness = room.walls.empty() ? kUsualThickness : room.walls.front().thickness;
    return wall;
}

/// Walls and openings that are still there; returns how many openings are not.
int carry_over(const plan::Room& old, plan::Room& room) {
    int lost = 0;
    for (std::size_t i = 0; i < old.outline.size(); ++i) {
        const auto now =
            became(room.outline, old.outline[i], old.outline[(i + 1) % old.outline.size()]);
        if (now) {
            room.walls[now->wall] = old.walls[i];
        }
        for (const plan::Opening& opening : old.openings) {
            if (opening.wall != static_cast<int>(i)) {
                continue;
            }
            if (!now || now->reversed) {
                ++lost;
                continue;
            }
            plan::Opening kept = opening;
            kept.wall = static_cast<int>(now->wall);
            room.openings.push_back(kept);
        }
    }
    return lost;
}

/// Lamps clamped to walls go to the nearest of the new ones.
void clamp_again(const plan::Plan& old, plan::Plan& plan) {
    for (plan::Lamp& lamp : plan.lamps) {
        if (std::holds_alternative<plan::WallMount>(lamp.mount)) {
            const plan::Lamp* before = plan::find(old, lamp.id);
            const auto point = plan::lamp_point(old, *before);
            lamp.mount = mount_near(plan, lamp.mount, point ? floor_of(*point) : Vec2::Zero());
        }
    }
}

} // namespace

Result<Step> room_drawn(const Context& context, std::span<const Vec2> corners) {
    if (corners.size() < 3) {
        return failure("a room has three corners or more");
    }
    Step step{"Draw the room", context.plan, {}};
    plan::Room& room = step.plan.room;
    const plan::Room old = room;
    if (room.outline.empty()) {
        room.height = usual_height(context.plan.units);
    }
    room.outline.assign(corners.begin(), corners.end());
    room.walls.assign(room.outline.size(), usual_wall(old.outline.empty() ? room : old));
    room.openings.clear();
    if (const auto sound = check_walls(step.plan); !sound) {
        return tl::unexpected{sound.error()};
    }
    if (const int lost = carry_over(old, room); lost > 0) {
        step.name =
            fmt::format("Draw the room ({} {} lost)", lost, lost == 1 ? "opening" : "openings");
    }
    clamp_again(context.plan, step.plan);
    return step;
}

Result<Step> studio_made(const Context& context, const Studio& studio) {
    const double width_m = studio.width.m();
    const double depth_m = studio.depth.m();
    if (!(width_m > 0.0) || !(depth_m > 0.0) || !(studio.height.m() > 0.0)) {
        return failure("a studio has a width, a depth and a height");
    }
    if (studio.pitch.m() > 0.0 && studio.grid_height >= studio.height) {
        return failure("the pipe grid must hang below the roof");
    }
    Result<Step> step = room_drawn(
        context, std::vector<Vec2>{{0, 0}, {width_m, 0}, {width_m, depth_m}, {0, depth_m}});
    if (!step) {
        return step;
    }
    step->name = "Make a studio";
    plan::Room& room = step->plan.room;
    room.height = studio.height;
    for (plan::Wall& wall : room.walls) {
        wall.height = studio.height;
    }
    step->plan.grid.reset();
    if (studio.pitch.m() > 0.0) {
        plan::Grid grid;
        grid.pitch_x = grid.pitch_y = studio.pitch;
        // Half a pitch is kept free at the walls, and what is left over is shared.
        grid.columns = std::clamp(static_cast<int>(width_m / studio.pitch.m()), 1, 200);
        grid.rows = std::clamp(static_cast<int>(depth_m / studio.pitch.m()), 1, 200);
        grid.height = studio.grid_height;
        grid.origin = {(width_m - (grid.columns - 1) * studio.pitch.m()) / 2.0,
                       (depth_m - (grid.rows - 1) * studio.pitch.m()) / 2.0};
        step->plan.grid = grid;
    }
    for (plan::Lamp& lamp : step->plan.lamps) {
        lamp.mount = mount_near(step->plan, lamp.mount, Vec2{width_m / 2.0, depth_m / 2.0});
    }
    return step;
}

Result<Step> corner_added(const Context& context, int wall, double along_m) {
    const plan::Room& old = context.plan.room;
    const auto index = static_cast<std::size_t>(wall);
    if (wall < 0 || index >= old.outline.size()) {
        return failure("there is no such wall");
    }
    const Vec2 from = old.outline[index];
    const Vec2 to = old.outline[(index + 1) % old.outline.size()];
    const double length_m = (to - from).norm();
    if (along_m <= kSameCorner_m || along_m >= length_m - kSameCorner_m) {
        return failure("a corner is there already");
    }
    Step step{fmt::format("New corner in wall {}", plan::number_of_wall(wall)), context.plan, {}};
    plan::Room& room = step.plan.room;
    const auto at = static_cast<std::ptrdiff_t>(index) + 1;
    room.outline.insert(room.outline.begin() + at, from + (to - from) * (along_m / length_m));
    room.walls.insert(room.walls.begin() + at, old.walls[index]);
    const Length corner = Length::metres(along_m);
    for (plan::Opening& opening : room.openings) {
        if (opening.wall > wall) {
            ++opening.wall;
        } else if (opening.wall == wall && opening.from_start >= corner) {
            ++opening.wall;
            opening.from_start = opening.from_start - corner;
        } else if (opening.wall == wall && opening.from_start + opening.width > corner) {
            return failure(fmt::format("{} is there", opening.id.name));
        }
    }
    for (plan::Lamp& lamp : step.plan.lamps) {
        auto* mount = std::get_if<plan::WallMount>(&lamp.mount);
        if (mount != nullptr && mount->wall > wall) {
            ++mount->wall;
        } else if (mount != nullptr && mount->wall == wall && mount->along > corner) {
            ++mount->wall;
            mount->along = mount->along - corner;
        }
    }
    return step;
}

Result<Step> opening_added(const Context& context, plan::OpeningKind kind, const Vec2& at,
                           Length width) {
    if (context.plan.room.outline.empty()) {
        return failure("draw the room first: doors and windows are in its walls");
    }
    Step step{{}, context.plan, {}};
    plan::Opening opening;
    opening.kind = kind;
    opening.width = width;
    opening.head = Length::metres(2.0);
    std::string_view words = "opening";
    switch (kind) {
    case plan::OpeningKind::door:
        words = "door";
        opening.swing = plan::Swing{};
        break;
    case plan::OpeningKind::window:
        words = "window";
        opening.sill = Length::metres(0.9);
        opening.transmission = 0.9;
        break;
    case plan::OpeningKind::opening:
        break;
    }
    for (const plan::Wall& wall : context.plan.room.walls) {
        opening.head = std::min(opening.head, wall.height);
    }
    if (opening.sill >= opening.head) {
        opening.sill = opening.head / 2.0;
    }
    opening.id.name = new_name(context.plan, std::string{words});
    step.name = fmt::format("New {}", opening.id.name);
    step.made = {{Kind::opening, opening.id.name, 0}};
    // On no wall yet, so that it is in nobody's way while a place is sought.
    opening.wall = -1;
    step.plan.room.openings.push_back(opening);
    if (const auto done = put_opening(step.plan, opening.id.name, at); !done) {
        return tl::unexpected{done.error()};
    }
    return step;
}

} // namespace throwline::edit
