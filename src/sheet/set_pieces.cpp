#include "sheet/set_pieces.h"

#include "checks/cautions.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

/// Solids from this height on are columns and the like (own choice).
constexpr double kColumn_m = 1.8;
/// What stands askew by less is set square (own choice: 10 mm in 2 m).
constexpr double kSquare_rad = 0.3 * std::numbers::pi / 180.0;

std::string by(Length width, Length depth, UnitSystem units) {
    return fmt::format("{} x {}", tape_text(width, units), tape_text(depth, units));
}

struct SizeText {
    const catalogue::Catalogue& catalogue;
    UnitSystem units;

    std::string operator()(const plan::FlatRun& run) const { return flats_text(run, units); }
    std::string operator()(const plan::StockPiece& piece) const {
        const catalogue::StockItem* item = catalogue.stock_item(piece.item);
        if (item == nullptr) {
            return {};
        }
        return item->shape == catalogue::StockShape::round
                   ? fmt::format("round {}", tape_text(item->width, units))
                   : by(item->width, item->depth, units);
    }
    std::string operator()(const plan::BoxPiece& box) const {
        return by(box.width, box.depth, units);
    }
    std::string operator()(const plan::CylinderPiece& cylinder) const {
        return fmt::format("round {}", tape_text(cylinder.diameter, units));
    }
    std::string operator()(const plan::PrismPiece& prism) const {
        Extent extent;
        for (const Vec2& corner : prism.outline) {
            extent.include(corner);
        }
        return by(Length::metres(extent.size().x()), Length::metres(extent.size().y()), units);
    }
    std::string operator()(const plan::Riser& riser) const {
        return by(riser.width, riser.depth, units);
    }
    std::string operator()(const plan::Drape& drape) const {
        double length_m = 0.0;
        for (std::size_t i = 0; i + 1 < drape.along.size(); ++i) {
            length_m += (drape.along[i + 1] - drape.along[i]).norm();
        }
        return fmt::format("{} wide", tape_text(Length::metres(length_m), units));
    }
};

bool is_round(const plan::Scenery& piece, const catalogue::Catalogue& catalogue) {
    if (const auto* stock = std::get_if<plan::StockPiece>(&piece.shape)) {
        const catalogue::StockItem* item = catalogue.stock_item(stock->item);
        return item != nullptr && item->shape == catalogue::StockShape::round;
    }
    return std::holds_alternative<plan::CylinderPiece>(piece.shape);
}

/// Whether all sides run along the datum's axes.
bool is_square_to(const RoomDatum& datum, const Polygon& outline) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 side = outline[(i + 1) % outline.size()] - outline[i];
        const double along = std::abs(side.dot(datum.x));
        const double across = std::abs(side.dot(datum.y));
        if (std::min(along, across) > std::sin(kSquare_rad) * side.norm()) {
            return false;
        }
    }
    return true;
}

/// From one end to the other; along an axis from the nearer end.
PiecePlace between(const Vec2& a, const Vec2& b) {
    const Vec2 way = (b - a).cwiseAbs();
    const bool is_askew = way.minCoeff() > std::sin(kSquare_rad) * way.norm();
    return is_askew ? PiecePlace{a, b, false} : PiecePlace{a.cwiseMin(b), a.cwiseMax(b), false};
}

std::string span_text(std::string_view axis, double low_m, double high_m, UnitSystem units) {
    const std::string low = tape_text(Length::metres(low_m), units);
    const std::string high = tape_text(Length::metres(high_m), units);
    return low == high ? fmt::format("{} {}", axis, low)
                       : fmt::format("{} {} to {}", axis, low, high);
}

} // namespace

std::string flats_text(const plan::FlatRun& run, UnitSystem units) {
    const std::vector<std::int64_t> steps = spread_steps(run.widths, units);
    std::string text;
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < steps.size();) {
        std::size_t end = i;
        while (end < steps.size() && steps[end] == steps[i]) {
            sum += steps[end++];
        }
        const std::string width = tape_text(steps[i], units);
        text += fmt::format("{}{}", i > 0 ? " + " : "",
                            end - i > 1 ? fmt::format("{} x {}", end - i, width) : width);
        i = end;
    }
    return steps.size() > 1 ? fmt::format("{} = {}", text, tape_text(sum, units)) : text;
}

bool is_built(const plan::Plan& plan, const plan::Scenery& piece,
              const catalogue::Catalogue& catalogue) {
    if (const auto* stock = std::get_if<plan::StockPiece>(&piece.shape)) {
        const catalogue::StockItem* item = catalogue.stock_item(stock->item);
        return item != nullptr
               && (item->use == catalogue::StockUse::flat
                   || item->use == catalogue::StockUse::platform);
    }
    const bool is_solid = std::holds_alternative<plan::BoxPiece>(piece.shape)
                          || std::holds_alternative<plan::CylinderPiece>(piece.shape)
                          || std::holds_alternative<plan::PrismPiece>(piece.shape);
    return !is_solid
           || (piece.elevation.m() <= 0.0 && plan::height_of(piece, catalogue).m() >= kColumn_m)
           || wall_part_of(plan.room, piece).has_value();
}

std::string size_text(const plan::Scenery& piece, const catalogue::Catalogue& catalogue,
                      UnitSystem units) {
    return std::visit(SizeText{catalogue, units}, piece.shape);
}

PiecePlace place_of_piece(const RoomDatum& datum, const plan::Scenery& piece,
                          const catalogue::Catalogue& catalogue) {
    if (const auto* run = std::get_if<plan::FlatRun>(&piece.shape)) {
        const Vec2 end = run->from + unit_at(run->heading.rad()) * run->total_width().m();
        return between(datum.of(run->from), datum.of(end));
    }
    if (const auto* drape = std::get_if<plan::Drape>(&piece.shape);
        drape != nullptr && !drape->along.empty()) {
        return between(datum.of(drape->along.front()), datum.of(drape->along.back()));
    }
    const Polygon outline = plan::footprint(piece, catalogue);
    if (is_round(piece, catalogue) || !is_square_to(datum, outline)) {
        const Vec2 middle = datum.of(centroid(outline));
        return {middle, middle, true};
    }
    PiecePlace place;
    Extent extent;
    for (const Vec2& corner : outline) {
        extent.include(datum.of(corner));
    }
    place.low = extent.low;
    place.high = extent.low;
    return place;
}

std::string place_text(const PiecePlace& place, UnitSystem units) {
    return fmt::format("{}{}, {}", place.is_middle ? "middle " : "",
                       span_text("x", place.low.x(), place.high.x(), units),
                       span_text("y", place.low.y(), place.high.y(), units));
}

std::string height_text(const plan::Scenery& piece, const catalogue::Catalogue& catalogue,
                        UnitSystem units) {
    std::string text = fmt::format("h {}", tape_text(plan::height_of(piece, catalogue), units));
    if (piece.elevation.m() > 0.0) {
        text += fmt::format(", {} up", tape_text(piece.elevation, units));
    }
    return text;
}

lists::Table set_pieces_table(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                              const RoomDatum& datum) {
    lists::Table table;
    table.name = "set-pieces";
    table.title = "Set pieces and where they stand";
    table.columns = {{"piece", "Piece"},
                     {"size", "Size"},
                     {"height", "Height"},
                     {"place", "Place"},
                     {"finish", "Finish"}};
    table.sections = {{"Set", {}, {}}, {"Furniture and dressing", {}, {}}};
    for (const plan::Scenery& piece : plan.scenery) {
        lists::Row row;
        for (std::string text :
             {piece.id.name, size_text(piece, catalogue, plan.units),
              height_text(piece, catalogue, plan.units),
              place_text(place_of_piece(datum, piece, catalogue), plan.units), piece.finish}) {
            row.cells.push_back({std::move(text), std::nullopt});
        }
        table.sections[is_built(plan, piece, catalogue) ? 0 : 1].rows.push_back(std::move(row));
    }
    table.cautions = {std::string{checks::caution_about(checks::Danger::any)},
                      std::string{checks::caution_about(checks::Danger::ways_and_cables)}};
    std::erase_if(table.sections,
                  [](const lists::Section& section) { return section.rows.empty(); });
    return table;
}

} // namespace throwline::sheet
