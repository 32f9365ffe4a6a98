#pragma once

#include "lists/table.h"
#include "sheet/marks.h"
#include "sheet/plan_frame.h"

#include <span>
#include <string>
#include <vector>

/// Tables as rows of words that are broken over pages.
namespace throwline::sheet {

/// What a row of a laid out table is.
enum class TableRowKind { heading, row, total, remark };

/// A row with its cells in lines; headings and remarks have one cell over the whole width.
struct TableRow {
    TableRowKind kind = TableRowKind::row;
    std::vector<std::vector<std::string>> cells;
    double height_mm = 0.0;
    /// Not the last one of a page when another follows: a heading, what a sum or remark is about.
    bool keep_with_next = false;
    /// Index of the section.
    int section = 0;
};

struct TableColumn {
    double left_mm = 0.0;
    double width_mm = 0.0;
    lists::Align align = lists::Align::left;
    /// The title in lines.
    std::vector<std::string> title;
};

struct TableLayout {
    double width_mm = 0.0;
    std::vector<TableColumn> columns;
    /// Height of the columns' titles with the line under them; 0 when no column has one.
    double header_mm = 0.0;
    std::vector<std::string> headings;
    std::vector<TableRow> rows;
};

/// Columns as wide as their words where all fit, else narrower with their words broken. A row
/// higher than `most_mm` is parted, so that every row fits some page. With `shares` of the width
/// the columns take these instead.
TableLayout laid_out(const lists::Table& table, double width_mm, double most_mm,
                     const TextMeasure& measure, std::span<const double> shares = {});

/// The table without the columns in which nothing stands: paper has no room for them.
lists::Table without_empty_columns(lists::Table table);

/// The width that a table takes with no word broken from its line.
double natural_width_mm(const lists::Table& table, const TextMeasure& measure);

/// The rows on one page, and whether its first one goes on with a section begun before.
struct TablePage {
    std::size_t from = 0;
    std::size_t to = 0;
    bool goes_on = false;
};
/// Breaks a table over pages of two heights, titles of columns and repeated headings counted. One
/// page for an empty table.
std::vector<TablePage> paged(const TableLayout& layout, double first_mm, double next_mm);

/// Sets the rows of a page from the top of a box; returns the height that they take.
double draw_table(Marks& marks, const Vec2& top_left, const TableLayout& layout,
                  const TablePage& page);

} // namespace throwline::sheet
