#include "base/length_text.h"
#include "checks/circuit_sum.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/each_list.h"

#include <fmt/format.h>

namespace throwline::lists {

namespace {

std::vector<Column> columns() {
    return {{"circuit", "Circuit"},
            {"lamps", "Lamps"},
            {"power_w", "Power", Align::right},
            {"supply_v", "Supply", Align::right},
            {"current_a", "Current", Align::right},
            {"breaker_a", "Breaker", Align::right},
            {"continuous", "Stays on"},
            {"allowed_a", "Planned to", Align::right},
            {"left_a", "Left", Align::right},
            {"left_w", "Left in watts", Align::right}};
}

std::string lamp_names(const checks::CircuitSum& sum) {
    std::vector<std::string> names;
    for (const plan::Lamp* lamp : sum.lamps) {
        names.push_back(lamp->id.name);
    }
    return joined(names);
}

Row row_of(const plan::Circuit& circuit, const checks::CircuitSum& sum) {
    const double left_a = checks::allowed_a(circuit) - sum.current_a;
    Row row;
    row.cells = {words(circuit.id.name),
                 words(lamp_names(sum)),
                 figure(sum.power_w, 0, "W"),
                 {shortest(circuit.volts) + " V", circuit.volts},
                 figure(sum.current_a, 2, "A"),
                 {shortest(circuit.breaker_amps) + " A", circuit.breaker_amps},
                 words(circuit.continuous ? "yes, to 80 %" : "no"),
                 figure(checks::allowed_a(circuit), 1, "A"),
                 figure(left_a, 2, "A"),
                 figure(left_a * circuit.volts, 0, "W")};
    return row;
}

std::optional<std::string> over_remark(const plan::Circuit& circuit,
                                       const checks::CircuitSum& sum) {
    const double over_a = sum.current_a - checks::allowed_a(circuit);
    if (over_a <= checks::kCurrentRounding_a) {
        return std::nullopt;
    }
    return fmt::format("{} is planned {} A over what it may carry.",
                       checks::capitalised(checks::said(circuit.id)), fixed(over_a, 2));
}

Section loose_lamps(const ListInput& input, const Table& table) {
    const plan::Plan& plan = *input.analysis.plan;
    Section section{"Lamps on no circuit, counted nowhere", {}, {}};
    double power_w = 0.0;
    for (const plan::Lamp& lamp : plan.lamps) {
        if (plan::find(plan, lamp.circuit) != nullptr) {
            continue;
        }
        const catalogue::Instrument* instrument = input.catalogue.instrument(lamp.instrument);
        Row row{std::vector<Cell>(table.columns.size()), false};
        row.cells[1] = words(lamp.id.name);
        if (instrument != nullptr) {
            row.cells[2] = figure(instrument->watts, 0, "W");
            power_w += instrument->watts;
        }
        section.rows.push_back(std::move(row));
    }
    if (!section.rows.empty()) {
        section.rows.push_back(
            total_row(table, {{"lamps", words("in all")}, {"power_w", figure(power_w, 0, "W")}}));
    }
    return section;
}

} // namespace

Table power(const ListInput& input) {
    Table table{"power", "Power", columns(), {{"Circuits", {}, {}}}, {}};
    Section& circuits = table.sections.front();
    double power_w = 0.0;
    for (const plan::Circuit& circuit : input.analysis.plan->circuits) {
        const checks::CircuitSum sum =
            checks::sum_of(circuit, *input.analysis.plan, input.catalogue);
        power_w += sum.power_w;
        circuits.rows.push_back(row_of(circuit, sum));
        if (auto remark = over_remark(circuit, sum)) {
            circuits.remarks.push_back(std::move(*remark));
        }
    }
    circuits.rows.push_back(
        total_row(table, {{"circuit", words("in all")}, {"power_w", figure(power_w, 0, "W")}}));
    circuits.remarks.emplace_back(
        "Every lamp counts at full, whichever beats it burns in. Loads that stay on for three "
        "hours are planned to 80 % of the breaker: NFPA 70 210.20(A), from code summaries. Watts "
        "left hold for a power factor of 1.");
    if (Section loose = loose_lamps(input, table); !loose.rows.empty()) {
        table.sections.push_back(std::move(loose));
    }
    table.cautions = cautions_about({checks::Danger::mains});
    return table;
}

} // namespace throwline::lists
