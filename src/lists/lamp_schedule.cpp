#include "lists/lamp_schedule.h"

#include "base/length_text.h"
#include "checks/circuit_sum.h"
#include "checks/hanging.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/place_text.h"
#include "plan/names.h"
#include "plan/places.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::lists {

namespace {

Column column_of(LampColumn column) {
    switch (column) {
    case LampColumn::position:
        return {"position", "Position"};
    case LampColumn::lamp:
        return {"lamp", "Lamp"};
    case LampColumn::channel:
        return {"channel", "Channel", Align::right};
    case LampColumn::circuit:
        return {"circuit", "Circuit"};
    case LampColumn::instrument:
        return {"instrument", "Instrument"};
    case LampColumn::role:
        return {"role", "Role"};
    case LampColumn::aim:
        return {"aim", "Aim"};
    case LampColumn::height:
        return {"height_m", "Height", Align::right};
    case LampColumn::drop:
        return {"drop_m", "Drop", Align::right};
    case LampColumn::power:
        return {"power_w", "Power", Align::right};
    case LampColumn::current:
        return {"current_a", "Current", Align::right};
    case LampColumn::level:
        return {"level_percent", "Level", Align::right};
    case LampColumn::focus:
        return {"flood_percent", "Flood", Align::right};
    case LampColumn::filters:
        return {"filters", "Filters"};
    case LampColumn::cut:
        return {"cut", "Cut in"};
    case LampColumn::beats:
        return {"beats", "Beats"};
    case LampColumn::mass:
        return {"mass_kg", "Weight", Align::right};
    case LampColumn::notes:
        return {"notes", "Notes"};
    }
    return {};
}

std::string aim_text(const plan::Plan& plan, const plan::Lamp& lamp) {
    if (const auto* thing = std::get_if<plan::ThingName>(&lamp.aim)) {
        return lamp.aim_beat.empty() ? thing->name
                                     : thing->name + " in " + checks::said(lamp.aim_beat);
    }
    if (const auto* point = std::get_if<Vec3>(&lamp.aim)) {
        return fmt::format("{}, {} up", place_text(plan, floor_of(*point)),
                           shown(Length::metres(point->z()), plan.units));
    }
    return "straight down";
}

std::string cut_text(const plan::BeamCut& cut) {
    std::vector<std::string> sides;
    const auto add = [&](std::string_view side, double share) {
        if (share > 0.0) {
            sides.push_back(fmt::format("{} {}", side, checks::share_text(share)));
        }
    };
    add("top", cut.top);
    add("bottom", cut.bottom);
    add("left", cut.left);
    add("right", cut.right);
    return joined(sides);
}

std::optional<Length> drop_of(const plan::Lamp& lamp) {
    if (const auto* hang = std::get_if<plan::GridHang>(&lamp.mount)) {
        return hang->drop;
    }
    if (const auto* hang = std::get_if<plan::PipeHang>(&lamp.mount)) {
        return hang->drop;
    }
    return std::nullopt;
}

struct PositionText {
    const plan::Plan& plan;

    std::string operator()(const plan::GridHang& hang) const {
        return checks::grid_position(hang.position);
    }
    std::string operator()(const plan::PipeHang& hang) const {
        return fmt::format("{} at {}", checks::said(hang.pipe), shown(hang.along, plan.units));
    }
    std::string operator()(const plan::StandMount& stand) const {
        return fmt::format("{}, {}", stand.support.empty() ? "stand" : stand.support,
                           place_text(plan, stand.at));
    }
    std::string operator()(const plan::WallMount& mount) const {
        return fmt::format("{} at {}", wall_text(plan.room, mount.wall),
                           shown(mount.along, plan.units));
    }
    std::string operator()(const plan::PracticalMount& mount) const {
        return "in the set, " + place_text(plan, mount.at);
    }
};

Cell current_cell(const plan::Plan& plan, const plan::Lamp& lamp,
                  const catalogue::Instrument* instrument) {
    const plan::Circuit* circuit = plan::find(plan, lamp.circuit);
    return circuit != nullptr && instrument != nullptr
               ? figure(checks::current_a(*instrument, circuit->volts), 2, "A")
               : nothing();
}

Cell height_cell(const plan::Plan& plan, const plan::Lamp& lamp) {
    const std::optional<Vec3> point = plan::lamp_point(plan, lamp);
    return point ? length(Length::metres(point->z()), plan.units) : nothing();
}

Cell cell_of(const ListInput& input, const plan::Lamp& lamp, LampColumn column) {
    const plan::Plan& plan = *input.analysis.plan;
    const catalogue::Instrument* instrument = input.catalogue.instrument(lamp.instrument);
    switch (column) {
    case LampColumn::position:
        return words(position_text(plan, lamp));
    case LampColumn::lamp:
        return words(lamp.id.name);
    case LampColumn::channel:
        return lamp.channel > 0 ? count(static_cast<std::size_t>(lamp.channel)) : nothing();
    case LampColumn::circuit:
        return words(lamp.circuit.name);
    case LampColumn::instrument:
        return words(lamp.instrument);
    case LampColumn::role:
        return words(std::string{plan::name_of(lamp.role)});
    case LampColumn::aim:
        return words(aim_text(plan, lamp));
    case LampColumn::height:
        return height_cell(plan, lamp);
    case LampColumn::drop:
        return length(drop_of(lamp), plan.units);
    case LampColumn::power:
        return instrument != nullptr ? figure(instrument->watts, 0, "W") : nothing();
    case LampColumn::current:
        return current_cell(plan, lamp, instrument);
    case LampColumn::level:
        return percent(lamp.level);
    case LampColumn::focus:
        return instrument != nullptr && instrument->spot.beam != instrument->flood.beam
                   ? percent(lamp.focus)
                   : nothing();
    case LampColumn::filters:
        return words(joined(lamp.filters));
    case LampColumn::cut:
        return words(cut_text(lamp.cut));
    case LampColumn::beats:
        return words(lamp.beats.empty() ? "all" : joined(names_of(lamp.beats)));
    case LampColumn::mass:
        return instrument != nullptr ? mass(instrument->mass_kg, plan.units) : nothing();
    case LampColumn::notes:
        return words(joined(lamp.notes));
    }
    return nothing();
}

/// Nothing without the column, or without a number in it.
std::optional<double> sum_of(const Table& table, const Section& section, std::string_view key) {
    std::optional<double> sum;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        for (const Row& row : section.rows) {
            if (table.columns[i].key == key && row.cells[i].number && !row.total) {
                sum = sum.value_or(0.0) + *row.cells[i].number;
            }
        }
    }
    return sum;
}

} // namespace

Table lamp_table(std::string_view name, std::string_view title,
                 std::span<const LampColumn> columns) {
    Table table{std::string{name}, std::string{title}, {}, {}, {}};
    for (const LampColumn column : columns) {
        table.columns.push_back(column_of(column));
    }
    return table;
}

Row lamp_row(const ListInput& input, const plan::Lamp& lamp, std::span<const LampColumn> columns) {
    Row row;
    for (const LampColumn column : columns) {
        row.cells.push_back(cell_of(input, lamp, column));
    }
    return row;
}

Row lamp_total(const Table& table, const Section& section, UnitSystem units) {
    Row row = total_row(
        table, {{"lamp", words(checks::counted(static_cast<int>(section.rows.size()), "lamp"))}});
    const auto put = [&](std::string_view key, const Cell& cell) {
        const Row sum = total_row(table, {{key, cell}});
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            row.cells[i] = sum.cells[i] == Cell{} ? row.cells[i] : sum.cells[i];
        }
    };
    if (const auto power_w = sum_of(table, section, "power_w")) {
        put("power_w", figure(*power_w, 0, "W"));
    }
    if (const auto amps = sum_of(table, section, "current_a")) {
        put("current_a", figure(*amps, 2, "A"));
    }
    if (const auto mass_kg = sum_of(table, section, "mass_kg")) {
        put("mass_kg", mass(*mass_kg, units));
    }
    return row;
}

std::string position_text(const plan::Plan& plan, const plan::Lamp& lamp) {
    return std::visit(PositionText{plan}, lamp.mount);
}

} // namespace throwline::lists
