#include "sheet/set_sizes.h"

#include "plan/places.h"
#include "sheet/wall_side.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>

namespace throwline::sheet {

namespace {

/// Distance of a piece's own sizes from it.
constexpr double kBeside_mm = 4.5;
/// A piece drawn smaller has no room for its sizes; they are in the table.
constexpr double kLeastPiece_mm = 9.0;
/// Distances below this are not drawn: the piece stands against the wall.
constexpr double kAgainst_m = 0.01;
/// A millimetre of line against a crossed cell.
constexpr double kPerMillimetre = 0.5;
constexpr double kSquareTo = 0.01;
constexpr double kFar_m = 1e4;

/// Distance to the wall met first in a direction, where that stands square to it.
std::optional<double> square_wall(const plan::Room& room, const Vec2& from, const Vec2& direction) {
    std::optional<double> nearest;
    bool is_square = false;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const WallSide side = side_of(room, i);
        const double share = crossing_share(from, from + direction * kFar_m, side.from, side.to);
        if (share >= 0.0 && (!nearest || share * kFar_m < *nearest)) {
            nearest = share * kFar_m;
            is_square = std::abs(side.along.dot(direction)) < kSquareTo;
        }
    }
    return is_square ? nearest : std::nullopt;
}

/// Lays the sizes of one piece after the other.
class SetSizer {
  public:
    SetSizer(Board& board, const plan::Plan& plan, const catalogue::Catalogue& catalogue,
             const RoomDatum& datum)
        : board_{board}, plan_{plan}, catalogue_{catalogue}, datum_{datum} {}

    void draw_widths(const plan::Scenery& piece) {
        if (wall_part_of(plan_.room, piece)) {
            return; // Its width is in the wall's own chain.
        }
        if (const auto* run = std::get_if<plan::FlatRun>(&piece.shape)) {
            draw_run_widths(*run);
        } else if (const auto* riser = std::get_if<plan::Riser>(&piece.shape)) {
            draw_sides(riser->at, riser->width.m(), riser->depth.m(), riser->turn.rad());
        } else if (const auto* box = std::get_if<plan::BoxPiece>(&piece.shape)) {
            draw_sides(box->at, box->width.m(), box->depth.m(), box->turn.rad());
        }
    }

    void draw_places(const plan::Scenery& piece) {
        if (wall_part_of(plan_.room, piece)) {
            return;
        }
        const PiecePlace place = place_of_piece(datum_, piece, catalogue_);
        if (place.is_middle) {
            place_point(place.low, Vec2::Zero());
        } else if (is_askew(place)) {
            place_point(place.low, place.low - place.high);
            place_point(place.high, place.high - place.low);
        } else {
            place_sides(piece, place);
        }
    }

  private:
    static bool is_askew(const PiecePlace& place) {
        const Vec2 way = (place.high - place.low).cwiseAbs();
        return way.minCoeff() > kAgainst_m;
    }

    double price_of(const DimensionRow& row) {
        constexpr double kNoPlace = 1e4;
        return crowding_of(board_, row).value_or(kNoPlace);
    }

    void lay_best(const std::vector<DimensionRow>& offers) {
        const DimensionRow* best = nullptr;
        double least = std::numeric_limits<double>::max();
        for (const DimensionRow& row : offers) {
            const double length_mm = board_.frame.mm(row.stops_m.back() - row.stops_m.front());
            double cost = price_of(row) + kPerMillimetre * length_mm;
            if (const auto overall = overall_of(row, plan_.units)) {
                cost += price_of(*overall);
            }
            if (cost < least) {
                best = &row;
                least = cost;
            }
        }
        if (best == nullptr) {
            return;
        }
        DimensionRows rows{board_};
        rows.add_with_overall(*best, plan_.units);
        rows.lay_down();
    }

    /// Whether more than a few stretches are too short for their words, which would stand in a
    /// heap.
    bool has_crowded_words(const DimensionRow& row) const {
        constexpr int kFew = 3;
        int crowded = 0;
        for (std::size_t i = 0; i < row.words.size(); ++i) {
            const double stretch_mm = board_.frame.mm(row.stops_m[i + 1] - row.stops_m[i]);
            crowded += board_.field.measure().width_mm(row.words[i], kLetter_mm, false) > stretch_mm
                           ? 1
                           : 0;
        }
        return crowded > kFew;
    }

    void draw_run_widths(const plan::FlatRun& run) {
        DimensionRow row;
        row.origin = run.from;
        row.along = unit_at(run.heading.rad());
        row.stops_m = {0.0};
        for (const Length width : run.widths) {
            row.stops_m.push_back(row.stops_m.back() + width.m());
        }
        if (board_.frame.mm(row.stops_m.back()) < kLeastPiece_mm) {
            return;
        }
        row.words = chain_words(row.stops_m, plan_.units);
        if (has_crowded_words(row)) {
            row.stops_m = {0.0, row.stops_m.back()};
            row.words = {flats_text(run, plan_.units)};
        }
        row.feet_m.assign(row.stops_m.size(), 0.0);
        row.aside_mm = kBeside_mm;
        row.aside = turned_left(row.along);
        DimensionRow behind = row;
        behind.aside = -row.aside;
        behind.aside_m = run.thickness.m();
        behind.feet_m.assign(row.stops_m.size(), run.thickness.m());
        lay_best({behind, row});
    }

    /// Width and depth of a rectangle, each on its freer side.
    void draw_sides(const Vec2& middle, double width_m, double depth_m, double turn_rad) {
        const Vec2 x = unit_at(turn_rad);
        const Vec2 y = turned_left(x);
        draw_side(middle, x, y, width_m, depth_m);
        draw_side(middle, y, x, depth_m, width_m);
    }

    void draw_side(const Vec2& middle, const Vec2& along, const Vec2& across, double length_m,
                   double across_m) {
        if (board_.frame.mm(length_m) < kLeastPiece_mm) {
            return;
        }
        std::vector<DimensionRow> offers;
        for (const double side : {-1.0, 1.0}) {
            DimensionRow row;
            row.origin = middle - along * (length_m / 2.0);
            row.along = along;
            row.aside = across * side;
            row.stops_m = {0.0, length_m};
            row.feet_m = {across_m / 2.0, across_m / 2.0};
            row.aside_m = across_m / 2.0;
            row.aside_mm = kBeside_mm;
            row.words = {tape_text(Length::metres(length_m), plan_.units)};
            offers.push_back(std::move(row));
        }
        lay_best(offers);
    }

    /// From a point in the datum's axes to the wall that it looks at in a direction of them.
    void offer(std::vector<DimensionRow>& offers, const Vec2& point, const Vec2& direction) const {
        DimensionRow row;
        row.origin = datum_.origin + datum_.on_plan(point);
        row.along = datum_.on_plan(direction);
        row.aside = turned_left(row.along);
        const auto distance_m = square_wall(plan_.room, row.origin, row.along);
        if (!distance_m || *distance_m < kAgainst_m) {
            return;
        }
        row.stops_m = {0.0, *distance_m};
        row.words = {tape_text(Length::metres(*distance_m), plan_.units)};
        offers.push_back(std::move(row));
    }

    /// Whether a place along an axis has been told; from now on it has.
    bool is_told(int axis, double at_m) {
        return !told_.insert({axis, steps_of(Length::metres(at_m), plan_.units)}).second;
    }

    /// `away` points from the piece that the point is an end of: distances are not drawn over it.
    void place_point(const Vec2& point, const Vec2& away) {
        for (const int axis : {0, 1}) {
            if (is_told(axis, point[axis])) {
                continue;
            }
            std::vector<DimensionRow> offers;
            for (const double side : {1.0, -1.0}) {
                if (side * away[axis] >= 0.0) {
                    offer(offers, point, side * Vec2::Unit(axis));
                }
            }
            lay_best(offers);
        }
    }

    void place_sides(const plan::Scenery& piece, const PiecePlace& place) {
        Extent extent;
        for (const Vec2& corner : plan::footprint(piece, catalogue_)) {
            extent.include(datum_.of(corner));
        }
        const bool has_face = (place.high - place.low).norm() > kAgainst_m;
        if (has_face) { // The thickness lies behind it.
            extent = {};
            extent.include(place.low);
            extent.include(place.high);
        }
        for (const int axis : {0, 1}) {
            place_along(axis, extent);
        }
    }

    /// From either end of an extent along an axis to the wall there, at several places across.
    void place_along(int axis, const Extent& extent) {
        const int other = 1 - axis;
        const bool low_is_told = is_told(axis, extent.low[axis]);
        const bool high_is_told = is_told(axis, extent.high[axis]);
        const bool is_line = extent.size()[axis] < kAgainst_m;
        if (low_is_told || (high_is_told && !is_line)) {
            return;
        }
        std::vector<DimensionRow> offers;
        for (const double share : {0.5, 0.25, 0.75, 0.1, 0.9, 0.0, 1.0}) {
            Vec2 point = extent.low;
            point[other] += share * extent.size()[other];
            offer(offers, point, -Vec2{Vec2::Unit(axis)});
            point[axis] = extent.high[axis];
            offer(offers, point, Vec2::Unit(axis));
        }
        lay_best(offers);
    }

    Board& board_;
    const plan::Plan& plan_;
    const catalogue::Catalogue& catalogue_;
    const RoomDatum& datum_;
    std::set<std::pair<int, std::int64_t>> told_;
};

} // namespace

void draw_set_sizes(Board& board, const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                    const RoomDatum& datum) {
    DimensionRows rows{board};
    add_room_sizes(rows, plan, board.frame);
    rows.lay_down();
    SetSizer sizer{board, plan, catalogue, datum};
    std::vector<const plan::Scenery*> built;
    for (const plan::Scenery& piece : plan.scenery) {
        if (is_built(plan, piece, catalogue)) {
            built.push_back(&piece);
        }
    }
    for (const plan::Scenery* piece : built) {
        sizer.draw_widths(*piece);
    }
    if (built.size() > kMostPlacedPieces) {
        return;
    }
    for (const plan::Scenery* piece : built) {
        sizer.draw_places(*piece);
    }
}

} // namespace throwline::sheet
