#include "survey/simulated_room.h"

#include "base/polygon.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::survey {
namespace {

double between(Chance& chance, double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(chance);
}

int one_of(Chance& chance, int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(chance);
}

bool happens(Chance& chance, double share) {
    return between(chance, 0.0, 1.0) < share;
}

double error(Chance& chance, double sigma) {
    return std::normal_distribution<double>(0.0, sigma)(chance);
}

double tape_sigma(double length_m) {
    return std::hypot(0.002, 0.0005 * length_m);
}

Polygon box(Chance& chance) {
    const double width = between(chance, 2.5, 12.0);
    const double depth = between(chance, 2.5, 9.0);
    return {{0, 0}, {width, 0}, {width, depth}, {0, depth}};
}

/// Puts a bay (positive depth) or a niche into the wall that starts at a corner.
void add_bay(Polygon& outline, std::size_t wall, double depth, double splay, Chance& chance) {
    const Vec2 from = outline[wall];
    const Vec2 span = outline[(wall + 1) % outline.size()] - from;
    const double length = span.norm();
    const double start = between(chance, 0.2, 0.35) * length;
    const double end = between(chance, 0.65, 0.8) * length;
    const Vec2 along = span / length;
    const Vec2 out = -turned_left(along);
    const std::vector<Vec2> bay{from + start * along, from + (start + splay) * along + depth * out,
                                from + (end - splay) * along + depth * out, from + end * along};
    outline.insert(outline.begin() + static_cast<std::ptrdiff_t>(wall) + 1, bay.begin(), bay.end());
}

/// Cuts a rectangle out of one corner.
void cut_corner(Polygon& outline, std::size_t corner, Chance& chance) {
    const std::size_t count = outline.size();
    const Vec2 at = outline[corner];
    const Vec2 back = (outline[(corner + count - 1) % count] - at) * between(chance, 0.25, 0.45);
    const Vec2 on = (outline[(corner + 1) % count] - at) * between(chance, 0.25, 0.45);
    outline[corner] = at + back;
    outline.insert(outline.begin() + static_cast<std::ptrdiff_t>(corner) + 1,
                   {at + back + on, at + on});
}

Polygon any_outline(Chance& chance) {
    const int corners = one_of(chance, 4, 12);
    Polygon outline;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2.0 * std::numbers::pi * (i + between(chance, -0.3, 0.3)) / corners;
        outline.push_back(between(chance, 2.0, 6.0) * unit_at(angle));
    }
    return outline;
}

Polygon outline_of(Chance& chance) {
    Polygon outline = box(chance);
    switch (one_of(chance, 0, 6)) {
    case 0:
        break;
    case 1:
        cut_corner(outline, static_cast<std::size_t>(one_of(chance, 0, 3)), chance);
        break;
    case 2:
        cut_corner(outline, 2, chance);
        cut_corner(outline, 1, chance);
        break;
    case 3:
        add_bay(outline, static_cast<std::size_t>(one_of(chance, 0, 3)),
                between(chance, 0.5, 1.2) * (happens(chance, 0.6) ? 1.0 : -1.0),
                happens(chance, 0.5) ? 0.3 : 0.0, chance);
        break;
    case 4:
        add_bay(outline, 2, between(chance, 0.5, 1.0), 0.0, chance);
        add_bay(outline, 0, between(chance, -0.9, -0.5), 0.3, chance);
        break;
    case 5:
        outline[2].x() -= between(chance, 0.3, 1.5);
        outline[3].y() += between(chance, 0.3, 1.5);
        break;
    default:
        return any_outline(chance);
    }
    for (Vec2& corner : outline) {
        corner += Vec2(error(chance, 0.015), error(chance, 0.015));
    }
    return outline;
}

bool sees(const Polygon& outline, const Vec2& from, const Vec2& to) {
    constexpr double kClear_m = 0.02;
    const Vec2 along = (to - from).normalized();
    const Vec2 a = from + kClear_m * along;
    const Vec2 b = to - kClear_m * along;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        if (crossing_share(a, b, outline[i], outline[(i + 1) % outline.size()]) >= 0.0) {
            return false;
        }
    }
    return contains(outline, (a + b) / 2.0, 0.0);
}

void read_walls_and_diagonals(SimulatedRoom& room, const Polygon& outline, Chance& chance) {
    const int corners = room.network.outline;
    const double share = between(chance, 0.7, 1.0);
    for (int i = 0; i < corners; ++i) {
        for (int j = i + 1; j < corners; ++j) {
            const bool wall = j == i + 1 || (i == 0 && j == corners - 1);
            const bool diagonal = !wall
                                  && sees(outline, outline[static_cast<std::size_t>(i)],
                                          outline[static_cast<std::size_t>(j)]);
            if (wall || (diagonal && (corners < 7 || happens(chance, share)))) {
                read_distance(room, i, j, chance);
            }
        }
    }
}

void believe_square(SimulatedRoom& room, Chance& chance) {
    constexpr double kBelief_rad = 0.5 * std::numbers::pi / 180.0;
    const int corners = room.network.outline;
    for (int i = 0; i < corners; ++i) {
        const int before = (i + corners - 1) % corners;
        const int after = (i + 1) % corners;
        const Vec2 at = room.truth[static_cast<std::size_t>(i)];
        const Vec2 first = room.truth[static_cast<std::size_t>(before)] - at;
        const Vec2 second = room.truth[static_cast<std::size_t>(after)] - at;
        const double off_rad = std::asin(first.normalized().dot(second.normalized()));
        if (std::abs(off_rad) < 2.0 * kBelief_rad && happens(chance, 0.5)) {
            room.network.observations.push_back(
                {Corner{before, i, after}, std::numbers::pi / 2.0, kBelief_rad, true});
            room.without_error.push_back(std::numbers::pi / 2.0);
        }
    }
}

/// Corners nearly in one line leave open on which side of it a mark lies.
bool spread_out(const Polygon& outline, const std::vector<int>& seen) {
    constexpr double kLeastArea_m2 = 1.0;
    for (const int a : seen) {
        for (const int b : seen) {
            for (const int c : seen) {
                const Vec2 at = outline[static_cast<std::size_t>(a)];
                const Vec2 first = outline[static_cast<std::size_t>(b)] - at;
                const Vec2 second = outline[static_cast<std::size_t>(c)] - at;
                if (cross(first, second) > 2.0 * kLeastArea_m2) {
                    return true;
                }
            }
        }
    }
    return false;
}

void read_between_marks(SimulatedRoom& room, const Polygon& outline, Chance& chance) {
    const int last = room.network.points - 1;
    if (last > room.network.outline
        && sees(outline, room.truth[static_cast<std::size_t>(last)],
                room.truth[static_cast<std::size_t>(last - 1)])) {
        read_distance(room, last - 1, last, chance);
    }
}

void tie_floor_marks(SimulatedRoom& room, const Polygon& outline, Chance& chance) {
    const int corners = room.network.outline;
    const int marks = one_of(chance, 1, 2);
    for (int i = 0; i < marks; ++i) {
        // Somewhere inside that sees corners all round.
        for (int attempt = 0; attempt < 200; ++attempt) {
            const Vec2 mark =
                centroid(outline)
                + between(chance, 0.0, 2.0) * unit_at(between(chance, 0.0, 2.0 * std::numbers::pi));
            std::vector<int> seen;
            for (int corner = 0; corner < corners; ++corner) {
                if (sees(outline, outline[static_cast<std::size_t>(corner)], mark)) {
                    seen.push_back(corner);
                }
            }
            if (!contains(outline, mark, 0.0) || !spread_out(outline, seen)) {
                continue;
            }
            const int number = room.network.points++;
            room.truth.push_back(mark);
            for (const int corner : seen) {
                read_distance(room, number, corner, chance);
            }
            if (i == 1) {
                read_between_marks(room, outline, chance);
            }
            break;
        }
    }
}

void into_datum(SimulatedRoom& room) {
    const Vec2 origin = room.truth[0];
    const double turn_rad = -angle_of(room.truth[1] - origin);
    for (Vec2& point : room.truth) {
        point = rotated(point - origin, turn_rad);
    }
}

double swapped_digits(double value) {
    // Centimetres and decimetres, or decimetres and metres where those are the same.
    const int mm = static_cast<int>(std::lround(1000.0 * value));
    const int centi = mm / 10 % 10;
    const int deci = mm / 100 % 10;
    const int metres = mm / 1000 % 10;
    const int change = centi != deci ? (centi - deci) * 90 : (deci - metres) * 900;
    return change / 1000.0;
}

} // namespace

SimulatedRoom simulated_room(Chance& chance) {
    Polygon outline = outline_of(chance);
    SimulatedRoom room;
    room.network.outline = room.network.points = static_cast<int>(outline.size());
    std::rotate(outline.begin(), outline.begin() + one_of(chance, 0, room.network.outline - 1),
                outline.end());
    if (happens(chance, 0.3)) {
        std::reverse(outline.begin(), outline.end());
        room.network.walk = Walk::clockwise;
    }
    room.truth = outline;
    read_walls_and_diagonals(room, outline, chance);
    believe_square(room, chance);
    tie_floor_marks(room, outline, chance);
    into_datum(room);
    return room;
}

void read_distance(SimulatedRoom& room, int from, int to, Chance& chance) {
    const double length =
        (room.truth[static_cast<std::size_t>(to)] - room.truth[static_cast<std::size_t>(from)])
            .norm();
    const double sigma = tape_sigma(length);
    const double value = std::round(1000.0 * (length + error(chance, sigma))) / 1000.0;
    room.network.observations.push_back({Distance{from, to}, value, tape_sigma(value), false});
    room.without_error.push_back(length);
}

double make_wrong(SimulatedRoom& room, std::size_t observation, Chance& chance) {
    double& value = room.network.observations[observation].value;
    const double sign = happens(chance, 0.5) && value > 1.5 ? -1.0 : 1.0;
    double by_m = 0.0;
    switch (one_of(chance, 0, 3)) {
    case 0:
        by_m = sign * 0.3048;
        break;
    case 1:
        by_m = sign * 0.1;
        break;
    case 2:
        by_m = swapped_digits(value);
        break;
    default:
        break;
    }
    if (std::abs(by_m) < 0.025 || value + by_m < 0.3) {
        by_m = sign * 0.025 * std::pow(40.0, between(chance, 0.0, 1.0));
    }
    value += by_m;
    return by_m;
}

} // namespace throwline::survey
