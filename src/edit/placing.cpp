#include "edit/placing.h"

#include "edit/moves.h"
#include "edit/on_paper.h"
#include "edit/pick.h"
#include "edit/places_of.h"
#include "plan/places.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// Lengths along a wall may run over its end by this much, as the reader has it: a tape reads no
/// finer, and a wall that is moved is as long as it was but for rounding.
constexpr double kFit_m = 0.001;

Result<void> put_person(plan::Plan& plan, const Context& context, const Thing& thing,
                        const Placing& placing) {
    if (context.now.beat.empty()) {
        return failure("make a beat first: people have their marks in beats");
    }
    plan::Mark* mark = own_mark(plan, plan::Id<plan::Person>{thing.name}, context.now.beat);
    if (mark == nullptr) {
        return failure(fmt::format("{} is not on the floor in this beat", thing.name));
    }
    mark->path.clear();
    const plan::Facing faces = mark->faces;
    plan::place(*mark, placing.to);
    if (!placing.with_aims) {
        mark->faces = faces;
    }
    return {};
}

Result<void> put_camera(plan::Plan& plan, const Context& context, const Thing& thing,
                        const Placing& placing) {
    plan::Camera* camera = find(plan, plan::Id<plan::Camera>{thing.name});
    const auto place =
        plan::camera_place(context.plan, *camera, context.now.beat, context.now.shot);
    if (!place) {
        return failure(fmt::format("{} is not on the floor now", thing.name));
    }
    if (plan::Shot* shot = find(plan, place->shot)) {
        const plan::Aim aim = shot->aim;
        plan::place(*shot, placing.to);
        if (!placing.with_aims) {
            shot->aim = aim;
        }
    } else if (camera->home) {
        placing.to.place(*camera->home);
    }
    return {};
}

Result<void> put_lamp(plan::Plan& plan, const Thing& thing, const Placing& placing) {
    plan::Lamp* lamp = find(plan, plan::Id<plan::Lamp>{thing.name});
    const std::optional<Vec3> point = plan::lamp_point(plan, *lamp);
    if (!point) {
        return failure(fmt::format("{} hangs from nothing that is there", thing.name));
    }
    const plan::Aim aim = lamp->aim;
    const plan::LampMount mount = mount_near(plan, lamp->mount, placing.to.point(floor_of(*point)));
    plan::place(*lamp, placing.to);
    lamp->mount = mount;
    if (!placing.with_aims) {
        lamp->aim = aim;
    }
    return {};
}

/// Square to itself, with its corners, which the walls beside it have too.
Result<void> put_wall(plan::Plan& plan, const Thing& thing, const Placing& placing) {
    if (auto beside = check_unlocked_walls(plan, {thing.index - 1, thing.index + 1}); !beside) {
        return beside;
    }
    Polygon& outline = plan.room.outline;
    const auto wall = static_cast<std::size_t>(thing.index);
    Vec2& from = outline[wall];
    Vec2& to = outline[(wall + 1) % outline.size()];
    const Vec2 middle = (from + to) / 2.0;
    const Vec2 normal = turned_left((to - from).normalized());
    const Vec2 shift = normal * normal.dot(placing.to.point(middle) - middle);
    from += shift;
    to += shift;
    keep_lamps_on_walls(plan);
    return check_walls(plan);
}

double share_along(const Vec2& from, const Vec2& to, const Vec2& at) {
    const double length2 = (to - from).squaredNorm();
    return length2 > 0.0 ? std::clamp((at - from).dot(to - from) / length2, 0.0, 1.0) : 0.0;
}

plan::LampMount near_on_grid(const plan::Plan& plan, plan::GridHang hang, const Vec2& at) {
    if (!plan.grid) {
        return hang;
    }
    double least_m = std::numeric_limits<double>::max();
    for (int column = 0; column < plan.grid->columns; ++column) {
        for (int row = 0; row < plan.grid->rows; ++row) {
            const std::string name = plan::grid_name(column, row);
            const double away_m = (*plan::grid_point(*plan.grid, name) - at).norm();
            if (away_m < least_m) {
                least_m = away_m;
                hang.position = name;
            }
        }
    }
    return hang;
}

plan::LampMount near_on_pipe(const plan::Plan& plan, plan::PipeHang hang, const Vec2& at) {
    if (const plan::Pipe* pipe = plan::find(plan, hang.pipe)) {
        const double length_m = (pipe->to - pipe->from).norm();
        hang.along = Length::metres(share_along(pipe->from, pipe->to, at) * length_m);
    }
    return hang;
}

plan::LampMount near_on_wall(const plan::Plan& plan, plan::WallMount mount, const Vec2& at) {
    const Polygon& outline = plan.room.outline;
    double least_m = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2& from = outline[i];
        const Vec2& to = outline[(i + 1) % outline.size()];
        const double away_m = distance_to_segment(at, from, to);
        if (away_m < least_m) {
            least_m = away_m;
            mount.wall = static_cast<int>(i);
            mount.along = Length::metres(share_along(from, to, at) * (to - from).norm());
        }
    }
    return mount;
}

bool clear_of_others(const plan::Room& room, plan::Opening opening, double from_m) {
    opening.from_start = Length::metres(from_m);
    return in_the_way(room, opening) == nullptr;
}

/// Where along a wall an opening may begin, nearest to what is wanted: there, at the wall's ends,
/// or beside another opening.
std::optional<double> free_begin_m(const plan::Room& room, const plan::Opening& opening,
                                   double wanted_m, double wall_m) {
    if (opening.width.m() > wall_m + kFit_m) {
        return std::nullopt;
    }
    const double last_m = std::max(0.0, wall_m - opening.width.m());
    std::vector<double> begins{std::clamp(wanted_m, 0.0, last_m), 0.0, last_m};
    for (const plan::Opening& other : room.openings) {
        if (other.wall == opening.wall && other.id != opening.id) {
            begins.push_back((other.from_start - opening.width).m());
            begins.push_back((other.from_start + other.width).m());
        }
    }
    std::optional<double> best;
    for (const double begin_m : begins) {
        const bool fits = begin_m >= 0.0 && begin_m <= last_m;
        if (fits && clear_of_others(room, opening, begin_m)
            && (!best || std::abs(begin_m - wanted_m) < std::abs(*best - wanted_m))) {
            best = begin_m;
        }
    }
    return best;
}

} // namespace

plan::LampMount mount_near(const plan::Plan& plan, const plan::LampMount& mount, const Vec2& at) {
    if (const auto* hang = std::get_if<plan::GridHang>(&mount)) {
        return near_on_grid(plan, *hang, at);
    }
    if (const auto* hang = std::get_if<plan::PipeHang>(&mount)) {
        return near_on_pipe(plan, *hang, at);
    }
    if (const auto* on_wall = std::get_if<plan::WallMount>(&mount)) {
        return near_on_wall(plan, *on_wall, at);
    }
    plan::LampMount moved = mount;
    if (auto* stand = std::get_if<plan::StandMount>(&moved)) {
        stand->at = at;
    } else if (auto* practical = std::get_if<plan::PracticalMount>(&moved)) {
        practical->at = at;
    }
    return moved;
}

const plan::Opening* in_the_way(const plan::Room& room, const plan::Opening& opening) {
    for (const plan::Opening& other : room.openings) {
        const bool is_level = opening.sill < other.head && other.sill < opening.head;
        if (other.id != opening.id && other.wall == opening.wall && is_level
            && opening.from_start.m() < (other.from_start + other.width).m() - kFit_m
            && other.from_start.m() < (opening.from_start + opening.width).m() - kFit_m) {
            return &other;
        }
    }
    return nullptr;
}

Result<void> put_opening(plan::Plan& plan, const std::string& name, const Vec2& middle) {
    plan::Opening* opening = find(plan, plan::Id<plan::Opening>{name});
    const Polygon& outline = plan.room.outline;
    std::vector<std::pair<double, std::size_t>> walls;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        walls.emplace_back(
            distance_to_segment(middle, outline[i], outline[(i + 1) % outline.size()]), i);
    }
    std::sort(walls.begin(), walls.end());
    for (const auto& [away_m, wall] : walls) {
        const Vec2& from = outline[wall];
        const Vec2& to = outline[(wall + 1) % outline.size()];
        const double wall_m = (to - from).norm();
        plan::Opening there = *opening;
        there.wall = static_cast<int>(wall);
        const double wanted_m = share_along(from, to, middle) * wall_m - there.width.m() / 2.0;
        const auto begin_m = free_begin_m(plan.room, there, wanted_m, wall_m);
        if (begin_m && there.head <= plan.room.walls[wall].height) {
            there.from_start = Length::metres(*begin_m);
            *opening = there;
            return {};
        }
    }
    return failure(fmt::format("no wall has room for {}; make it narrower or lower", name));
}

Result<void> check_walls(const plan::Plan& plan) {
    /// As the reader has it.
    constexpr double kShortest_m = 0.001;
    constexpr double kSmallest_m2 = 1e-4;
    const Polygon& outline = plan.room.outline;
    if (!are_on_paper(outline)) {
        return failure(std::string{kOffPaper});
    }
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const double wall_m = (outline[(i + 1) % outline.size()] - outline[i]).norm();
        if (wall_m < kShortest_m) {
            return failure("two corners of the room would fall together; take one away instead");
        }
        if (!is_a_size(Length::metres(wall_m))) {
            return failure("a wall is at most 1000 m long");
        }
    }
    if (crosses_itself(outline) || area(outline) < kSmallest_m2) {
        return failure("the walls would cross; move less far");
    }
    for (const plan::Opening& opening : plan.room.openings) {
        const auto wall = static_cast<std::size_t>(opening.wall);
        const double wall_m = (outline[(wall + 1) % outline.size()] - outline[wall]).norm();
        if ((opening.from_start + opening.width).m() > wall_m + kFit_m) {
            return failure(fmt::format("{} would no longer fit wall {}; move or narrow it first",
                                       opening.id.name, plan::number_of_wall(opening.wall)));
        }
    }
    return {};
}

void keep_lamps_on_walls(plan::Plan& plan) {
    const Polygon& outline = plan.room.outline;
    for (plan::Lamp& lamp : plan.lamps) {
        auto* mount = std::get_if<plan::WallMount>(&lamp.mount);
        if (mount != nullptr && static_cast<std::size_t>(mount->wall) < outline.size()) {
            const auto wall = static_cast<std::size_t>(mount->wall);
            const double wall_m = (outline[(wall + 1) % outline.size()] - outline[wall]).norm();
            mount->along = std::min(mount->along, Length::metres(wall_m));
        }
    }
}

namespace {

Result<void> check_unlocked(const plan::Plan& plan, const Thing& thing) {
    return is_locked(plan, thing)
               ? failure(fmt::format("{} is locked; unlock it first", name_of(thing)))
               : Result<void>{};
}

} // namespace

Result<void> check_there(const plan::Plan& plan, std::span<const Thing> things) {
    if (things.empty()) {
        return failure("choose something first");
    }
    for (const Thing& thing : things) {
        if (!exists(plan, thing)) {
            return failure(fmt::format("{} is not there any more", name_of(thing)));
        }
    }
    return {};
}

Result<void> check_movable(const plan::Plan& plan, std::span<const Thing> things) {
    Result<void> movable = check_there(plan, things);
    for (const Thing& thing : things) {
        if (movable) {
            movable = check_unlocked(plan, thing);
        }
    }
    return movable;
}

Result<void> check_unlocked_walls(const plan::Plan& plan, std::initializer_list<int> walls) {
    const auto count = static_cast<int>(plan.room.outline.size());
    Result<void> unlocked;
    for (const int wall : walls) {
        if (unlocked) {
            unlocked = check_unlocked(plan, {Kind::wall, {}, (wall + count) % count});
        }
    }
    return unlocked;
}

std::string words_for(std::span<const Thing> things) {
    return things.size() == 1 ? name_of(things.front()) : fmt::format("{} things", things.size());
}

namespace {

Result<void> put_anywhere(plan::Plan& plan, const Context& context, const Thing& thing,
                          const Placing& placing) {
    const std::optional<Vec2> at = place_of(context, thing);
    switch (thing.kind) {
    case Kind::wall:
        return put_wall(plan, thing, placing);
    case Kind::opening:
        return at ? put_opening(plan, thing.name, placing.to.point(*at)) : Result<void>{};
    case Kind::pipe: {
        plan::Pipe* pipe = find(plan, plan::Id<plan::Pipe>{thing.name});
        placing.to.place(pipe->from);
        placing.to.place(pipe->to);
        return {};
    }
    case Kind::scenery:
        plan::place(find(plan, plan::Id<plan::Scenery>{thing.name})->shape, placing.to);
        return {};
    case Kind::person:
        return put_person(plan, context, thing, placing);
    case Kind::camera:
        return put_camera(plan, context, thing, placing);
    case Kind::lamp:
        return put_lamp(plan, thing, placing);
    case Kind::boom:
        plan::place(*find(plan, plan::Id<plan::Boom>{thing.name}), placing.to);
        return {};
    case Kind::outlet:
        placing.to.place(find(plan, plan::Id<plan::Circuit>{thing.name})
                             ->outlets[static_cast<std::size_t>(thing.index)]);
        return {};
    }
    return {};
}

} // namespace

Result<void> put(plan::Plan& plan, const Context& context, const Thing& thing,
                 const Placing& placing) {
    const std::optional<Vec2> at = place_of(context, thing);
    if (at && !is_on_paper(placing.to.point(*at))) {
        return failure(std::string{kOffPaper});
    }
    const Result<void> done = put_anywhere(plan, context, thing, placing);
    if (done && !are_on_paper(places_of(plan, context.now, thing))) {
        return failure(std::string{kOffPaper});
    }
    return done;
}

} // namespace throwline::edit
