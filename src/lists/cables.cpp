#include "base/length_text.h"
#include "checks/wording.h"
#include "lists/cable_run.h"
#include "lists/cells.h"
#include "lists/cover_length.h"
#include "lists/each_list.h"
#include "lists/place_text.h"

#include <array>
#include <fmt/format.h>
#include <map>

namespace throwline::lists {

namespace {

/// Lengths that cables are made up in (common practice, no source).
constexpr std::array kMetricCables{Length::metres(3),  Length::metres(5),  Length::metres(10),
                                   Length::metres(15), Length::metres(25), Length::metres(50)};
constexpr std::array kImperialCables{Length::feet(5), Length::feet(10), Length::feet(25),
                                     Length::feet(50), Length::feet(100)};

std::span<const Length> cable_lengths(UnitSystem units) {
    return units == UnitSystem::metric ? std::span<const Length>{kMetricCables}
                                       : std::span<const Length>{kImperialCables};
}

std::vector<Column> columns() {
    return {{"lamp", "Lamp"},
            {"circuit", "Circuit"},
            {"outlet", "Outlet"},
            {"way", "Way"},
            {"level_m", "Level", Align::right},
            {"rise_m", "Up and down", Align::right},
            {"with_slack_m", "With slack", Align::right},
            {"cables", "Cables"},
            {"cable_m", "Together", Align::right},
            {"passes", "Passes"}};
}

/// The shortest single cable that reaches; where none does, the least that several make.
Cover cover_of(Length wanted, std::span<const Length> lengths) {
    Cover cover{std::vector<int>(lengths.size(), 0), {}};
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        if (lengths[i] >= wanted) {
            cover.pieces[i] = 1;
            cover.total = lengths[i];
            return cover;
        }
    }
    std::vector<StockLength> stock;
    for (const Length& each : lengths) {
        stock.push_back({each, std::nullopt});
    }
    return cover_length(wanted, stock).value_or(cover);
}

std::string whole_length(Length length, UnitSystem units) {
    return units == UnitSystem::metric ? fixed(length.m(), 0) + " m"
                                       : fixed(length.ft(), 0) + " ft";
}

std::string pieces_text(const Cover& cover, std::span<const Length> lengths, UnitSystem units) {
    std::string text;
    for (std::size_t i = lengths.size(); i-- > 0;) {
        for (int piece = 0; piece < cover.pieces[i]; ++piece) {
            text += (text.empty() ? "" : " + ") + whole_length(lengths[i], units);
        }
    }
    return text.empty() ? "too far" : text;
}

std::string passes_text(const CableRun& run) {
    std::vector<std::string> names;
    for (const plan::Opening* opening : run.passes) {
        names.push_back(opening->id.name + (opening->way_out ? " (way out)" : ""));
    }
    return joined(names);
}

Row row_of(const plan::Plan& plan, const plan::Lamp& lamp, const CableRun& run,
           const Cover& cover) {
    return {{words(lamp.id.name),
             words(lamp.circuit.name),
             words(place_text(plan, run.outlet)),
             words(std::string{name_of(run.way)}),
             length(Length::metres(run.level_m), plan.units),
             length(Length::metres(run.rise_m), plan.units),
             length(with_slack(run, plan.units), plan.units),
             words(pieces_text(cover, cable_lengths(plan.units), plan.units)),
             {whole_length(cover.total, plan.units), cover.total.m()},
             words(passes_text(run))},
            false};
}

void add_totals(Section& section, const Table& table, const Cover& sum, const plan::Plan& plan) {
    const std::span<const Length> lengths = cable_lengths(plan.units);
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        if (sum.pieces[i] > 0) {
            section.rows.push_back(
                total_row(table, {{"lamp", words(checks::counted(sum.pieces[i], "cable"))},
                                  {"cables", words("of " + whole_length(lengths[i], plan.units))},
                                  {"cable_m",
                                   {whole_length(lengths[i] * sum.pieces[i], plan.units),
                                    lengths[i].m() * sum.pieces[i]}}}));
        }
    }
}

std::string how_remark(UnitSystem units) {
    return fmt::format(
        "Hung lamps: up to the pipe, square along it, down to the lamp. Others: along the walls "
        "the shorter way round and square off the wall, or straight over the floor from an outlet "
        "in it. Outlets are taken as {} up. A tenth more for bends and {} for tails, then the "
        "next made-up length (common practice, no source).",
        shown(kOutletHeight, units), shown(tails_in(units), units));
}

} // namespace

Table cables(const ListInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    Table table{"cables", "Cables", columns(), {{}}, {}};
    Section& section = table.sections.front();
    Section without{"Without an outlet", {}, {}};
    Cover sum{std::vector<int>(cable_lengths(plan.units).size(), 0), {}};
    for (const plan::Lamp& lamp : plan.lamps) {
        const std::optional<CableRun> run = cable_run(plan, lamp);
        if (!run) {
            Row row{std::vector<Cell>(table.columns.size()), false};
            row.cells[0] = words(lamp.id.name);
            row.cells[1] = words(lamp.circuit.name);
            without.rows.push_back(std::move(row));
            continue;
        }
        const Cover cover = cover_of(with_slack(*run, plan.units), cable_lengths(plan.units));
        for (std::size_t i = 0; i < sum.pieces.size(); ++i) {
            sum.pieces[i] += cover.pieces[i];
        }
        section.rows.push_back(row_of(plan, lamp, *run, cover));
    }
    add_totals(section, table, sum, plan);
    section.remarks.push_back(how_remark(plan.units));
    if (!without.rows.empty()) {
        section.heading = "From the nearest outlet of its circuit";
        table.sections.push_back(std::move(without));
    }
    table.cautions = cautions_about(
        {checks::Danger::overhead, checks::Danger::mains, checks::Danger::ways_and_cables});
    return table;
}

} // namespace throwline::lists
