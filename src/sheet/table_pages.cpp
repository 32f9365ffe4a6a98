#include "sheet/table_layout.h"

#include "sheet/table_measures.h"

#include <algorithm>

namespace throwline::sheet {

namespace {

/// The end of the rows from `from` on that must stay together.
std::size_t end_of_chain(const TableLayout& layout, std::size_t from) {
    std::size_t to = from + 1;
    while (to < layout.rows.size() && layout.rows[to - 1].keep_with_next) {
        ++to;
    }
    return to;
}

double height_between(const TableLayout& layout, std::size_t from, std::size_t to) {
    double height_mm = 0.0;
    for (std::size_t i = from; i < to; ++i) {
        height_mm += layout.rows[i].height_mm;
    }
    return height_mm;
}

bool begins_within_section(const TableLayout& layout, std::size_t row) {
    return row > 0 && layout.rows[row].section == layout.rows[row - 1].section;
}

/// What stands over the first row of a page.
double over_rows_mm(const TableLayout& layout, const TablePage& page) {
    const bool repeats =
        page.goes_on
        && !layout.headings[static_cast<std::size_t>(layout.rows[page.from].section)].empty();
    return layout.header_mm + (repeats ? kHeadingHeight_mm : 0.0);
}

/// Where the page that begins at a row ends.
std::size_t end_of_page(const TableLayout& layout, const TablePage& page, double height_mm) {
    double left_mm = height_mm - over_rows_mm(layout, page);
    std::size_t to = page.from;
    while (to < layout.rows.size()) {
        const std::size_t chain = end_of_chain(layout, to);
        const double chain_mm = height_between(layout, to, chain);
        if (chain_mm <= left_mm) {
            left_mm -= chain_mm;
            to = chain;
            continue;
        }
        if (to > page.from) {
            return to;
        }
        // A chain that no page holds is broken where it must be.
        while (to < chain && layout.rows[to].height_mm <= left_mm) {
            left_mm -= layout.rows[to++].height_mm;
        }
        return std::max(to, page.from + 1);
    }
    return to;
}

} // namespace

std::vector<TablePage> paged(const TableLayout& layout, double first_mm, double next_mm) {
    std::vector<TablePage> pages;
    std::size_t from = 0;
    do {
        TablePage page{from, from,
                       from < layout.rows.size() && begins_within_section(layout, from)};
        page.to =
            layout.rows.empty() ? 0 : end_of_page(layout, page, pages.empty() ? first_mm : next_mm);
        pages.push_back(page);
        from = page.to;
    } while (from < layout.rows.size());
    return pages;
}

} // namespace throwline::sheet
