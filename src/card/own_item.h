#pragma once

#include "base/quantity.h"
#include "base/result.h"
#include "catalogue/own_rows.h"

#include <span>
#include <string>
#include <string_view>

/// What is asked of a crew that adds an item of its own to the catalogue, table by table, and how
/// its answers are shown and read.
namespace throwline::card {

/// How an answer is written. Lengths are read in any notation; a bare number is what the plan's
/// units say for `length`, millimetres for `millimetres`.
enum class OwnKind { text, length, millimetres, degrees, number, percent, choice, yes_no };

/// A value as the file has it, and in words.
struct OwnChoice {
    std::string_view value;
    std::string_view words;
};

struct OwnField {
    /// As in the file: "focal_min_mm".
    std::string_view key;
    std::string_view words;
    OwnKind kind = OwnKind::number;
    /// What it means where the words leave that open.
    std::string_view tip{};
    /// Left empty, it is what stands for this key of the row.
    std::string_view empty_as{};
    /// Left empty, the row does not say, and the tables' usual value holds.
    bool may_be_empty = false;
    /// Left empty, it is 0, which stands for what nobody knows.
    bool empty_is_zero = false;
    std::span<const OwnChoice> choices{};
    /// Of a yes_no: what holds where the row does not say.
    bool usually = false;
};

struct OwnTable {
    /// As in the file: "lenses".
    std::string_view table;
    std::string_view words;
    std::span<const OwnField> fields;
};

/// Every table that takes items of one's own from the window.
std::span<const OwnTable> own_tables();
/// Throws std::logic_error for a name that is none of own_tables().
const OwnTable& own_table(std::string_view table);

/// What stands in a field at first; the choice's value, "yes" or "no". Empty where the row does not
/// say, or says what empty means.
std::string shown_value(const OwnField& field, const catalogue::OwnRow& row, UnitSystem units);

/// Puts what was typed into the row; call it in the order of the fields. Errors: it cannot be read,
/// or is empty where something is needed; ranges are the tables' matter.
Result<void> put_value(catalogue::OwnRow& row, const OwnField& field, const std::string& typed,
                       UnitSystem units);

} // namespace throwline::card
