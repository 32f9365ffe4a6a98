#include "edit/carried_room.h"

#include "plan/arrangement.h"

#include <algorithm>
#include <map>
#include <optional>

namespace throwline::edit {

namespace {

/// A corner is the old one when it is no farther from it than this.
constexpr double kSameCorner_m = 0.01;

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

Length wall_length(const Polygon& outline, std::size_t wall) {
    return Length::metres((outline[(wall + 1) % outline.size()] - outline[wall]).norm());
}

/// An opening on the wall that its own has become; nothing when it is wider than that.
std::optional<plan::Opening> fitted(plan::Opening opening, const Became& now, Length old_length,
                                    Length new_length) {
    if (opening.width > new_length) {
        return std::nullopt;
    }
    opening.wall = static_cast<int>(now.wall);
    if (now.reversed) {
        opening.from_start = old_length - opening.from_start - opening.width;
        if (opening.swing) {
            opening.swing->hinge_at_start = !opening.swing->hinge_at_start;
        }
    }
    opening.from_start = std::clamp(opening.from_start, Length{}, new_length - opening.width);
    return opening;
}

/// What is held of walls goes on to what they have become; walls that are gone, and openings, are
/// held no more.
void carry_held(const std::vector<std::optional<Became>>& walls, plan::Plan& plan) {
    std::map<std::string, std::string> names;
    for (std::size_t i = 0; i < walls.size(); ++i) {
        // No name at all, so that a new wall of the same number is not held instead.
        names.emplace(plan::name_on_floor(static_cast<int>(i)),
                      walls[i] ? plan::name_on_floor(static_cast<int>(walls[i]->wall)) : "");
    }
    plan::rename_held(plan.arrangement, names);
    plan::forget_gone(plan);
}

} // namespace

std::vector<std::string> carry_over(const plan::Room& old, plan::Plan& plan) {
    plan::Room& room = plan.room;
    std::vector<std::optional<Became>> walls;
    for (std::size_t i = 0; i < old.outline.size(); ++i) {
        walls.push_back(
            became(room.outline, old.outline[i], old.outline[(i + 1) % old.outline.size()]));
        if (walls.back()) {
            room.walls[walls.back()->wall] = old.walls[i];
        }
    }
    std::vector<std::string> left;
    for (const plan::Opening& opening : old.openings) {
        const auto wall = static_cast<std::size_t>(opening.wall);
        const std::optional<Became>& now = walls[wall];
        const auto kept = now ? fitted(opening, *now, wall_length(old.outline, wall),
                                       wall_length(room.outline, now->wall))
                              : std::nullopt;
        if (kept) {
            room.openings.push_back(*kept);
        } else {
            left.push_back(opening.id.name);
        }
    }
    carry_held(walls, plan);
    return left;
}

} // namespace throwline::edit
