#pragma once

#include "base/quantity.h"
#include "checks/cautions.h"
#include "lists/table.h"
#include "plan/plan.h"

#include <initializer_list>

/// How the lists fill their cells, so that all of them show a thing alike.
namespace throwline::lists {

Cell words(std::string text);
/// Nothing stands in it.
Cell nothing();
/// Number in metres, text in the plan's units.
Cell length(Length length, UnitSystem units);
Cell length(const std::optional<Length>& length, UnitSystem units);
/// Number in kilograms.
Cell mass(double mass_kg, UnitSystem units);
/// The number with its unit behind it, where one is given: "650 W".
Cell figure(double value, int decimals, std::string_view unit = {});
Cell count(std::size_t count);
/// Number in percent: "50 %".
Cell percent(double share);

/// "a, b, c"; without the "and" of a sentence.
std::string joined(const std::vector<std::string>& parts);

template <class Thing>
std::vector<std::string> names_of(const std::vector<plan::Id<Thing>>& ids) {
    std::vector<std::string> names;
    names.reserve(ids.size());
    for (const plan::Id<Thing>& id : ids) {
        names.push_back(id.name);
    }
    return names;
}

/// A row whose cells are empty but for some, set apart as a sum.
Row total_row(const Table& table,
              std::initializer_list<std::pair<std::string_view, Cell>> cells_by_key);

/// The cautions about some dangers, behind the one that goes with everything.
std::vector<std::string> cautions_about(std::initializer_list<checks::Danger> dangers);

} // namespace throwline::lists
