#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/each_list.h"

#include <fmt/format.h>
#include <map>
#include <tuple>

namespace throwline::lists {

namespace {

std::vector<Column> columns() {
    return {{"filter", "Filter"},
            {"pieces", "Pieces", Align::right},
            {"width_m", "Width", Align::right},
            {"height_m", "Height", Align::right},
            {"size", "Size"},
            {"lamps", "Lamps"}};
}

/// Lamps of these kinds shine from a bulb or a bag, not out of a frame that a filter slides into.
bool has_frame(const catalogue::Instrument& instrument) {
    switch (instrument.kind) {
    case catalogue::InstrumentKind::fresnel:
    case catalogue::InstrumentKind::open_face:
    case catalogue::InstrumentKind::profile:
    case catalogue::InstrumentKind::par:
    case catalogue::InstrumentKind::led_panel:
    case catalogue::InstrumentKind::tube:
    case catalogue::InstrumentKind::soft_box:
    case catalogue::InstrumentKind::cyc:
        return true;
    case catalogue::InstrumentKind::lantern:
    case catalogue::InstrumentKind::practical:
        return false;
    }
    return false;
}

/// Filter and the size of its piece in metres, (0, 0) when that is not known.
using Piece = std::tuple<std::string, double, double>;

Piece piece_of(const std::string& filter, const catalogue::Instrument* instrument) {
    if (instrument == nullptr || !has_frame(*instrument)) {
        return {filter, 0.0, 0.0};
    }
    return {filter, instrument->face_width.m(), instrument->face_height.m()};
}

Row row_of(const Piece& piece, const std::vector<std::string>& lamps, UnitSystem units) {
    const auto& [filter, width_m, height_m] = piece;
    const bool known = width_m > 0.0 && height_m > 0.0;
    return {{words(filter), count(lamps.size()),
             known ? length(Length::metres(width_m), units) : nothing(),
             known ? length(Length::metres(height_m), units) : nothing(),
             words(known ? "" : "size not known"), words(joined(lamps))},
            false};
}

} // namespace

Table filters(const ListInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    std::map<Piece, std::vector<std::string>> lamps_by_piece;
    std::size_t pieces = 0;
    for (const plan::Lamp& lamp : plan.lamps) {
        for (const std::string& filter : lamp.filters) {
            const Piece piece = piece_of(filter, input.catalogue.instrument(lamp.instrument));
            lamps_by_piece[piece].push_back(lamp.id.name);
            ++pieces;
        }
    }
    Table table{"filters", "Filters to cut", columns(), {{}}, {}};
    Section& section = table.sections.front();
    for (const auto& [piece, lamps] : lamps_by_piece) {
        section.rows.push_back(row_of(piece, lamps, plan.units));
    }
    if (pieces > 0) {
        section.rows.push_back(
            total_row(table, {{"filter", words("in all")}, {"pieces", count(pieces)}}));
        section.remarks.emplace_back("Sizes are those of the bright face in the catalogue: measure "
                                     "the filter frame before cutting.");
    } else {
        section.remarks.emplace_back("No lamp has a filter.");
    }
    table.cautions = cautions_about({checks::Danger::hot_lamps});
    return table;
}

} // namespace throwline::lists
