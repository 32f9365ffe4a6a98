#include "plan/check_names.h"
#include "plan/check_plan.h"

#include "base/length_text.h"
#include "base/utf8.h"
#include "plan/check_outline.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::plan {

namespace {

/// Openings may miss their wall's ends by this much: a tape reads no finer.
constexpr double kFit_m = 0.001;
/// Largest number of corners; crossing walls are searched pair by pair.
constexpr std::size_t kMostRoomCorners = 1000;

double wall_length_m(const Room& room, std::size_t wall) {
    const Vec2& from = room.outline[wall];
    const Vec2& to = room.outline[(wall + 1) % room.outline.size()];
    return (to - from).norm();
}

void check_opening(Reading& reading, const Value& value, const Opening& opening, const Room& room) {
    const auto wall = static_cast<std::size_t>(opening.wall);
    if (reading.is_spoilt(value) || wall >= room.walls.size()) {
        return;
    }
    const Length end = opening.from_start + opening.width;
    const double length_m = wall_length_m(room, wall);
    if (end.m() > length_m + kFit_m) {
        reading.wrong(value.at("width"),
                      fmt::format("the opening ends {} along wall {}, which is {} long",
                                  exact_metres(end), number_of_wall(opening.wall),
                                  metres_text(Length::metres(length_m), 3)));
    }
    if (opening.head <= opening.sill) {
        reading.wrong(value.at("head"),
                      fmt::format("the head, {}, must be above the sill, {}",
                                  exact_metres(opening.head), exact_metres(opening.sill)));
    }
    if (opening.head.m() > room.walls[wall].height.m() + kFit_m) {
        reading.wrong(value.at("head"),
                      fmt::format("the head, {}, is above wall {}, which is {} "
                                  "high",
                                  exact_metres(opening.head), number_of_wall(opening.wall),
                                  exact_metres(room.walls[wall].height)));
    }
}

bool overlap(const Opening& a, const Opening& b) {
    const double along_m = std::min((a.from_start + a.width).m(), (b.from_start + b.width).m())
                           - std::max(a.from_start.m(), b.from_start.m());
    const double up_m = std::min(a.head.m(), b.head.m()) - std::max(a.sill.m(), b.sill.m());
    return along_m > kFit_m && up_m > kFit_m;
}

/// Indices of a room's openings by wall, then by where they begin.
std::vector<std::size_t> openings_along_walls(const Room& room) {
    std::vector<std::size_t> order(room.openings.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const Opening& first = room.openings[a];
        const Opening& second = room.openings[b];
        return std::tie(first.wall, first.from_start) < std::tie(second.wall, second.from_start);
    });
    return order;
}

void check_overlaps(Reading& reading, const Value& openings, const Room& room) {
    const std::vector<std::size_t> order = openings_along_walls(room);
    for (std::size_t i = 0; i < order.size(); ++i) {
        const Opening& first = room.openings[order[i]];
        for (std::size_t j = i + 1; j < order.size(); ++j) {
            const Opening& second = room.openings[order[j]];
            if (second.wall != first.wall || second.from_start > first.from_start + first.width) {
                break;
            }
            if (reading.is_full()) {
                // Openings that all overlap would be compared pair by pair for errors nobody sees.
                reading.wrong(openings, {});
                return;
            }
            const Value value = openings.item(std::max(order[i], order[j]));
            if (overlap(first, second) && !reading.is_spoilt(value)) {
                reading.wrong(value,
                              fmt::format("openings {} and {} overlap in wall {}",
                                          in_quotes(first.id.name), in_quotes(second.id.name),
                                          number_of_wall(first.wall)));
            }
        }
    }
}

} // namespace

void check_room(Reading& reading, const Value& root, const Plan& plan) {
    const Value room = root.at("room");
    if (room.member("outline")) {
        check_outline(reading, room.at("outline"), plan.room.outline, kMostRoomCorners);
    }
    if (!reading.is_spoilt(room.at("outline"))) {
        each(room, "openings", plan.room.openings, [&](const Value& value, const Opening& opening) {
            check_opening(reading, value, opening, plan.room);
        });
        check_overlaps(reading, room.at("openings"), plan.room);
    }
}

} // namespace throwline::plan
