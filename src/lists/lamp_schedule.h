#pragma once

#include "lists/lists.h"

/// What the lamp schedules share: their columns, and a lamp's row.
namespace throwline::lists {

enum class LampColumn {
    position,
    lamp,
    channel,
    circuit,
    instrument,
    role,
    aim,
    height,
    drop,
    power,
    current,
    level,
    focus,
    filters,
    cut,
    beats,
    mass,
    notes
};

Table lamp_table(std::string_view name, std::string_view title,
                 std::span<const LampColumn> columns);

/// As many cells as columns, in their order.
Row lamp_row(const ListInput& input, const plan::Lamp& lamp, std::span<const LampColumn> columns);

/// Watts, amperes and masses of the section's rows, under their columns.
Row lamp_total(const Table& table, const Section& section, UnitSystem units);

/// "C2", "pipe P1 at 3'-0\"", "wall 3 (top) at 4'-0\"", "stand, 2'-0\" from wall 3 (top), ...",
/// "in the set, ...".
std::string position_text(const plan::Plan& plan, const plan::Lamp& lamp);

} // namespace throwline::lists
