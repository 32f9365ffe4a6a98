#include "sheet/table_layout.h"

#include "sheet/table_measures.h"
#include "sheet/text_wrap.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace throwline::sheet {

namespace {

/// Between the words of two columns.
constexpr double kGutter_mm = 3.0;
/// A column of sentences gives up what it has beyond this before others do.
constexpr double kModest_mm = 34.0;

double widest_word_mm(const std::string& text, bool bold, const TextMeasure& measure) {
    double widest = 0.0;
    std::size_t from = 0;
    while (from < text.size()) {
        const std::size_t to = std::min(text.find(' ', from), text.size());
        widest = std::max(widest, measure.width_mm(text.substr(from, to - from), kLetter_mm, bold));
        from = to + 1;
    }
    return widest;
}

/// What a column would like, what it can do with before others have less than they would like, and
/// the least without a word broken.
struct ColumnNeed {
    double natural_mm = 0.0;
    double modest_mm = 0.0;
    double least_mm = 0.0;
};

/// How far the figures of a column may be broken: "16'-4 1/2\"" at its space.
enum class Figures { whole, broken };

ColumnNeed need_of(const lists::Table& table, std::size_t index, Figures figures,
                   const TextMeasure& measure) {
    ColumnNeed need;
    for (const lists::Section& section : table.sections) {
        for (const lists::Row& row : section.rows) {
            if (index < row.cells.size()) {
                const std::string& text = row.cells[index].text;
                need.natural_mm =
                    std::max(need.natural_mm, measure.width_mm(text, kLetter_mm, row.total));
                need.least_mm = std::max(need.least_mm, widest_word_mm(text, row.total, measure));
            }
        }
    }
    if (figures == Figures::whole && table.columns[index].align == lists::Align::right) {
        need.least_mm = need.natural_mm;
    }
    // Titles may break between words.
    const double title_mm = widest_word_mm(table.columns[index].title, true, measure);
    need.natural_mm = std::max(need.natural_mm, title_mm);
    need.least_mm = std::max(need.least_mm, title_mm);
    need.modest_mm = std::max(need.least_mm, std::min(need.natural_mm, kModest_mm));
    return need;
}

std::vector<ColumnNeed> needs_of(const lists::Table& table, Figures figures,
                                 const TextMeasure& measure) {
    std::vector<ColumnNeed> needs;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        needs.push_back(need_of(table, i, figures, measure));
    }
    return needs;
}

double gutters_mm(std::size_t columns) {
    return kGutter_mm * static_cast<double>(columns > 0 ? columns - 1 : 0);
}

double sum_of(const std::vector<ColumnNeed>& needs, double ColumnNeed::* width) {
    return std::accumulate(needs.begin(), needs.end(), 0.0,
                           [&](double sum, const ColumnNeed& need) { return sum + need.*width; });
}

/// Each column between a lower and an upper width, by the share that fills the room.
std::vector<double> between(const std::vector<ColumnNeed>& needs, double ColumnNeed::* lower,
                            double ColumnNeed::* upper, double room_mm) {
    const double low_mm = sum_of(needs, lower);
    const double span_mm = sum_of(needs, upper) - low_mm;
    const double share = span_mm > 0.0 ? std::clamp((room_mm - low_mm) / span_mm, 0.0, 1.0) : 0.0;
    std::vector<double> widths;
    for (const ColumnNeed& need : needs) {
        widths.push_back(need.*lower + share * (need.*upper - need.*lower));
    }
    return widths;
}

/// Widths that fill at most `room_mm`: as wide as they would like; else between that and a modest
/// width; else between that and the least; else, with words broken, a share of the least.
std::vector<double> widths_of(const std::vector<ColumnNeed>& needs, double room_mm) {
    const double least_mm = sum_of(needs, &ColumnNeed::least_mm);
    if (sum_of(needs, &ColumnNeed::modest_mm) <= room_mm) {
        return between(needs, &ColumnNeed::modest_mm, &ColumnNeed::natural_mm, room_mm);
    }
    std::vector<double> widths =
        between(needs, &ColumnNeed::least_mm, &ColumnNeed::modest_mm, room_mm);
    if (least_mm > room_mm) {
        for (double& width_mm : widths) {
            width_mm *= room_mm / least_mm;
        }
    }
    return widths;
}

std::vector<TableColumn> columns_of(const lists::Table& table, double width_mm,
                                    const TextMeasure& measure, std::span<const double> shares) {
    // Twice the room that rounding takes, so that words that fit exactly are not broken.
    constexpr double kSlack_mm = 0.02;
    const double room_mm = width_mm - gutters_mm(table.columns.size()) - kSlack_mm;
    std::vector<double> widths;
    for (const double share : shares) {
        widths.push_back(share * room_mm);
    }
    if (widths.empty()) {
        std::vector<ColumnNeed> needs = needs_of(table, Figures::whole, measure);
        if (sum_of(needs, &ColumnNeed::least_mm) > room_mm) {
            needs = needs_of(table, Figures::broken, measure);
        }
        widths = widths_of(needs, room_mm);
    }
    std::vector<TableColumn> columns;
    double left_mm = 0.0;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        TableColumn column;
        column.left_mm = left_mm;
        column.width_mm = widths[i] + kSlack_mm / static_cast<double>(widths.size());
        column.align = table.columns[i].align;
        column.title =
            wrapped_lines(table.columns[i].title, column.width_mm, kLetter_mm, true, measure);
        left_mm += widths[i] + kGutter_mm;
        columns.push_back(std::move(column));
    }
    return columns;
}

TableRow across(TableRowKind kind, const std::string& words, double width_mm,
                const TextMeasure& measure) {
    TableRow row;
    row.kind = kind;
    const bool bold = kind == TableRowKind::heading;
    row.cells = {wrapped_lines(words, width_mm, kLetter_mm, bold, measure)};
    row.height_mm = kLinePitch_mm * static_cast<double>(row.cells.front().size())
                    + (bold ? kHeadingAir_mm : kRowAir_mm);
    return row;
}

TableRow row_of(const TableLayout& layout, const lists::Row& from, const TextMeasure& measure) {
    TableRow row;
    row.kind = from.total ? TableRowKind::total : TableRowKind::row;
    std::size_t lines = 1;
    for (std::size_t i = 0; i < layout.columns.size(); ++i) {
        const std::string text = i < from.cells.size() ? from.cells[i].text : std::string{};
        row.cells.push_back(
            wrapped_lines(text, layout.columns[i].width_mm, kLetter_mm, from.total, measure));
        lines = std::max(lines, row.cells.back().size());
    }
    row.height_mm = row_height_mm(lines);
    return row;
}

/// A row too high for any page in parts of some lines each.
std::vector<TableRow> parted(TableRow row, double most_mm) {
    const double air_mm = row.kind == TableRowKind::heading ? kHeadingAir_mm : kRowAir_mm;
    const auto most =
        static_cast<std::size_t>(std::max(1.0, std::floor((most_mm - air_mm) / kLinePitch_mm)));
    if (row.height_mm <= most_mm) {
        return {std::move(row)};
    }
    std::vector<TableRow> parts;
    std::size_t left = 1;
    for (std::size_t from = 0; from < left; from += most) {
        TableRow part = row;
        std::size_t lines = 1;
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            const auto& whole = row.cells[i];
            left = std::max(left, whole.size());
            const std::size_t first = std::min(from, whole.size());
            const std::size_t last = std::min(from + most, whole.size());
            part.cells[i].assign(whole.begin() + static_cast<std::ptrdiff_t>(first),
                                 whole.begin() + static_cast<std::ptrdiff_t>(last));
            lines = std::max(lines, last - first);
        }
        part.height_mm = kLinePitch_mm * static_cast<double>(lines) + air_mm;
        parts.push_back(std::move(part));
    }
    return parts;
}

void add_section(TableLayout& layout, const lists::Section& section, double most_mm,
                 const TextMeasure& measure) {
    const int index = static_cast<int>(layout.headings.size());
    layout.headings.push_back(section.heading);
    const std::size_t first = layout.rows.size();
    const auto add = [&](TableRow row) {
        for (TableRow& part : parted(std::move(row), most_mm)) {
            part.section = index;
            layout.rows.push_back(std::move(part));
        }
    };
    if (!section.heading.empty()) {
        add(across(TableRowKind::heading, section.heading, layout.width_mm, measure));
    }
    for (const lists::Row& row : section.rows) {
        add(row_of(layout, row, measure));
    }
    for (const std::string& remark : section.remarks) {
        add(across(TableRowKind::remark, remark, layout.width_mm, measure));
    }
    for (std::size_t i = first; i + 1 < layout.rows.size(); ++i) {
        const TableRowKind next = layout.rows[i + 1].kind;
        layout.rows[i].keep_with_next = layout.rows[i].kind == TableRowKind::heading
                                        || next == TableRowKind::total
                                        || next == TableRowKind::remark;
    }
}

} // namespace

double natural_width_mm(const lists::Table& table, const TextMeasure& measure) {
    const std::vector<ColumnNeed> needs = needs_of(table, Figures::whole, measure);
    return gutters_mm(needs.size()) + sum_of(needs, &ColumnNeed::natural_mm);
}

lists::Table without_empty_columns(lists::Table table) {
    for (std::size_t i = table.columns.size(); i-- > 0;) {
        const bool is_used = std::any_of(
            table.sections.begin(), table.sections.end(), [i](const lists::Section& section) {
                return std::any_of(section.rows.begin(), section.rows.end(),
                                   [i](const lists::Row& row) {
                                       return i < row.cells.size() && !row.cells[i].text.empty();
                                   });
            });
        if (is_used) {
            continue;
        }
        const auto at = static_cast<std::ptrdiff_t>(i);
        table.columns.erase(table.columns.begin() + at);
        for (lists::Section& section : table.sections) {
            for (lists::Row& row : section.rows) {
                if (i < row.cells.size()) {
                    row.cells.erase(row.cells.begin() + at);
                }
            }
        }
    }
    return table;
}

TableLayout laid_out(const lists::Table& table, double width_mm, double most_mm,
                     const TextMeasure& measure, std::span<const double> shares) {
    TableLayout layout;
    layout.width_mm = width_mm;
    layout.columns = columns_of(table, width_mm, measure, shares);
    std::size_t lines = 0;
    for (const TableColumn& column : layout.columns) {
        const bool titled = !(column.title.size() == 1 && column.title.front().empty());
        lines = std::max(lines, titled ? column.title.size() : 0);
    }
    layout.header_mm = lines > 0 ? row_height_mm(lines) : 0.0;
    for (const lists::Section& section : table.sections) {
        add_section(layout, section, most_mm - layout.header_mm - kHeadingHeight_mm, measure);
    }
    return layout;
}

} // namespace throwline::sheet
