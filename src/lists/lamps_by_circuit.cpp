#include "checks/circuit_sum.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/each_list.h"
#include "lists/lamp_schedule.h"

#include <algorithm>
#include <array>

namespace throwline::lists {

namespace {

constexpr std::array kColumns{LampColumn::circuit,  LampColumn::lamp,   LampColumn::channel,
                              LampColumn::position, LampColumn::height, LampColumn::instrument,
                              LampColumn::role,     LampColumn::power,  LampColumn::current,
                              LampColumn::level,    LampColumn::beats,  LampColumn::notes};

template <class Wanted>
void add_section(Table& table, const ListInput& input, std::string heading, const Wanted& wanted) {
    Section section{std::move(heading), {}, {}};
    for (const plan::Lamp& lamp : input.analysis.plan->lamps) {
        if (wanted(lamp)) {
            section.rows.push_back(lamp_row(input, lamp, kColumns));
        }
    }
    if (!section.rows.empty()) {
        section.rows.push_back(lamp_total(table, section, input.analysis.plan->units));
        table.sections.push_back(std::move(section));
    }
}

} // namespace

Table lamps_by_circuit(const ListInput& input) {
    Table table = lamp_table("lamps-by-circuit", "Lamp schedule by circuit", kColumns);
    const plan::Plan& plan = *input.analysis.plan;
    for (const plan::Circuit& circuit : plan.circuits) {
        add_section(table, input, checks::capitalised(checks::said(circuit.id)),
                    [&](const plan::Lamp& lamp) { return lamp.circuit == circuit.id; });
    }
    add_section(table, input, "On no circuit",
                [&](const plan::Lamp& lamp) { return plan::find(plan, lamp.circuit) == nullptr; });
    table.cautions = cautions_about({checks::Danger::hot_lamps, checks::Danger::mains});
    return table;
}

} // namespace throwline::lists
