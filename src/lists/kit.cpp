#include "checks/things_used.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/each_list.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace throwline::lists {

namespace {

std::vector<Column> columns() {
    return {{"item", "Item"},
            {"used", "Used", Align::right},
            {"owned", "Owned", Align::right},
            {"short", "Short", Align::right},
            {"users", "For"}};
}

constexpr std::array<std::string_view, 7> kKinds{"Cameras", "Lenses",  "Supports",   "Lamps",
                                                 "Filters", "Scenery", "Other items"};

/// Index into kKinds, by the table of the catalogue that knows the item.
std::size_t kind_of(const catalogue::Catalogue& catalogue, const std::string& item) {
    const std::array<bool, 6> known{
        catalogue.sensor(item) != nullptr,  catalogue.lens(item) != nullptr,
        catalogue.support(item) != nullptr, catalogue.instrument(item) != nullptr,
        catalogue.filter(item) != nullptr,  catalogue.stock_item(item) != nullptr};
    return static_cast<std::size_t>(std::find(known.begin(), known.end(), true) - known.begin());
}

/// How many of an item the crew has; nothing when its list does not say.
std::optional<std::size_t> owned_of(const plan::Plan& plan, const std::string& item) {
    for (const plan::KitItem& owned : plan.kit) {
        if (owned.item == item) {
            return static_cast<std::size_t>(std::max(owned.count, 0));
        }
    }
    return std::nullopt;
}

Row row_of(const plan::Plan& plan, const std::string& item, const std::vector<std::string>& users) {
    const std::optional<std::size_t> owned = owned_of(plan, item);
    const bool is_short = owned && users.size() > *owned;
    return {{words(item), count(users.size()), owned ? count(*owned) : nothing(),
             is_short ? count(users.size() - *owned) : nothing(), words(joined(users))},
            false};
}

/// Everything used and everything owned, by name.
checks::ThingsUsed used_and_owned(const plan::Plan& plan) {
    checks::ThingsUsed all = checks::things_used(plan);
    all.erase("");
    for (const plan::KitItem& owned : plan.kit) {
        all.try_emplace(owned.item);
    }
    return all;
}

} // namespace

Table kit(const ListInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    const checks::ThingsUsed all = used_and_owned(plan);
    Table table{"kit", "Kit", columns(), {}, {}};
    for (std::size_t kind = 0; kind < kKinds.size(); ++kind) {
        Section section{std::string{kKinds[kind]}, {}, {}};
        for (const auto& [item, users] : all) {
            if (kind_of(input.catalogue, item) == kind) {
                section.rows.push_back(row_of(plan, item, users));
            }
        }
        if (!section.rows.empty()) {
            table.sections.push_back(std::move(section));
        }
    }
    if (plan.kit.empty()) {
        table.sections.push_back({"", {}, {"The plan does not say what the crew has."}});
    }
    return table;
}

} // namespace throwline::lists
