#pragma once

#include "base/result.h"
#include "edit/make.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The Stores: everything that can be put on the floor or counted, on shelves as a crew would look
/// for it.
namespace throwline::edit {

enum class StoresShelf {
    flats,
    furniture,
    dressing,
    people,
    cameras,
    lamps,
    stands,
    filters,
    sound,
    power
};
/// "Flats and platforms"
std::string_view name_of(StoresShelf shelf);

struct StoresRow {
    StoresShelf shelf = StoresShelf::flats;
    /// What it is called on the shelf: "dining chair".
    std::string name;
    /// Its name in a kit list; empty for what no kit list counts.
    std::string item;
    /// The catalogue's table that it stands in: "lenses"; empty for what is in none.
    std::string_view table{};
    /// What putting it down puts; nothing for what is only counted.
    std::optional<StoreItem> put;
    /// In the plan's units: "0.45 × 0.50 m, 0.90 m high".
    std::string size;
    int used = 0;
    /// What the crew's kit says; nothing when it does not.
    std::optional<int> owned{};

    /// May be below zero.
    std::optional<int> left() const { return owned ? std::optional{*owned - used} : std::nullopt; }
};

/// "owned 3, 1 left"; "2 on the plan" where the kit does not say; empty where there is nothing to
/// say.
std::string count_words(const StoresRow& row);

/// Shelf by shelf, in the order of the catalogue.
std::vector<StoresRow> stores_rows(const plan::Plan& plan, const catalogue::Catalogue& catalogue);

/// Places of the rows that a search finds: all of its words in the name or the shelf's name, in
/// any order; when none has them, those whose names are nearest to what was typed.
std::vector<std::size_t> found_in_stores(const std::vector<StoresRow>& rows,
                                         std::string_view search);

/// How many of an item the crew has; nothing: the kit does not say. Errors: a count below 0.
Result<Step> kit_set(const Context& context, const std::string& item, std::optional<int> count);

} // namespace throwline::edit
