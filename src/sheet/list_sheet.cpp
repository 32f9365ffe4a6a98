#include "sheet/list_sheet.h"

#include "lists/lists.h"
#include "sheet/table_layout.h"
#include "sheet/text_page.h"
#include "sheet/text_wrap.h"

#include <algorithm>
#include <fmt/format.h>
#include <memory>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 4.0;
constexpr double kTitle_mm = 5.0;
/// From the top of the body to the table.
constexpr double kOverTable_mm = kPad_mm + kTitle_mm + 4.0;
/// A table this much wider than an upright page is put on a wide one.
constexpr double kMostSqueeze = 1.15;

/// A table ready to be set, with its pages.
struct ListPages {
    std::string title;
    std::vector<std::string> cautions;
    TextPage page;
    TableLayout layout;
    std::vector<TablePage> pages;

    std::string name_of(std::size_t index) const {
        return pages.size() == 1 ? title
                                 : fmt::format("{}, {} of {}", title, index + 1, pages.size());
    }
};

double words_width_mm(const TextPage& page) {
    return page.body.width - 2.0 * kPad_mm;
}

Result<ListPages> pages_of(const SheetInput& input, const SheetOptions& options,
                           const lists::Table& table) {
    ListPages made;
    made.title = table.title;
    made.cautions = table.cautions;
    Result<TextPage> page = text_page(input, options, table.cautions);
    if (page && natural_width_mm(table, input.measure) > kMostSqueeze * words_width_mm(*page)) {
        page = text_page(input, options, table.cautions, Orientation::landscape);
    }
    if (!page) {
        return tl::unexpected{page.error()};
    }
    made.page = *page;
    const double height_mm = page->body.height - kOverTable_mm - kPad_mm;
    made.layout = laid_out(table, words_width_mm(*page), height_mm, input.measure);
    made.pages = paged(made.layout, height_mm, height_mm);
    return made;
}

Drawing draw_page(const SheetInput& input, const SheetOptions& options, const ListPages& list,
                  std::size_t index) {
    Marks marks;
    const Box& body = list.page.body;
    const double left_mm = body.left + kPad_mm;
    marks.emplace_back(Text{cut_to_width(list.name_of(index), words_width_mm(list.page), kTitle_mm,
                                         true, input.measure),
                            {left_mm, body.top + kPad_mm + kTitle_mm},
                            kTitle_mm,
                            TextAnchor::start,
                            0.0,
                            true,
                            Ink::lettering});
    draw_table(marks, {left_mm, body.top + kOverTable_mm}, list.layout, list.pages[index]);
    return finished_page(input, options, list.page, list.cautions, std::move(marks));
}

bool has_rows(const lists::Table& table) {
    return std::any_of(table.sections.begin(), table.sections.end(),
                       [](const lists::Section& section) { return !section.rows.empty(); });
}

} // namespace

Result<std::vector<SheetJob>> table_jobs(const SheetInput& input, const SheetOptions& options,
                                         const lists::Table& table) {
    Result<ListPages> made = pages_of(input, options, table);
    if (!made) {
        return tl::unexpected{made.error()};
    }
    const auto list = std::make_shared<const ListPages>(*std::move(made));
    std::vector<SheetJob> jobs;
    for (std::size_t i = 0; i < list->pages.size(); ++i) {
        jobs.push_back({list->name_of(i),
                        [input, list, i](const SheetOptions& drawn) -> Result<Drawing> {
                            return draw_page(input, drawn, *list, i);
                        },
                        list->title});
    }
    return jobs;
}

Result<std::vector<SheetJob>> list_jobs(const SheetInput& input, const SheetOptions& options) {
    std::vector<SheetJob> jobs;
    for (const lists::ListKind& kind : lists::all_lists()) {
        const lists::Table table =
            without_empty_columns(kind.make({input.analysis, input.catalogue}));
        if (!has_rows(table)) {
            continue;
        }
        auto pages = table_jobs(input, options, table);
        if (!pages) {
            return pages;
        }
        std::move(pages->begin(), pages->end(), std::back_inserter(jobs));
    }
    return jobs;
}

} // namespace throwline::sheet
