#include "survey/loci.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::survey {
namespace {

// A direction from two points nearer to each other than this is worth nothing.
constexpr double kShortArm_m = 0.02;
// An offset below this is taken for a point on the wall.
constexpr double kOnTheWall_m = 1e-3;
// Lines and centres count as parallel or as one below this (sine of the angle; metres).
constexpr double kParallel = 1e-3;
// Lines without an end are searched this far, metres; no room is larger.
constexpr double kFar_m = 40.0;

std::optional<Locus> line_through(const Vec2& at, const Vec2& along) {
    const double length_m = along.norm();
    if (length_m < kShortArm_m) {
        return std::nullopt;
    }
    return Locus{Locus::Kind::line, at, along / length_m, 0.0};
}

Locus circle(const Vec2& centre, double radius_m) {
    return {Locus::Kind::circle, centre, Vec2::Zero(), radius_m};
}

struct LocusOf {
    double value;
    int point;
    std::span<const Vec2> points;
    std::span<const char> placed;

    Vec2 place(int index) const { return points[static_cast<std::size_t>(index)]; }
    bool has(int index) const { return placed[static_cast<std::size_t>(index)] != 0; }

    std::optional<Locus> operator()(const Distance& sight) const {
        if (point == sight.from && has(sight.to)) {
            return circle(place(sight.to), value);
        }
        if (point == sight.to && has(sight.from)) {
            return circle(place(sight.from), value);
        }
        return std::nullopt;
    }

    // An arm lies square to the other one; the corner lies on the circle over both ends (Thales).
    std::optional<Locus> operator()(const Corner& sight) const {
        constexpr double kSquare_rad = 1e-6;
        if (std::abs(std::abs(value) - std::numbers::pi / 2.0) > kSquare_rad) {
            return std::nullopt;
        }
        if (point == sight.corner && has(sight.before) && has(sight.after)) {
            const Vec2 half = (place(sight.after) - place(sight.before)) / 2.0;
            return circle(place(sight.before) + half, half.norm());
        }
        const bool first = point == sight.before;
        const int other = first ? sight.after : sight.before;
        if ((!first && point != sight.after) || !has(sight.corner) || !has(other)) {
            return std::nullopt;
        }
        const Vec2 corner = place(sight.corner);
        return line_through(corner, turned_left(place(other) - corner));
    }

    std::optional<Locus> operator()(const Along& sight) const {
        if (point != sight.point || !has(sight.from) || !has(sight.to)) {
            return std::nullopt;
        }
        const Vec2 wall = place(sight.to) - place(sight.from);
        return line_through(place(sight.from) + value * wall.normalized(), turned_left(wall));
    }

    std::optional<Locus> operator()(const Offset& sight) const {
        if (point == sight.point && has(sight.from) && has(sight.to)) {
            const Vec2 wall = place(sight.to) - place(sight.from);
            return line_through(place(sight.from) + value * turned_left(wall).normalized(), wall);
        }
        if (std::abs(value) > kOnTheWall_m || !has(sight.point)) {
            return std::nullopt;
        }
        if (point == sight.from && has(sight.to)) {
            return line_through(place(sight.to), place(sight.to) - place(sight.point));
        }
        if (point == sight.to && has(sight.from)) {
            return line_through(place(sight.from), place(sight.point) - place(sight.from));
        }
        return std::nullopt;
    }
};

std::vector<Vec2> lines_meet(const Locus& a, const Locus& b) {
    const double sine = cross(a.direction, b.direction);
    if (std::abs(sine) < kParallel) {
        return {};
    }
    return {a.at + cross(b.at - a.at, b.direction) / sine * a.direction};
}

std::vector<Vec2> line_meets_circle(const Locus& line, const Locus& round) {
    const Vec2 foot = line.at + (round.at - line.at).dot(line.direction) * line.direction;
    const double apart_m = (foot - round.at).norm();
    if (apart_m > round.radius_m) {
        const Vec2 nearest = round.at + (foot - round.at) * (round.radius_m / apart_m);
        return {(foot + nearest) / 2.0};
    }
    const Vec2 half =
        std::sqrt((round.radius_m - apart_m) * (round.radius_m + apart_m)) * line.direction;
    return {foot + half, foot - half};
}

std::vector<Vec2> circles_meet(const Locus& a, const Locus& b) {
    const Vec2 between = b.at - a.at;
    const double apart_m = between.norm();
    if (apart_m < kParallel) {
        return {};
    }
    const Vec2 along = between / apart_m;
    const double reach_m =
        (apart_m * apart_m + a.radius_m * a.radius_m - b.radius_m * b.radius_m) / (2.0 * apart_m);
    const double square = a.radius_m * a.radius_m - reach_m * reach_m;
    if (square <= 0.0) {
        const double side = reach_m > 0.0 ? 1.0 : -1.0;
        const double far = apart_m - side * a.radius_m;
        const Vec2 of_b = b.at - std::copysign(b.radius_m, far * side) * side * along;
        return {(a.at + side * a.radius_m * along + of_b) / 2.0};
    }
    const Vec2 half = std::sqrt(square) * turned_left(along);
    const Vec2 foot = a.at + reach_m * along;
    return {foot + half, foot - half};
}

void imply(std::vector<Observation>& implied, const Observation& like, int from, int to,
           double value) {
    Observation distance = like;
    distance.sight = Distance{from, to};
    distance.value = value;
    implied.push_back(distance);
}

std::optional<double> reading_of(const Network& network, const Sight& sight) {
    for (const Observation& observation : network.observations) {
        if (observation.sight == sight) {
            return observation.value;
        }
    }
    return std::nullopt;
}

} // namespace

double distance_from(const Locus& locus, const Vec2& point) {
    switch (locus.kind) {
    case Locus::Kind::circle:
        return std::abs((point - locus.at).norm() - locus.radius_m);
    case Locus::Kind::line:
        return std::abs(cross(locus.direction, point - locus.at));
    }
    return 0.0;
}

std::vector<Vec2> meetings(const Locus& a, const Locus& b) {
    switch (a.kind) {
    case Locus::Kind::circle:
        return b.kind == Locus::Kind::circle ? circles_meet(a, b) : line_meets_circle(b, a);
    case Locus::Kind::line:
        return b.kind == Locus::Kind::circle ? line_meets_circle(a, b) : lines_meet(a, b);
    }
    return {};
}

std::vector<Vec2> spread_over(const Locus& locus, int count) {
    std::vector<Vec2> points;
    for (int i = 0; i < count; ++i) {
        const double share = (i + 0.5) / count;
        switch (locus.kind) {
        case Locus::Kind::circle:
            points.push_back(locus.at + locus.radius_m * unit_at(2.0 * std::numbers::pi * share));
            break;
        case Locus::Kind::line: {
            // Denser near the known end.
            const double t = 2.0 * share - 1.0;
            points.push_back(locus.at + kFar_m * t * std::abs(t) * locus.direction);
            break;
        }
        }
    }
    return points;
}

std::optional<Locus> locus_of(const Observation& observation, int point,
                              std::span<const Vec2> points, std::span<const char> placed) {
    return std::visit(LocusOf{observation.value, point, points, placed}, observation.sight);
}

std::vector<Observation> implied_distances(const Network& network) {
    std::vector<Observation> implied;
    for (const Observation& observation : network.observations) {
        const auto* along = std::get_if<Along>(&observation.sight);
        if (along == nullptr) {
            continue;
        }
        const auto offset = reading_of(network, Offset{along->point, along->from, along->to});
        if (!offset) {
            continue;
        }
        imply(implied, observation, along->from, along->point,
              std::hypot(observation.value, *offset));
        auto wall = reading_of(network, Distance{along->from, along->to});
        if (!wall) {
            wall = reading_of(network, Distance{along->to, along->from});
        }
        if (wall) {
            imply(implied, observation, along->to, along->point,
                  std::hypot(*wall - observation.value, *offset));
        }
    }
    return implied;
}

} // namespace throwline::survey
