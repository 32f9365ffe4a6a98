#pragma once

#include "survey/recce.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// A recce as rows of a table: one a line, its words told apart and kept as they were typed, so
/// that table and page are two views of one text.
namespace throwline::survey {

/// What a line tells.
enum class RowKind {
    corners,
    reading,
    along,
    height,
    square,
    floor_point,
    outlet,
    note,
    bearing,
    solid,
    round,
    point,
    units,
    tape,
    squareness,
    /// For whoever reads the page; says nothing about the room.
    remark,
    /// A line that begins like none of the others.
    unclear
};
/// All of them, those that a crew uses most first.
inline constexpr std::array<RowKind, 17> kRowKinds{
    RowKind::corners,     RowKind::reading, RowKind::along, RowKind::height,  RowKind::square,
    RowKind::floor_point, RowKind::outlet,  RowKind::note,  RowKind::bearing, RowKind::solid,
    RowKind::round,       RowKind::point,   RowKind::units, RowKind::tape,    RowKind::squareness,
    RowKind::remark,      RowKind::unclear};
/// "reading", "along a wall", ...
std::string_view name_of(RowKind kind);

/// The columns of a row; which of them a kind uses, and for what, is told by field_hint().
enum class RowField { from, to, reading, note };
inline constexpr std::array<RowField, 4> kRowFields{RowField::from, RowField::to, RowField::reading,
                                                    RowField::note};
/// What goes into a field: "corner", "length, such as 3.2 m or 10ft 6in"; empty for a field that a
/// kind has no use for.
std::string_view field_hint(RowKind kind, RowField field);

struct RecceRow {
    RowKind kind = RowKind::reading;
    /// Names without their quotes; all else as typed.
    std::string from;
    std::string to;
    std::string reading;
    std::string note;
    /// Behind #, at the end of a line of another kind.
    std::string remark;
    /// Where it stands in the text, from 1, and how many lines it takes; 0 when it is not in it.
    int line = 0;
    int lines = 1;
    /// Columns of the line, from 1, at which the fields begin, in the order of kRowFields; 0 for
    /// those that are not there.
    std::array<int, 4> columns{};

    const std::string& field(RowField which) const;
    std::string& field(RowField which);
    bool operator==(const RecceRow&) const = default;
};

/// Whether a row says enough to be a line; until then it stays out of the text.
bool is_whole(const RecceRow& row);

/// Rows of a text, in order; empty lines have none. Never fails: what is not understood is unclear.
std::vector<RecceRow> recce_rows(std::string_view text);
/// The line that a row stands for, without its end.
std::string row_text(const RecceRow& row);

/// The text with a row in the place that its `line` and `lines` say, or behind all others when it
/// has none yet.
std::string with_row(std::string_view text, const RecceRow& row);
std::string without_row(std::string_view text, const RecceRow& row);

/// The field of a row in which a place of the text lies.
RowField field_at(const RecceRow& row, const Place& place);

/// What the adjustment says of a row.
struct RowVerdict {
    Verdict verdict = Verdict::fine;
    /// "reads 3.20 m, others say 3.42 m; measure again"; empty where there is nothing to say.
    std::string words;
    /// Of its mark among the doubtful ones of a recce, wrong ones first, from 1; 0 without a mark.
    int number = 0;
    bool operator==(const RowVerdict&) const = default;
};
/// One a row of the text that the result was adjusted from, numbered.
std::vector<RowVerdict> row_verdicts(const std::vector<RecceRow>& rows, const RecceResult& result,
                                     UnitSystem units);

} // namespace throwline::survey
