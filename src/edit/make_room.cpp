#include "edit/carried_room.h"
#include "edit/lamp_stand.h"
#include "edit/make.h"
#include "edit/on_paper.h"
#include "edit/placing.h"
#include "plan/places.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <optional>
#include <vector>

namespace throwline::edit {

namespace {

/// As many as the reader takes.
constexpr std::size_t kMostCorners = 1000;
constexpr int kMostPipes = 100;
/// Pitches that fill a side but for rounding do fill it.
constexpr double kWholePitch = 1e-9;
/// Of walls that nobody measured (common practice, no source).
constexpr Length kUsualThickness = Length::millimetres(100);

Length usual_height(UnitSystem units) {
    return units == UnitSystem::metric ? Length::metres(2.4) : Length::feet(8);
}

plan::Wall usual_wall(const plan::Room& room) {
    plan::Wall wall;
    wall.height = room.height;
    wall.thickness = room.walls.empty() ? kUsualThickness : room.walls.front().thickness;
    return wall;
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

/// Lamps that hung on the grid go to the nearest place of the new one; without one, onto stands.
void hang_again(const Context& context, plan::Plan& plan) {
    for (plan::Lamp& lamp : plan.lamps) {
        const auto* hang = std::get_if<plan::GridHang>(&lamp.mount);
        if (hang == nullptr) {
            continue;
        }
        const Vec2 at = floor_of(plan::lamp_point(context.plan, lamp).value_or(Vec3::Zero()));
        if (plan.grid) {
            plan::GridHang below = *hang;
            below.drop = std::min(below.drop, plan.grid->height / 2.0);
            lamp.mount = mount_near(plan, below, at);
        } else if (const auto stand = stand_at(context.catalogue, at)) {
            lamp.mount = *stand;
        }
    }
}

/// Rows and columns half a pitch or more from the walls; what is left over is shared between both
/// sides. None for a pitch of 0.
Result<std::optional<plan::Grid>> studio_grid(const Studio& studio) {
    if (studio.pitch.m() <= 0.0) {
        return std::optional<plan::Grid>{};
    }
    if (studio.grid_height.m() <= 0.0 || studio.grid_height >= studio.height) {
        return failure("the pipe grid hangs above the floor and below the roof");
    }
    const auto pipes = [&](Length side) {
        return static_cast<int>(side / studio.pitch + kWholePitch);
    };
    plan::Grid grid;
    grid.pitch_x = grid.pitch_y = studio.pitch;
    grid.columns = pipes(studio.width);
    grid.rows = pipes(studio.depth);
    grid.height = studio.grid_height;
    if (grid.columns < 1 || grid.rows < 1) {
        return failure("the pitch of the grid is wider than the studio");
    }
    if (std::max(grid.columns, grid.rows) > kMostPipes) {
        return failure(
            fmt::format("a grid has at most {} pipes each way; make the pitch wider", kMostPipes));
    }
    grid.origin = {(studio.width - studio.pitch * (grid.columns - 1)).m() / 2.0,
                   (studio.depth - studio.pitch * (grid.rows - 1)).m() / 2.0};
    return std::optional{grid};
}

} // namespace

Result<Step> room_drawn(const Context& context, std::span<const Vec2> corners) {
    if (corners.size() < 3) {
        return failure("a room has three corners or more");
    }
    if (corners.size() > kMostCorners) {
        return failure(fmt::format("a room has at most {} corners", kMostCorners));
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
    if (const std::vector<std::string> left = carry_over(old, step.plan); !left.empty()) {
        step.name = fmt::format("Draw the room, without {}", fmt::join(left, ", "));
    }
    clamp_again(context.plan, step.plan);
    return step;
}

Result<Step> studio_made(const Context& context, const Studio& studio) {
    if (!is_a_size(studio.width) || !is_a_size(studio.depth) || !is_a_size(studio.height)) {
        return failure("a studio has a width, a depth and a height, each at most 1000 m");
    }
    const Result<std::optional<plan::Grid>> grid = studio_grid(studio);
    if (!grid) {
        return tl::unexpected{grid.error()};
    }
    const double width_m = studio.width.m();
    const double depth_m = studio.depth.m();
    Result<Step> step = room_drawn(
        context, std::vector<Vec2>{{0, 0}, {width_m, 0}, {width_m, depth_m}, {0, depth_m}});
    if (!step) {
        return step;
    }
    plan::Room& room = step->plan.room;
    room.height = studio.height;
    for (plan::Wall& wall : room.walls) {
        wall.height = studio.height;
    }
    for (const plan::Opening& opening : room.openings) {
        if (opening.head > studio.height) {
            return failure(fmt::format("{} is higher than the studio would be", opening.id.name));
        }
    }
    step->name = "Make a studio";
    step->plan.grid = *grid;
    hang_again(context, step->plan);
    return step;
}

} // namespace throwline::edit
