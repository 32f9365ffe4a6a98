#include "sheet/table_layout.h"

#include "sheet/table_measures.h"

#include <fmt/format.h>

namespace throwline::sheet {

namespace {

/// Sets words and rules down the page.
class TableSetter {
  public:
    TableSetter(Marks& marks, const Vec2& top_left, const TableLayout& layout)
        : marks_{marks}, layout_{layout}, left_mm_{top_left.x()}, top_mm_{top_left.y()} {}

    void header() {
        if (layout_.header_mm == 0.0) {
            return;
        }
        for (const TableColumn& column : layout_.columns) {
            cell(column.title, column, layout_.header_mm, true, true);
        }
        top_mm_ += layout_.header_mm;
        rule(kStanding_mm, 1.0);
    }
    void heading_again(const std::string& heading) {
        words({fmt::format("{}, continued", heading)}, left_mm_, kHeadingAir_mm, true);
        top_mm_ += kHeadingHeight_mm;
    }
    void row(const TableRow& row) {
        switch (row.kind) {
        case TableRowKind::heading:
            words(row.cells.front(), left_mm_, kHeadingAir_mm, true);
            break;
        case TableRowKind::remark:
            words(row.cells.front(), left_mm_, kRowAir_mm, false);
            break;
        case TableRowKind::total:
            rule(kFine_mm, 1.0);
            cells(row, true);
            break;
        case TableRowKind::row:
            cells(row, false);
            break;
        }
        top_mm_ += row.height_mm;
        if (row.kind == TableRowKind::row || row.kind == TableRowKind::total) {
            rule(kHair_mm, 0.5);
        }
    }
    double top_mm() const { return top_mm_; }

  private:
    void rule(double width_mm, double strength) {
        marks_.emplace_back(line({left_mm_, top_mm_}, {left_mm_ + layout_.width_mm, top_mm_},
                                 pen(Ink::dimension, width_mm, LinePattern::solid, strength)));
    }
    void words(const std::vector<std::string>& lines, double left_mm, double air_mm, bool bold) {
        double baseline_mm = top_mm_ + air_mm / 2.0 + kLetter_mm + kDescent;
        for (const std::string& line : lines) {
            marks_.emplace_back(Text{line,
                                     {left_mm, baseline_mm},
                                     kLetter_mm,
                                     TextAnchor::start,
                                     0.0,
                                     bold,
                                     Ink::lettering});
            baseline_mm += kLinePitch_mm;
        }
    }
    void cell(const std::vector<std::string>& lines, const TableColumn& column, double height_mm,
              bool bold, bool at_foot) {
        const bool right = column.align == lists::Align::right;
        const double left_mm = left_mm_ + column.left_mm + (right ? column.width_mm : 0.0);
        const double down_mm = at_foot ? height_mm - row_height_mm(lines.size()) : 0.0;
        double baseline_mm = top_mm_ + down_mm + kRowAir_mm / 2.0 + kLetter_mm + kDescent;
        for (const std::string& line : lines) {
            if (!line.empty()) {
                marks_.emplace_back(Text{line,
                                         {left_mm, baseline_mm},
                                         kLetter_mm,
                                         right ? TextAnchor::end : TextAnchor::start,
                                         0.0,
                                         bold,
                                         Ink::lettering});
            }
            baseline_mm += kLinePitch_mm;
        }
    }
    void cells(const TableRow& row, bool bold) {
        for (std::size_t i = 0; i < layout_.columns.size(); ++i) {
            cell(row.cells[i], layout_.columns[i], row.height_mm, bold, false);
        }
    }

    Marks& marks_;
    const TableLayout& layout_;
    double left_mm_;
    double top_mm_;
};

/// Whether anything on a page stands in columns.
bool has_columns(const TableLayout& layout, const TablePage& page) {
    for (std::size_t i = page.from; i < page.to; ++i) {
        if (layout.rows[i].kind == TableRowKind::row
            || layout.rows[i].kind == TableRowKind::total) {
            return true;
        }
    }
    return false;
}

} // namespace

double draw_table(Marks& marks, const Vec2& top_left, const TableLayout& layout,
                  const TablePage& page) {
    TableSetter setter{marks, top_left, layout};
    if (has_columns(layout, page)) {
        setter.header();
    }
    if (page.goes_on) {
        const std::string& heading =
            layout.headings[static_cast<std::size_t>(layout.rows[page.from].section)];
        if (!heading.empty()) {
            setter.heading_again(heading);
        }
    }
    for (std::size_t i = page.from; i < page.to; ++i) {
        setter.row(layout.rows[i]);
    }
    return setter.top_mm() - top_left.y();
}

} // namespace throwline::sheet
