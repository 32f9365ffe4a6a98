#pragma once

#include "checks/check.h"
#include "lists/table.h"

#include <span>

/// The lists that go with the drawings; each is a pure function of an analysis.
namespace throwline::lists {

struct ListInput {
    const checks::Analysis& analysis;
    const catalogue::Catalogue& catalogue;
};

/// A list is a value: adding one is a file and a line in the table.
struct ListKind {
    std::string_view name;
    std::string_view title;
    std::string_view summary;
    Table (*make)(const ListInput& input);
};

/// Every list, in the order in which a crew reads them: shots, running-order, camera-cards,
/// lamps-by-position, lamps-by-channel, lamps-by-circuit, power, cables, filters, kit, flats,
/// site-notes.
std::span<const ListKind> all_lists();

} // namespace throwline::lists
