#include "edit/snap.h"

#include "edit/pick.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <set>

namespace throwline::edit {

namespace {

constexpr double kCell_m = 1.0;
/// Lines longer than this reach over too many cells; they are looked at every time.
constexpr double kLongLine_m = 60.0;
/// Alignments reach this far along the floor.
constexpr double kAlignReach_m = 30.0;

struct Point {
    Vec2 at = Vec2::Zero();
    SnapKind kind = SnapKind::end;
    std::string words;
};

struct Line {
    Vec2 from = Vec2::Zero();
    Vec2 to = Vec2::Zero();
    std::string words;
};

using Cell = std::pair<std::int64_t, std::int64_t>;

Cell cell_of(const Vec2& at) {
    const auto index = [](double at_m) {
        return static_cast<std::int64_t>(std::floor(std::clamp(at_m, -1e9, 1e9) / kCell_m));
    };
    return {index(at.x()), index(at.y())};
}

Vec2 on_line(const Line& line, const Vec2& point) {
    const Vec2 along = line.to - line.from;
    const double length2 = along.squaredNorm();
    const double share =
        length2 > 0.0 ? std::clamp((point - line.from).dot(along) / length2, 0.0, 1.0) : 0.0;
    return line.from + share * along;
}

/// Where two lines, made longer as needed, cross; nothing when they are parallel.
std::optional<Vec2> crossing(const Line& a, const Line& b) {
    const Vec2 u = a.to - a.from;
    const Vec2 v = b.to - b.from;
    const double parallel = cross(u, v);
    if (std::abs(parallel) < 1e-9 * u.norm() * v.norm()) {
        return std::nullopt;
    }
    return a.from + u * (cross(b.from - a.from, v) / parallel);
}

} // namespace

class SnapField::Impl {
  public:
    Impl(const Context& context, std::span<const Thing> left_out);

    std::optional<Snap> snapped(const Vec2& point, const SnapSettings& settings,
                                const std::optional<Vec2>& from) const;

  private:
    void add_point(const Vec2& at, SnapKind kind, std::string words);
    void add_line(const Vec2& from, const Vec2& to, std::string words);
    void add_outline(const Context& context, const Thing& thing);
    void add_grid(const plan::Grid& grid);

    std::vector<const Point*> points_near(const Vec2& at, double reach_m) const;
    std::vector<const Line*> lines_near(const Vec2& at, double reach_m) const;

    std::optional<Snap> at_point(const Vec2& point, const SnapSettings& settings) const;
    std::optional<Snap> at_crossing(const Vec2& point, const SnapSettings& settings) const;
    std::optional<Snap> square_to(const Vec2& point, const SnapSettings& settings,
                                  const Vec2& from) const;
    std::optional<Snap> on_a_line(const Vec2& point, const SnapSettings& settings) const;
    std::optional<Snap> in_line_with(const Vec2& point, const SnapSettings& settings) const;

    std::vector<Point> points_;
    std::vector<Line> lines_;
    std::map<Cell, std::vector<std::size_t>> point_cells_;
    std::map<Cell, std::vector<std::size_t>> line_cells_;
    std::vector<std::size_t> long_lines_;
    /// Indices of points in the order of x, and of y, for alignments.
    std::vector<std::size_t> by_x_;
    std::vector<std::size_t> by_y_;
};

std::string_view name_of(SnapKind kind) {
    switch (kind) {
    case SnapKind::end:
        return "end";
    case SnapKind::middle:
        return "middle";
    case SnapKind::crossing:
        return "crossing";
    case SnapKind::pipe_position:
        return "position";
    case SnapKind::grid_pitch:
        return "square";
    case SnapKind::on_wall:
        return "on";
    case SnapKind::right_angle:
        return "square to";
    case SnapKind::aligned:
        return "in line with";
    case SnapKind::even_length:
        return "even length";
    }
    return "";
}

SnapField::Impl::Impl(const Context& context, std::span<const Thing> left_out) {
    const std::set<Thing> skipped{left_out.begin(), left_out.end()};
    for (const Thing& thing : things_on_floor(context)) {
        if (!skipped.contains(thing)) {
            add_outline(context, thing);
        }
    }
    if (context.plan.grid) {
        add_grid(*context.plan.grid);
    }
    for (std::size_t i = 0; i < points_.size(); ++i) {
        by_x_.push_back(i);
        by_y_.push_back(i);
    }
    std::stable_sort(by_x_.begin(), by_x_.end(), [&](std::size_t a, std::size_t b) {
        return points_[a].at.x() < points_[b].at.x();
    });
    std::stable_sort(by_y_.begin(), by_y_.end(), [&](std::size_t a, std::size_t b) {
        return points_[a].at.y() < points_[b].at.y();
    });
}

void SnapField::Impl::add_point(const Vec2& at, SnapKind kind, std::string words) {
    point_cells_[cell_of(at)].push_back(points_.size());
    points_.push_back({at, kind, std::move(words)});
}

void SnapField::Impl::add_line(const Vec2& from, const Vec2& to, std::string words) {
    const std::size_t index = lines_.size();
    lines_.push_back({from, to, std::move(words)});
    if ((to - from).norm() > kLongLine_m) {
        long_lines_.push_back(index);
        return;
    }
    const Cell low = cell_of(from.cwiseMin(to));
    const Cell high = cell_of(from.cwiseMax(to));
    for (std::int64_t x = low.first; x <= high.first; ++x) {
        for (std::int64_t y = low.second; y <= high.second; ++y) {
            line_cells_[{x, y}].push_back(index);
        }
    }
}

void SnapField::Impl::add_outline(const Context& context, const Thing& thing) {
    const std::string name = name_of(thing);
    if (thing.kind == Kind::wall) {
        const Polygon& outline = context.plan.room.outline;
        const auto wall = static_cast<std::size_t>(thing.index);
        const Vec2& from = outline[wall];
        const Vec2& to = outline[(wall + 1) % outline.size()];
        add_point(from, SnapKind::end, fmt::format("end of {}", name));
        add_point((from + to) / 2.0, SnapKind::middle, fmt::format("middle of {}", name));
        add_line(from, to, name);
        return;
    }
    if (thing.kind != Kind::scenery && thing.kind != Kind::opening) {
        if (const std::optional<Vec2> place = place_of(context, thing)) {
            add_point(*place, SnapKind::middle, name);
        }
        return;
    }
    const Polygon outline = outline_of(context, thing);
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2& from = outline[i];
        const Vec2& to = outline[(i + 1) % outline.size()];
        // Round things have sides that nobody means.
        if (outline.size() <= 12) {
            add_point(from, SnapKind::end, fmt::format("corner of {}", name));
            add_line(from, to, name);
        }
    }
    if (outline.size() > 2) {
        add_point(centroid(outline), SnapKind::middle, fmt::format("middle of {}", name));
    }
}

void SnapField::Impl::add_grid(const plan::Grid& grid) {
    for (int column = 0; column < grid.columns; ++column) {
        for (int row = 0; row < grid.rows; ++row) {
            const std::string name = plan::grid_name(column, row);
            if (const auto at = plan::grid_point(grid, name)) {
                add_point(*at, SnapKind::pipe_position, fmt::format("position {}", name));
            }
        }
    }
}

std::vector<const Point*> SnapField::Impl::points_near(const Vec2& at, double reach_m) const {
    const Cell low = cell_of(at - Vec2::Constant(reach_m));
    const Cell high = cell_of(at + Vec2::Constant(reach_m));
    std::vector<const Point*> found;
    for (auto cell = point_cells_.lower_bound(low);
         cell != point_cells_.end() && cell->first.first <= high.first; ++cell) {
        if (cell->first.second < low.second || cell->first.second > high.second) {
            continue;
        }
        for (const std::size_t i : cell->second) {
            if ((points_[i].at - at).norm() <= reach_m) {
                found.push_back(&points_[i]);
            }
        }
    }
    return found;
}

std::vector<const Line*> SnapField::Impl::lines_near(const Vec2& at, double reach_m) const {
    std::set<std::size_t> indices{long_lines_.begin(), long_lines_.end()};
    const Cell low = cell_of(at - Vec2::Constant(reach_m));
    const Cell high = cell_of(at + Vec2::Constant(reach_m));
    for (auto cell = line_cells_.lower_bound(low);
         cell != line_cells_.end() && cell->first.first <= high.first; ++cell) {
        if (cell->first.second >= low.second && cell->first.second <= high.second) {
            indices.insert(cell->second.begin(), cell->second.end());
        }
    }
    std::vector<const Line*> found;
    for (const std::size_t i : indices) {
        if ((on_line(lines_[i], at) - at).norm() <= reach_m) {
            found.push_back(&lines_[i]);
        }
    }
    return found;
}

/// Ends, positions and crossings draw before middles do.
std::optional<Snap> SnapField::Impl::at_point(const Vec2& point,
                                              const SnapSettings& settings) const {
    const auto wanted = [&](SnapKind kind) {
        return kind == SnapKind::middle          ? settings.middles
               : kind == SnapKind::pipe_position ? settings.pipes
                                                 : settings.ends;
    };
    const Point* best = nullptr;
    std::pair<bool, double> least{true, 0.0};
    for (const Point* near : points_near(point, settings.reach_m)) {
        const std::pair<bool, double> cost{near->kind == SnapKind::middle,
                                           (near->at - point).norm()};
        if (wanted(near->kind) && (best == nullptr || cost < least)) {
            best = near;
            least = cost;
        }
    }
    return best == nullptr ? std::nullopt
                           : std::optional{Snap{best->at, best->kind, best->words, {}}};
}

std::optional<Snap> SnapField::Impl::at_crossing(const Vec2& point,
                                                 const SnapSettings& settings) const {
    const std::vector<const Line*> near = lines_near(point, settings.reach_m);
    std::optional<Snap> best;
    for (std::size_t i = 0; i < near.size(); ++i) {
        for (std::size_t j = i + 1; j < near.size(); ++j) {
            const std::optional<Vec2> at = crossing(*near[i], *near[j]);
            if (at && (*at - point).norm() <= settings.reach_m
                && (!best || (*at - point).norm() < (best->at - point).norm())) {
                best = Snap{*at,
                            SnapKind::crossing,
                            fmt::format("{} and {}", near[i]->words, near[j]->words),
                            {}};
            }
        }
    }
    return best;
}

std::optional<Snap> SnapField::Impl::on_a_line(const Vec2& point,
                                               const SnapSettings& settings) const {
    std::optional<Snap> best;
    for (const Line* line : lines_near(point, settings.reach_m)) {
        const Vec2 at = on_line(*line, point);
        if (!best || (at - point).norm() < (best->at - point).norm()) {
            best = Snap{
                at, SnapKind::on_wall, fmt::format("on {}", line->words), {{line->from, line->to}}};
        }
    }
    return best;
}

/// On a line from where the drag began, along the page's axes or square to a wall that it began on.
std::optional<Snap> SnapField::Impl::square_to(const Vec2& point, const SnapSettings& settings,
                                               const Vec2& from) const {
    std::vector<std::pair<Vec2, std::string>> directions{{Vec2::UnitX(), "straight across"},
                                                         {Vec2::UnitY(), "straight up"}};
    for (const Line* line : lines_near(from, 0.01)) {
        const Vec2 along = (line->to - line->from).normalized();
        directions.emplace_back(turned_left(along), fmt::format("square to {}", line->words));
        directions.emplace_back(along, fmt::format("along {}", line->words));
    }
    std::optional<Snap> best;
    for (const auto& [direction, words] : directions) {
        const Vec2 at = from + direction * direction.dot(point - from);
        const double away_m = (at - point).norm();
        if ((at - from).norm() > settings.reach_m && away_m <= settings.reach_m
            && (!best || away_m < (best->at - point).norm())) {
            best = Snap{at, SnapKind::right_angle, words, {{from, at}}};
        }
    }
    return best;
}

/// Above or beside points elsewhere; both at once where both are in reach.
std::optional<Snap> SnapField::Impl::in_line_with(const Vec2& point,
                                                  const SnapSettings& settings) const {
    const auto nearest = [&](const std::vector<std::size_t>& order,
                             Eigen::Index axis) -> const Point* {
        auto at = std::lower_bound(
            order.begin(), order.end(), point[axis] - settings.reach_m,
            [&](std::size_t i, double from) { return points_[i].at[axis] < from; });
        const Point* best = nullptr;
        std::pair<double, double> least{0.0, 0.0};
        for (; at != order.end() && points_[*at].at[axis] <= point[axis] + settings.reach_m; ++at) {
            const Point& candidate = points_[*at];
            const double far_m = (candidate.at - point).norm();
            const std::pair<double, double> cost{std::abs(candidate.at[axis] - point[axis]), far_m};
            if (far_m <= kAlignReach_m && (best == nullptr || cost < least)) {
                best = &candidate;
                least = cost;
            }
        }
        return best;
    };
    const Point* above = nearest(by_x_, 0);
    const Point* beside = nearest(by_y_, 1);
    if (above == nullptr && beside == nullptr) {
        return std::nullopt;
    }
    Snap snap{point, SnapKind::aligned, {}, {}};
    if (above != nullptr) {
        snap.at.x() = above->at.x();
        snap.words = fmt::format("in line with {}", above->words);
    }
    if (beside != nullptr) {
        snap.at.y() = beside->at.y();
        snap.words = above == nullptr ? fmt::format("in line with {}", beside->words)
                                      : fmt::format("{} and {}", snap.words, beside->words);
    }
    for (const Point* to : {above, beside}) {
        if (to != nullptr) {
            snap.lines.push_back({to->at, snap.at});
        }
    }
    return snap;
}

std::optional<Snap> SnapField::Impl::snapped(const Vec2& point, const SnapSettings& settings,
                                             const std::optional<Vec2>& from) const {
    if (const auto at = at_point(point, settings)) {
        return at;
    }
    if (settings.ends) {
        if (const auto at = at_crossing(point, settings)) {
            return at;
        }
    }
    if (settings.right_angles && from) {
        if (const auto at = square_to(point, settings, *from)) {
            return at;
        }
    }
    if (settings.walls) {
        if (const auto at = on_a_line(point, settings)) {
            return at;
        }
    }
    if (settings.alignments) {
        if (const auto at = in_line_with(point, settings)) {
            return at;
        }
    }
    if (settings.pitch_m > 0.0) {
        const Vec2 square = (point / settings.pitch_m).array().round().matrix() * settings.pitch_m;
        if ((square - point).norm() <= settings.reach_m) {
            return Snap{square, SnapKind::grid_pitch, "square of the floor", {}};
        }
    }
    return std::nullopt;
}

SnapField::SnapField(const Context& context, std::span<const Thing> left_out)
    : impl_{std::make_unique<Impl>(context, left_out)} {}
SnapField::~SnapField() = default;
SnapField::SnapField(SnapField&&) noexcept = default;
SnapField& SnapField::operator=(SnapField&&) noexcept = default;

std::optional<Snap> SnapField::snapped(const Vec2& point, const SnapSettings& settings,
                                       const std::optional<Vec2>& from) const {
    return impl_->snapped(point, settings, from);
}

std::optional<Snap> SnapField::snapped_shift(std::span<const Vec2> points, const Vec2& by_m,
                                             const SnapSettings& settings) const {
    std::optional<Snap> best;
    double least = 0.0;
    for (const Vec2& point : points) {
        const Vec2 there = point + by_m;
        std::optional<Snap> snap = snapped(there, settings);
        if (!snap) {
            continue;
        }
        // What only lines up, or lies on a square, gives way to what meets.
        const bool weak = snap->kind == SnapKind::aligned || snap->kind == SnapKind::grid_pitch;
        const double cost = (snap->at - there).norm() + (weak ? settings.reach_m : 0.0);
        if (!best || cost < least) {
            least = cost;
            snap->at = snap->at - point;
            best = std::move(snap);
        }
    }
    return best;
}

double usual_pitch_m(const plan::Plan& plan) {
    if (plan.grid && plan.grid->pitch_x.m() != 0.0) {
        return std::abs(plan.grid->pitch_x.m());
    }
    return plan.units == UnitSystem::metric ? 1.0 : Length::feet(4).m();
}

} // namespace throwline::edit
