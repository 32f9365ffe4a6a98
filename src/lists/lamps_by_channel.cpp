#include "lists/cells.h"
#include "lists/each_list.h"
#include "lists/lamp_schedule.h"

#include <algorithm>
#include <array>

namespace throwline::lists {

namespace {

constexpr std::array kColumns{LampColumn::channel,    LampColumn::lamp,     LampColumn::role,
                              LampColumn::aim,        LampColumn::level,    LampColumn::beats,
                              LampColumn::instrument, LampColumn::filters,  LampColumn::circuit,
                              LampColumn::power,      LampColumn::position, LampColumn::notes};

} // namespace

Table lamps_by_channel(const ListInput& input) {
    Table table = lamp_table("lamps-by-channel", "Lamp schedule by channel", kColumns);
    std::vector<const plan::Lamp*> with_channel;
    Section without{"On no channel", {}, {}};
    for (const plan::Lamp& lamp : input.analysis.plan->lamps) {
        if (lamp.channel > 0) {
            with_channel.push_back(&lamp);
        } else {
            without.rows.push_back(lamp_row(input, lamp, kColumns));
        }
    }
    std::stable_sort(
        with_channel.begin(), with_channel.end(),
        [](const plan::Lamp* a, const plan::Lamp* b) { return a->channel < b->channel; });
    Section& section = table.sections.emplace_back();
    for (const plan::Lamp* lamp : with_channel) {
        section.rows.push_back(lamp_row(input, *lamp, kColumns));
    }
    if (!without.rows.empty()) {
        section.heading = "On a channel";
        table.sections.push_back(std::move(without));
    }
    table.cautions = cautions_about({checks::Danger::hot_lamps, checks::Danger::mains});
    return table;
}

} // namespace throwline::lists
