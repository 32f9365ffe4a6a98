#include "sheet/room_sizes.h"

#include "plan/places.h"
#include "sheet/symbols.h"
#include "sheet/wall_side.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace throwline::sheet {

namespace {

/// Walls that differ by less in direction are called parallel, or square to each other: no builder
/// sets them nearer.
constexpr double kParallel_rad = 0.5 * std::numbers::pi / 180.0;
/// Stops nearer than this are one.
constexpr double kSameStop_m = 0.002;
/// A built-in piece touches its wall within this.
constexpr double kTouches_m = 0.02;
constexpr double kFar_m = 1e4;

bool is_parallel(const Vec2& a, const Vec2& b) {
    return std::abs(cross(a, b)) < std::sin(kParallel_rad) && a.dot(b) > 0.0;
}

bool is_outward_corner(const plan::Room& room, std::size_t corner) {
    const std::size_t count = room.outline.size();
    const WallSide before = side_of(room, (corner + count - 1) % count);
    const WallSide after = side_of(room, corner);
    const double turn = cross(before.along, after.along);
    return (signed_area(room.outline) > 0.0) == (turn > 0.0);
}

bool is_square_corner(const plan::Room& room, std::size_t corner) {
    const std::size_t count = room.outline.size();
    const WallSide before = side_of(room, (corner + count - 1) % count);
    const WallSide after = side_of(room, corner);
    return std::abs(before.along.dot(after.along)) < std::sin(kParallel_rad);
}

/// How far the room reaches in front of a point outside it; nothing when only open ground is there.
std::optional<double> room_ahead(const plan::Room& room, const Vec2& from, const Vec2& direction) {
    std::optional<double> nearest;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const WallSide side = side_of(room, i);
        const double share = crossing_share(from, from + direction * kFar_m, side.from, side.to);
        if (share >= 0.0 && (!nearest || share * kFar_m < *nearest)) {
            nearest = share * kFar_m;
        }
    }
    return nearest;
}

std::optional<double> room_before(const plan::Room& room, const WallSide& side) {
    std::optional<double> nearest;
    for (const double share : {0.02, 0.25, 0.5, 0.75, 0.98}) {
        const Vec2 from = side.outer(share * side.length_m) + side.outward * 0.01;
        const auto ahead = room_ahead(room, from, side.outward);
        if (ahead && (!nearest || *ahead < *nearest)) {
            nearest = ahead;
        }
    }
    return nearest;
}

struct Stop {
    double along_m = 0.0;
    double foot_m = 0.0;
};

void merge(std::vector<Stop>& stops) {
    std::sort(stops.begin(), stops.end(),
              [](const Stop& a, const Stop& b) { return a.along_m < b.along_m; });
    std::vector<Stop> merged;
    for (const Stop& stop : stops) {
        if (!merged.empty() && stop.along_m - merged.back().along_m < kSameStop_m) {
            merged.back().foot_m = std::max(merged.back().foot_m, stop.foot_m);
        } else {
            merged.push_back(stop);
        }
    }
    stops = std::move(merged);
}

/// Collects the stops of one row of walls.
class StopCollector {
  public:
    StopCollector(const plan::Plan& plan, const WallRow& row)
        : plan_{plan}, row_{row}, first_{side_of(plan.room, row.walls.front())} {}

    const WallSide& first() const { return first_; }

    std::vector<Stop> stops() {
        for (const std::size_t wall : row_.walls) {
            const WallSide side = side_of(plan_.room, wall);
            add(side, 0.0);
            add(side, side.length_m);
            for (const plan::Opening& opening : plan_.room.openings) {
                if (opening.wall == static_cast<int>(wall)) {
                    add(side, opening.from_start.m());
                    add(side, (opening.from_start + opening.width).m());
                }
            }
            for (const plan::Scenery& piece : plan_.scenery) {
                const auto part = wall_part_of(plan_.room, piece);
                if (part && part->wall == wall) {
                    add(side, part->from_m);
                    add(side, part->to_m);
                }
            }
        }
        merge(stops_);
        return stops_;
    }

    double along(const Vec2& place) const { return (place - first_.from).dot(first_.along); }
    double out(const Vec2& place) const { return (place - first_.from).dot(row_.outward); }

  private:
    void add(const WallSide& side, double s_m) {
        const double within_m = std::clamp(s_m, 0.0, side.length_m);
        stops_.push_back({along(side.inner(within_m)), out(side.outer(within_m))});
    }

    const plan::Plan& plan_;
    const WallRow& row_;
    WallSide first_;
    std::vector<Stop> stops_;
};

/// How far out the room and its open doors reach beside a row.
double reach_m(const plan::Room& room, const StopCollector& collector, double low_m,
               double high_m) {
    double reach = 0.0;
    const auto include = [&](const Vec2& place) {
        const double along_m = collector.along(place);
        if (along_m > low_m - kSameStop_m && along_m < high_m + kSameStop_m) {
            reach = std::max(reach, collector.out(place));
        }
    };
    for (const Vec2& corner : room.outline) {
        include(corner);
    }
    for (const plan::Opening& opening : room.openings) {
        if (const auto end = door_leaf_end(room, opening)) {
            include(*end);
        }
    }
    return reach;
}

DimensionRow row_of(const plan::Plan& plan, const WallRow& walls, const PlanFrame& frame) {
    StopCollector collector{plan, walls};
    const std::vector<Stop> stops = collector.stops();
    DimensionRow row;
    row.origin = collector.first().from;
    row.along = collector.first().along;
    row.aside = walls.outward;
    row.aside_mm = kFirstRow_mm;
    for (const Stop& stop : stops) {
        row.stops_m.push_back(stop.along_m);
        row.feet_m.push_back(stop.foot_m);
        row.aside_m = std::max(row.aside_m, stop.foot_m);
    }
    if (!walls.hemmed_in) {
        row.aside_m = std::max(
            row.aside_m, reach_m(plan.room, collector, row.stops_m.front(), row.stops_m.back()));
    } else if (const auto gap = room_before(plan.room, collector.first());
               gap && frame.mm(*gap) < 2.0 * kFirstRow_mm) {
        // No paper between the wall and what it looks at: inside the room.
        row.aside = -walls.outward;
        row.aside_m = 0.0;
        row.feet_m.assign(row.stops_m.size(), 0.0);
    }
    row.words = chain_words(row.stops_m, plan.units);
    return row;
}

/// Ends of a row of walls measured along a direction.
std::pair<double, double> ends_along(const plan::Room& room, const WallRow& row,
                                     const Vec2& direction) {
    double low = std::numeric_limits<double>::max();
    double high = -low;
    for (const std::size_t wall : row.walls) {
        const WallSide side = side_of(room, wall);
        for (const Vec2& end : {side.from, side.to}) {
            low = std::min(low, end.dot(direction));
            high = std::max(high, end.dot(direction));
        }
    }
    return {low, high};
}

/// Whether a plain wall's size is told by the wall across the room as well.
bool is_told_opposite(const plan::Room& room, const WallRow& row,
                      const std::vector<WallRow>& told) {
    const Vec2 along = turned_left(row.outward);
    const auto ends = ends_along(room, row, along);
    return std::any_of(told.begin(), told.end(), [&](const WallRow& other) {
        const auto across = ends_along(room, other, along);
        return is_parallel(-other.outward, row.outward)
               && std::abs(ends.first - across.first) < kSameStop_m
               && std::abs(ends.second - across.second) < kSameStop_m;
    });
}

} // namespace

RoomDatum datum_of(const plan::Room& room) {
    std::optional<std::size_t> best;
    double least = 0.0;
    for (const bool square : {true, false}) {
        for (std::size_t i = 0; i < room.outline.size() && (square || !best); ++i) {
            const double place = room.outline[i].x() + room.outline[i].y();
            if (is_outward_corner(room, i) && is_square_corner(room, i) == square
                && (!best || place < least)) {
                best = i;
                least = place;
            }
        }
    }
    RoomDatum datum;
    datum.corner = best.value_or(0);
    datum.origin = room.outline[datum.corner];
    const std::size_t count = room.outline.size();
    const WallSide before = side_of(room, (datum.corner + count - 1) % count);
    const WallSide after = side_of(room, datum.corner);
    const bool after_is_level = std::abs(after.along.x()) >= std::abs(before.along.x());
    datum.x = after_is_level ? after.along : Vec2{-before.along};
    datum.y = -(after_is_level ? after.outward : before.outward);
    return datum;
}

std::vector<WallRow> wall_rows(const plan::Room& room) {
    std::vector<WallRow> rows;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const WallSide side = side_of(room, i);
        if (side.length_m < kSameStop_m) {
            continue;
        }
        const bool hemmed_in = room_before(room, side).has_value();
        const auto same = std::find_if(rows.begin(), rows.end(), [&](const WallRow& row) {
            return !hemmed_in && !row.hemmed_in && is_parallel(row.outward, side.outward);
        });
        if (same == rows.end()) {
            rows.push_back({{i}, side.outward, hemmed_in});
        } else {
            same->walls.push_back(i);
        }
    }
    return rows;
}

std::optional<WallPart> wall_part_of(const plan::Room& room, const plan::Scenery& piece) {
    Polygon outline;
    if (const auto* box = std::get_if<plan::BoxPiece>(&piece.shape)) {
        outline = rectangle(box->at, box->width.m(), box->depth.m(), box->turn.rad());
    } else if (const auto* prism = std::get_if<plan::PrismPiece>(&piece.shape)) {
        outline = prism->outline;
    }
    for (std::size_t wall = 0; wall < room.outline.size(); ++wall) {
        const WallSide side = side_of(room, wall);
        for (std::size_t i = 0; i < outline.size(); ++i) {
            const Vec2& a = outline[i];
            const Vec2& b = outline[(i + 1) % outline.size()];
            const double from_m = (a - side.from).dot(side.along);
            const double to_m = (b - side.from).dot(side.along);
            const bool touches = std::abs((a - side.from).dot(side.outward)) < kTouches_m
                                 && std::abs((b - side.from).dot(side.outward)) < kTouches_m;
            if (touches && std::abs(to_m - from_m) > kTouches_m
                && std::min(from_m, to_m) > -kTouches_m
                && std::max(from_m, to_m) < side.length_m + kTouches_m) {
                return WallPart{wall, std::min(from_m, to_m), std::max(from_m, to_m)};
            }
        }
    }
    return std::nullopt;
}

void add_room_sizes(DimensionRows& rows, const plan::Plan& plan, const PlanFrame& frame) {
    std::vector<WallRow> told;
    std::vector<WallRow> plain;
    for (const WallRow& walls : wall_rows(plan.room)) {
        DimensionRow row = row_of(plan, walls, frame);
        if (row.words.size() > 1) {
            rows.add_with_overall(std::move(row), plan.units);
            told.push_back(walls);
        } else {
            plain.push_back(walls);
        }
    }
    for (const WallRow& walls : plain) {
        if (!is_told_opposite(plan.room, walls, told)) {
            rows.add(row_of(plan, walls, frame));
            told.push_back(walls);
        }
    }
}

void draw_datum(Board& board, const RoomDatum& datum) {
    constexpr double kRadius_mm = 2.2;
    constexpr double kArrow_mm = 8.0;
    const Vec2 centre = board.frame.at(datum.origin);
    const Pen fine = pen(Ink::lettering, kFine_mm);
    board.add(PlanLayer::lettering, Circle{centre, kRadius_mm, fine, solid(Ink::paper)},
              Crowd::never);
    for (const double from_rad : {0.0, std::numbers::pi}) {
        const double turn_rad = angle_of(datum.x) + from_rad;
        std::vector<Vec2> quarter =
            arc_points(centre, kRadius_mm, turn_rad, turn_rad + std::numbers::pi / 2.0);
        quarter.push_back(centre);
        board.add(PlanLayer::lettering, outline(quarter, no_pen(), solid(Ink::lettering)));
    }
    // Beside the walls, not on them.
    const auto draw_axis = [&](const Vec2& direction, const Vec2& aside, const char* name) {
        constexpr double kOffWall_mm = 2.6;
        const Vec2 ahead = paper_direction(angle_of(direction));
        const Vec2 start = centre + paper_direction(angle_of(aside)) * kOffWall_mm;
        const Vec2 tip = start + ahead * kArrow_mm;
        const Vec2 wing = turned_left(ahead) * 0.7;
        board.add(PlanLayer::lettering, line(start + ahead * kOffWall_mm, tip, fine), Crowd::firm);
        board.add(PlanLayer::lettering,
                  outline({tip, tip - ahead * 2.0 + wing, tip - ahead * 2.0 - wing}, no_pen(),
                          solid(Ink::lettering)));
        const Vec2 at = tip + ahead * 1.8 + Vec2{0.0, kLetter_mm * 0.35};
        board.add(PlanLayer::lettering,
                  Text{name, at, kLetter_mm, TextAnchor::middle, 0.0, true, Ink::lettering},
                  Crowd::never);
    };
    draw_axis(datum.x, datum.y, "x");
    draw_axis(datum.y, datum.x, "y");
}

} // namespace throwline::sheet
