#pragma once

#include "catalogue/catalogue.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

/// Rows of the catalogue as a file holds them: a key and a value each, in the unit that the key
/// ends with. lensdata/README.md documents the keys.
namespace throwline::catalogue {

using OwnValue = std::variant<std::string, double, bool>;

struct OwnRow {
    /// The table that it stands in: "lenses".
    std::string table;
    /// In the order in which they are written; each key once.
    std::vector<std::pair<std::string, OwnValue>> values{};

    /// Null when the row does not say.
    const OwnValue* find(std::string_view key) const;
    void set(std::string_view key, OwnValue value);
    void clear(std::string_view key);
    /// Empty when it has none.
    std::string name() const;

    bool operator==(const OwnRow&) const = default;
};

/// A row of the catalogue without its source, numbers rounded to four decimals of their key's unit;
/// what may be left out and says nothing is left out. Of stock, lenses, sensors, instruments,
/// supports and filters; nothing of other tables, and where there is no such name.
std::optional<OwnRow> own_row(const Catalogue& catalogue, std::string_view table,
                              std::string_view name);

} // namespace throwline::catalogue
