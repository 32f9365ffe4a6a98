#include "sheet/clip.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

namespace throwline::sheet {

namespace {

using Piece = std::pair<Vec2, Vec2>;

/// The part of a line within the window, with its ends in the same order.
std::optional<Piece> piece_of(const Vec2& from, const Vec2& to, const Box& window) {
    double enter = 0.0;
    double leave = 1.0;
    const Vec2 along = to - from;
    const std::array<std::pair<double, double>, 4> sides{{{-along.x(), from.x() - window.left},
                                                          {along.x(), window.right() - from.x()},
                                                          {-along.y(), from.y() - window.top},
                                                          {along.y(), window.bottom() - from.y()}}};
    for (const auto& [towards, room] : sides) {
        if (towards == 0.0) {
            if (room < 0.0) {
                return std::nullopt;
            }
            continue;
        }
        const double share = room / towards;
        enter = towards < 0.0 ? std::max(enter, share) : enter;
        leave = towards > 0.0 ? std::min(leave, share) : leave;
    }
    if (enter >= leave) {
        return std::nullopt;
    }
    return Piece{from + along * enter, from + along * leave};
}

bool is_within(const Vec2& point, const Box& window) {
    return window.contains(point);
}

/// The runs of a line that lie within the window.
std::vector<std::vector<Vec2>> runs_of(const std::vector<Vec2>& points, bool closed,
                                       const Box& window) {
    std::vector<std::vector<Vec2>> runs;
    const std::size_t sides = closed ? points.size() : points.size() - 1;
    bool goes_on = false;
    for (std::size_t i = 0; i < sides; ++i) {
        const Vec2& to = points[(i + 1) % points.size()];
        const auto piece = piece_of(points[i], to, window);
        if (!piece) {
            goes_on = false;
            continue;
        }
        if (!goes_on) {
            runs.push_back({piece->first});
        }
        runs.back().push_back(piece->second);
        goes_on = is_within(to, window);
    }
    return runs;
}

/// The polygon on the inner side of one edge of the window; `depth` is how far inside a point lies.
template <class Depth>
std::vector<Vec2> on_side(const std::vector<Vec2>& points, Depth depth) {
    std::vector<Vec2> kept;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Vec2& from = points[i];
        const Vec2& to = points[(i + 1) % points.size()];
        const double from_depth = depth(from);
        const double to_depth = depth(to);
        if (from_depth >= 0.0) {
            kept.push_back(from);
        }
        if ((from_depth >= 0.0) != (to_depth >= 0.0)) {
            kept.push_back(from + (to - from) * (from_depth / (from_depth - to_depth)));
        }
    }
    return kept;
}

std::vector<Vec2> area_of(std::vector<Vec2> points, const Box& window) {
    points = on_side(points, [&](const Vec2& p) { return p.x() - window.left; });
    points = on_side(points, [&](const Vec2& p) { return window.right() - p.x(); });
    points = on_side(points, [&](const Vec2& p) { return p.y() - window.top; });
    return on_side(points, [&](const Vec2& p) { return window.bottom() - p.y(); });
}

Marks clipped_path(const Path& path, const Box& window) {
    if (std::all_of(path.points.begin(), path.points.end(),
                    [&](const Vec2& point) { return is_within(point, window); })) {
        return {path};
    }
    Marks marks;
    if (path.closed && path.fill.hatch != Hatch::none) {
        std::vector<Vec2> area = area_of(path.points, window);
        if (area.size() > 2) {
            marks.emplace_back(outline(std::move(area), no_pen(), path.fill));
        }
    }
    if (path.pen.width_mm > 0.0 && path.points.size() > 1) {
        for (std::vector<Vec2>& run : runs_of(path.points, path.closed, window)) {
            marks.emplace_back(open_path(std::move(run), path.pen));
        }
    }
    return marks;
}

Marks clipped_circle(const Circle& round, const Box& window) {
    if (window.inset(round.radius_mm).contains(round.centre)) {
        return {round};
    }
    if (!window.inset(-round.radius_mm).contains(round.centre)) {
        return {};
    }
    std::vector<Vec2> sides =
        arc_points(round.centre, round.radius_mm, 0.0, 2.0 * std::numbers::pi);
    sides.pop_back();
    return clipped_path(outline(std::move(sides), round.pen, round.fill), window);
}

} // namespace

Marks clipped(const Mark& mark, const Box& window) {
    if (const auto* path = std::get_if<Path>(&mark)) {
        return clipped_path(*path, window);
    }
    if (const auto* round = std::get_if<Circle>(&mark)) {
        return clipped_circle(*round, window);
    }
    const auto* text = std::get_if<Text>(&mark);
    return text != nullptr && !is_within(text->at, window) ? Marks{} : Marks{mark};
}

} // namespace throwline::sheet
