#include "lists/place_text.h"

#include "base/length_text.h"
#include "base/polygon.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::lists {

namespace {

/// A tape is not read finer than this on a floor.
constexpr double kTape_m = 0.005;
/// Two walls give a sure place when they meet at this angle or more (common practice, no source).
constexpr double kLeastSine = 0.5;
/// A wall within this angle of upright or level on the page is at one of its sides.
constexpr double kSquareSine = 0.3;

struct WallLine {
    Vec2 from;
    Vec2 along;
    double length_m;
};

std::vector<WallLine> wall_lines(const plan::Room& room) {
    std::vector<WallLine> lines;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const Vec2& from = room.outline[i];
        const Vec2 way = room.outline[(i + 1) % room.outline.size()] - from;
        const double length_m = way.norm();
        lines.push_back({from, length_m > 0.0 ? Vec2{way / length_m} : Vec2::Zero(), length_m});
    }
    return lines;
}

/// Nothing when the point is not square off the wall.
std::optional<double> square_off_m(const WallLine& wall, const Vec2& point) {
    const double along_m = (point - wall.from).dot(wall.along);
    if (wall.length_m <= 0.0 || along_m < -kTape_m || along_m > wall.length_m + kTape_m) {
        return std::nullopt;
    }
    return std::abs(cross(wall.along, point - wall.from));
}

/// Whether a tape from the point square to a wall meets no other wall on the way.
bool is_clear(const std::vector<WallLine>& walls, std::size_t wall, const Vec2& point) {
    const WallLine& line = walls[wall];
    const Vec2 foot = line.from + line.along * (point - line.from).dot(line.along);
    for (std::size_t i = 0; i < walls.size(); ++i) {
        const Vec2 end = walls[i].from + walls[i].along * walls[i].length_m;
        const double share = crossing_share(point, foot, walls[i].from, end);
        const double short_of_m = (1.0 - share) * (foot - point).norm();
        if (i != wall && share >= 0.0 && short_of_m > kTape_m) {
            return false;
        }
    }
    return true;
}

std::string step_text(double share, Length pitch, const std::string& towards, UnitSystem units) {
    const Length step = Length::metres(std::abs(share * pitch.m()));
    return step.m() < kTape_m ? "" : fmt::format("{} towards {}", shown(step, units), towards);
}

} // namespace

std::string wall_text(const plan::Room& room, int wall) {
    const std::string name = fmt::format("wall {}", plan::number_of_wall(wall));
    const WallLine line = wall_lines(room)[static_cast<std::size_t>(wall)];
    const double turn = signed_area(room.outline) < 0.0 ? -1.0 : 1.0;
    if (std::abs(line.along.y()) < kSquareSine) {
        return name + (line.along.x() * turn > 0.0 ? " (bottom)" : " (top)");
    }
    if (std::abs(line.along.x()) < kSquareSine) {
        return name + (line.along.y() * turn > 0.0 ? " (right)" : " (left)");
    }
    return name;
}

std::optional<FromWalls> from_walls(const plan::Room& room, const Vec2& point) {
    const std::vector<WallLine> walls = wall_lines(room);
    std::vector<FromWall> near;
    for (std::size_t i = 0; i < walls.size(); ++i) {
        const auto distance_m = square_off_m(walls[i], point);
        if (distance_m && is_clear(walls, i, point)) {
            near.push_back({static_cast<int>(i), *distance_m});
        }
    }
    if (near.empty() || !contains(room.outline, point, kTape_m)) {
        return std::nullopt;
    }
    std::stable_sort(near.begin(), near.end(), [](const FromWall& a, const FromWall& b) {
        return a.distance_m < b.distance_m;
    });
    FromWalls result{near.front(), std::nullopt, 0.0};
    const WallLine& first = walls[static_cast<std::size_t>(near.front().wall)];
    result.along_first_m = (point - first.from).dot(first.along);
    for (const FromWall& other : near) {
        const auto index = static_cast<std::size_t>(other.wall);
        if (std::abs(cross(first.along, walls[index].along)) >= kLeastSine) {
            result.second = other;
            break;
        }
    }
    return result;
}

std::string place_text(const plan::Plan& plan, const Vec2& point) {
    const auto said = [&](double length_m) { return shown(Length::metres(length_m), plan.units); };
    const std::optional<FromWalls> place = from_walls(plan.room, point);
    if (!place) {
        return fmt::format("outside the room, {} right and {} up from the plan's origin",
                           said(point.x()), said(point.y()));
    }
    const auto off = [&](const FromWall& wall) {
        return said(wall.distance_m) + " from " + wall_text(plan.room, wall.wall);
    };
    return place->second ? off(place->first) + ", " + off(*place->second)
                         : fmt::format("{}, {} along it from its start", off(place->first),
                                       said(place->along_first_m));
}

std::string grid_place_text(const plan::Plan& plan, const Vec2& point) {
    if (!plan.grid) {
        return {};
    }
    const plan::Grid& grid = *plan.grid;
    const Vec2 in_grid = rotated(point - grid.origin, -grid.turn.rad());
    const double u = in_grid.x() / grid.pitch_x.m();
    const double v = in_grid.y() / grid.pitch_y.m();
    const double slack_u = kTape_m / std::abs(grid.pitch_x.m());
    const double slack_v = kTape_m / std::abs(grid.pitch_y.m());
    if (u < -slack_u || v < -slack_v || u > grid.columns - 1 + slack_u
        || v > grid.rows - 1 + slack_v) {
        return {};
    }
    const int column = std::clamp(static_cast<int>(u + slack_u), 0, grid.columns - 1);
    const int row = std::clamp(static_cast<int>(v + slack_v), 0, grid.rows - 1);
    const std::string next = plan::grid_name(column + 1, row);
    const std::string letters = next.substr(0, next.find_first_of("0123456789"));
    const std::string across = step_text(u - column, grid.pitch_x, letters, plan.units);
    const std::string up = step_text(v - row, grid.pitch_y, std::to_string(row + 2), plan.units);
    std::string text = plan::grid_name(column, row);
    text += across.empty() && up.empty() ? "" : " and ";
    text += across;
    text += !across.empty() && !up.empty() ? ", " : "";
    return text + up;
}

} // namespace throwline::lists
