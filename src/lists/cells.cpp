#include "lists/cells.h"

#include "base/length_text.h"
#include "checks/hanging.h"

#include <algorithm>
#include <stdexcept>

namespace throwline::lists {

Cell words(std::string text) {
    return {std::move(text), std::nullopt};
}

Cell nothing() {
    return {};
}

Cell length(Length length, UnitSystem units) {
    return {shown(length, units), length.m()};
}

Cell length(const std::optional<Length>& length, UnitSystem units) {
    return length ? lists::length(*length, units) : nothing();
}

Cell mass(double mass_kg, UnitSystem units) {
    return {checks::mass_text(mass_kg, units), mass_kg};
}

Cell figure(double value, int decimals, std::string_view unit) {
    std::string text = fixed(value, decimals);
    if (!unit.empty()) {
        text += ' ';
        text += unit;
    }
    return {std::move(text), value};
}

Cell count(std::size_t count) {
    return {std::to_string(count), static_cast<double>(count)};
}

Cell percent(double share) {
    return figure(share * 100.0, 0, "%");
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const std::string& part : parts) {
        if (!text.empty() && !part.empty()) {
            text += ", ";
        }
        text += part;
    }
    return text;
}

Row total_row(const Table& table,
              std::initializer_list<std::pair<std::string_view, Cell>> cells_by_key) {
    Row row{std::vector<Cell>(table.columns.size()), true};
    for (const auto& [key, cell] : cells_by_key) {
        const auto column =
            std::find_if(table.columns.begin(), table.columns.end(),
                         [&, &wanted = key](const Column& each) { return each.key == wanted; });
        if (column == table.columns.end()) {
            throw std::logic_error{"a total is under no column of its list"};
        }
        row.cells[static_cast<std::size_t>(column - table.columns.begin())] = cell;
    }
    return row;
}

std::vector<std::string> cautions_about(std::initializer_list<checks::Danger> dangers) {
    std::vector<std::string> cautions{std::string{checks::caution_about(checks::Danger::any)}};
    for (const checks::Danger danger : dangers) {
        cautions.emplace_back(checks::caution_about(danger));
    }
    return cautions;
}

} // namespace throwline::lists
