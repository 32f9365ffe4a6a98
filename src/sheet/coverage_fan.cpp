#include "sheet/coverage_fan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::sheet {

namespace {

/// To each side of a corner, so that what lies behind it is seen past it. Under a millimetre at 100
/// m.
constexpr double kBesideCorner_rad = 1e-6;
/// Walls nearer than this are what the point itself stands in.
constexpr double kOnTheWall_m = 1e-6;

/// Directions between the limits in which the outline has a corner, both sides of each.
std::vector<double> directions(std::span<const Vec2> room, const Vec2& eye, double from_rad,
                               double to_rad) {
    std::vector<double> found{from_rad, to_rad};
    for (const Vec2& corner : room) {
        const double ahead = angle_of(corner - eye) - from_rad;
        const double turn = 2.0 * std::numbers::pi;
        const double share = ahead - std::floor(ahead / turn) * turn;
        for (const double angle : {share - kBesideCorner_rad, share + kBesideCorner_rad}) {
            if (angle > 0.0 && from_rad + angle < to_rad) {
                found.push_back(from_rad + angle);
            }
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

} // namespace

namespace {

/// How far off a ray meets the sides of an outline, nearest first.
std::vector<double> crossings(std::span<const Vec2> room, const Vec2& eye, const Vec2& ray) {
    std::vector<double> met;
    for (std::size_t i = 0; i < room.size(); ++i) {
        const Vec2 side = room[(i + 1) % room.size()] - room[i];
        const double turn = cross(ray, side);
        if (turn == 0.0) {
            continue;
        }
        const Vec2 to_side = room[i] - eye;
        const double distance_m = cross(to_side, side) / turn;
        const double share = cross(to_side, ray) / turn;
        if (distance_m > kOnTheWall_m && share >= 0.0 && share < 1.0) {
            met.push_back(distance_m);
        }
    }
    std::sort(met.begin(), met.end());
    return met;
}

} // namespace

std::optional<Vec2> first_wall(std::span<const Vec2> room, const Vec2& eye, double angle_rad) {
    const Vec2 ray = unit_at(angle_rad);
    const std::vector<double> met = crossings(room, eye, ray);
    const std::size_t wanted = contains(room, eye) ? 0 : 1;
    if (wanted >= met.size()) {
        return std::nullopt;
    }
    return eye + ray * met[wanted];
}

Polygon coverage_fan(std::span<const Vec2> room, const Vec2& eye, double from_rad, double to_rad) {
    Polygon fan{eye};
    for (const double angle_rad : directions(room, eye, from_rad, to_rad)) {
        if (const auto wall = first_wall(room, eye, angle_rad)) {
            fan.push_back(*wall);
        }
    }
    return fan.size() < 3 ? Polygon{} : fan;
}

Polygon coverage_fan_among(std::span<const Vec2> room, std::span<const Polygon> things,
                           const Vec2& eye, double from_rad, double to_rad) {
    std::vector<double> angles = directions(room, eye, from_rad, to_rad);
    for (const Polygon& thing : things) {
        const std::vector<double> more = directions(thing, eye, from_rad, to_rad);
        angles.insert(angles.end(), more.begin(), more.end());
    }
    std::sort(angles.begin(), angles.end());
    angles.erase(std::unique(angles.begin(), angles.end()), angles.end());
    Polygon fan{eye};
    for (const double angle_rad : angles) {
        auto end = first_wall(room, eye, angle_rad);
        const Vec2 ray = unit_at(angle_rad);
        for (const Polygon& thing : things) {
            const std::vector<double> met =
                contains(thing, eye, 0.0) ? std::vector<double>{} : crossings(thing, eye, ray);
            if (!met.empty() && end && met.front() < (*end - eye).norm()) {
                end = eye + ray * met.front();
            }
        }
        if (end) {
            fan.push_back(*end);
        }
    }
    return fan.size() < 3 ? Polygon{} : fan;
}

} // namespace throwline::sheet
