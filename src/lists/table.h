#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Lists as rows of cells: what screen, CSV, JSON and sheet all show.
namespace throwline::lists {

enum class Align { left, right };

struct Column {
    /// For CSV headers and JSON, with the unit where there is one: "throw_m".
    std::string key;
    /// For people, without the unit's letters where the cell carries them.
    std::string title;
    Align align = Align::left;
};

struct Cell {
    /// As a person reads it, in the plan's units: "17'-1\"".
    std::string text;
    /// As a program reads it, in the unit of the column's key.
    std::optional<double> number;

    bool operator==(const Cell&) const = default;
};

/// What a row is about, for the mark beside it where a list mixes people, shots and lamps.
enum class Topic { none, people, camera, lamp };

struct Row {
    /// As many as the table has columns.
    std::vector<Cell> cells;
    /// A sum or a subtotal, set apart.
    bool total = false;
    Topic topic = Topic::none;
};

/// Rows under a heading: a beat, a position, a circuit.
struct Section {
    /// Empty for a list that has only one.
    std::string heading;
    std::vector<Row> rows;
    /// Sentences under the section: what is over, what was left out.
    std::vector<std::string> remarks;
};

struct Table {
    /// "lamps-by-circuit"
    std::string name;
    /// "Lamp schedule by circuit"
    std::string title;
    std::vector<Column> columns;
    std::vector<Section> sections;
    /// Usual cautions, as sentences.
    std::vector<std::string> cautions;
};

/// Whether nothing stands in a column of any row.
bool is_empty_column(const Table& table, std::size_t column);

/// RFC 4180: CRLF, quotes doubled, one header row of keys, first the section when there are
/// several. A cell is its number (plain decimal point, to a millionth) where it has one, else its
/// text; a text that a spreadsheet would take for a formula gets an apostrophe before it. Totals
/// are left out: a spreadsheet adds for itself.
std::string as_csv(const Table& table);

/// {"name", "title", "columns": [{"key", "title"}], "sections": [{"heading", "rows": [{key: number
/// or text}], "totals": [likewise], "remarks": [text]}], "cautions": [text]}, indented, with a line
/// end. Numbers as in CSV; null for a cell in which nothing stands.
std::string as_json(const Table& table);
/// {"lists": [as above]}
std::string as_json(std::span<const Table> tables);

/// For a terminal: columns aligned, headings over their rows, without columns in which nothing
/// stands.
std::string as_text(const Table& table);

} // namespace throwline::lists
