#include "edit/snap_index.h"

#include "edit/moves.h"
#include "edit/pick.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <set>

namespace throwline::edit {

namespace {

constexpr double kCell_m = 1.0;
/// Sides longer than this reach over too many cells; they are looked at every time.
constexpr double kLongSide_m = 60.0;
/// What lies farther away nobody lines up with.
constexpr double kInLine_m = 30.0;
/// Outlines with more corners are round: their sides mean nothing.
constexpr std::size_t kMostCorners = 12;

} // namespace

Vec2 SnapSide::nearest(const Vec2& point) const {
    const Vec2 along = to - from;
    const double length2 = along.squaredNorm();
    const double share =
        length2 > 0.0 ? std::clamp((point - from).dot(along) / length2, 0.0, 1.0) : 0.0;
    return from + share * along;
}

SnapIndex::Cell SnapIndex::cell_of(const Vec2& at) {
    // Far beyond any plan, but still a whole number of cells.
    const auto index = [](double at_m) {
        return static_cast<std::int64_t>(std::floor(std::clamp(at_m, -1e9, 1e9) / kCell_m));
    };
    return {index(at.x()), index(at.y())};
}

SnapIndex::SnapIndex(const Context& context, std::span<const Thing> left_out) {
    const std::set<Thing> skipped{left_out.begin(), left_out.end()};
    const Outlines outlines{context, {}};
    // Of these there may be thousands: looking for each by its name would take too long.
    auto piece = context.plan.scenery.begin();
    for (const Thing& thing : things_on_floor(context)) {
        const bool is_piece = thing.kind == Kind::scenery;
        if (!skipped.contains(thing) && !is_hidden(context.plan, thing)) {
            if (is_piece) {
                add_scenery(outlines, *piece);
            } else {
                add_thing(context, thing);
            }
        }
        piece += is_piece ? 1 : 0;
    }
    if (context.plan.grid) {
        add_grid(*context.plan.grid);
    }
    sort_by_axes();
}

void SnapIndex::sort_by_axes() {
    for (const Eigen::Index axis : {0, 1}) {
        std::vector<std::size_t>& order = by_axis_[axis];
        for (std::size_t i = 0; i < points_.size(); ++i) {
            order.push_back(i);
        }
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return points_[a].at[axis] < points_[b].at[axis];
        });
    }
}

void SnapIndex::add_point(const Vec2& at, SnapKind kind, std::string words) {
    point_cells_[cell_of(at)].push_back(points_.size());
    points_.push_back({at, kind, std::move(words)});
}

void SnapIndex::add_side(const Vec2& from, const Vec2& to, std::string words) {
    const std::size_t index = sides_.size();
    sides_.push_back({from, to, std::move(words)});
    if ((to - from).norm() > kLongSide_m) {
        long_sides_.push_back(index);
        return;
    }
    const Cell low = cell_of(from.cwiseMin(to));
    const Cell high = cell_of(from.cwiseMax(to));
    for (std::int64_t x = low.first; x <= high.first; ++x) {
        for (std::int64_t y = low.second; y <= high.second; ++y) {
            side_cells_[{x, y}].push_back(index);
        }
    }
}

/// A line of legs, with its ends and the middle of a single leg.
void SnapIndex::add_line(std::span<const Vec2> points, const std::string& name) {
    for (const Vec2& point : points) {
        add_point(point, SnapKind::end, fmt::format("end of {}", name));
    }
    for (std::size_t i = 1; i < points.size(); ++i) {
        add_side(points[i - 1], points[i], name);
    }
    if (points.size() == 2) {
        add_point((points[0] + points[1]) / 2.0, SnapKind::middle,
                  fmt::format("middle of {}", name));
    }
}

void SnapIndex::add_outline(std::span<const Vec2> outline, const std::string& name) {
    if (outline.size() < 3) {
        return;
    }
    for (std::size_t i = 0; i < outline.size() && outline.size() <= kMostCorners; ++i) {
        add_point(outline[i], SnapKind::end, fmt::format("corner of {}", name));
        add_side(outline[i], outline[(i + 1) % outline.size()], name);
    }
    add_point(centroid(outline), SnapKind::middle, fmt::format("middle of {}", name));
}

void SnapIndex::add_scenery(const Outlines& outlines, const plan::Scenery& piece) {
    if (const auto* drape = std::get_if<plan::Drape>(&piece.shape)) {
        add_line(drape->along, piece.id.name);
    } else {
        add_outline(outlines.of(piece), piece.id.name);
    }
}

void SnapIndex::add_thing(const Context& context, const Thing& thing) {
    const std::string name = name_of(thing);
    switch (thing.kind) {
    case Kind::wall: {
        const Polygon& outline = context.plan.room.outline;
        const auto wall = static_cast<std::size_t>(thing.index);
        const Vec2 ends[]{outline[wall], outline[(wall + 1) % outline.size()]};
        add_line(ends, name);
        return;
    }
    case Kind::pipe:
        if (const auto* pipe = plan::find(context.plan, plan::Id<plan::Pipe>{thing.name})) {
            const Vec2 ends[]{pipe->from, pipe->to};
            add_line(ends, name);
        }
        return;
    case Kind::opening:
        add_outline(outline_of(context, thing), name);
        return;
    case Kind::person:
    case Kind::camera:
    case Kind::lamp:
    case Kind::boom:
    case Kind::outlet:
        if (const std::optional<Vec2> place = place_of(context, thing)) {
            add_point(*place, SnapKind::middle, name);
        }
        return;
    case Kind::scenery: // added by itself
        return;
    }
}

void SnapIndex::add_grid(const plan::Grid& grid) {
    for (int column = 0; column < grid.columns; ++column) {
        for (int row = 0; row < grid.rows; ++row) {
            const std::string name = plan::grid_name(column, row);
            if (const auto at = plan::grid_point(grid, name)) {
                add_point(*at, SnapKind::pipe_position, fmt::format("position {}", name));
            }
        }
    }
}

std::vector<std::size_t> SnapIndex::near(const std::map<Cell, std::vector<std::size_t>>& cells,
                                         const Vec2& at, double reach_m) {
    const Cell low = cell_of(at - Vec2::Constant(reach_m));
    const Cell high = cell_of(at + Vec2::Constant(reach_m));
    std::vector<std::size_t> found;
    for (auto cell = cells.lower_bound(low); cell != cells.end() && cell->first.first <= high.first;
         ++cell) {
        if (cell->first.second >= low.second && cell->first.second <= high.second) {
            found.insert(found.end(), cell->second.begin(), cell->second.end());
        }
    }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
}

std::vector<const SnapPoint*> SnapIndex::points_near(const Vec2& at, double reach_m) const {
    std::vector<const SnapPoint*> found;
    for (const std::size_t i : near(point_cells_, at, reach_m)) {
        if ((points_[i].at - at).norm() <= reach_m) {
            found.push_back(&points_[i]);
        }
    }
    return found;
}

std::vector<const SnapSide*> SnapIndex::sides_near(const Vec2& at, double reach_m) const {
    std::vector<std::size_t> indices = near(side_cells_, at, reach_m);
    indices.insert(indices.end(), long_sides_.begin(), long_sides_.end());
    std::vector<const SnapSide*> found;
    for (const std::size_t i : indices) {
        if ((sides_[i].nearest(at) - at).norm() <= reach_m) {
            found.push_back(&sides_[i]);
        }
    }
    return found;
}

const SnapPoint* SnapIndex::in_line(const Vec2& at, Eigen::Index axis, double reach_m) const {
    const std::vector<std::size_t>& order = by_axis_[axis];
    auto next = std::lower_bound(
        order.begin(), order.end(), at[axis] - reach_m,
        [&](std::size_t i, double from_m) { return points_[i].at[axis] < from_m; });
    const SnapPoint* best = nullptr;
    std::pair<double, double> least{0.0, 0.0};
    for (; next != order.end() && points_[*next].at[axis] <= at[axis] + reach_m; ++next) {
        const SnapPoint& point = points_[*next];
        const double far_m = (point.at - at).norm();
        const std::pair<double, double> cost{std::abs(point.at[axis] - at[axis]), far_m};
        if (far_m <= kInLine_m && (best == nullptr || cost < least)) {
            best = &point;
            least = cost;
        }
    }
    return best;
}

} // namespace throwline::edit
