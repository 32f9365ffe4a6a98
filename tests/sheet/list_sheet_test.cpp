#include "sheet/list_sheet.h"

#include "lists/lists.h"
#include "sheet/drawn_words.h"
#include "sheet/golden.h"
#include "sheet/sheet_support.h"
#include "sheet/table_layout.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using lists::Align;
using test::analysed;
using test::count_of;
using test::EvenMeasure;
using test::full_plan;
using test::pages_of;
using test::session;
using test::sheet_catalogue;
using test::small_plan;

/// `sections` sections of `rows` numbered rows with a sum and a remark each.
lists::Table made_table(int sections, int rows) {
    lists::Table table;
    table.name = "made-up";
    table.title = "Made up";
    table.columns = {{"name", "Name", Align::left}, {"power_w", "Power", Align::right}};
    for (int s = 0; s < sections; ++s) {
        lists::Section section;
        section.heading = "Section " + std::to_string(s);
        for (int r = 0; r < rows; ++r) {
            section.rows.push_back(
                {{{"row " + std::to_string(s) + "-" + std::to_string(r), {}}, {"650 W", 650.0}},
                 false});
        }
        section.rows.push_back({{{"sum " + std::to_string(s), {}}, {"1300 W", 1300.0}}, true});
        section.remarks = {"remark " + std::to_string(s)};
        table.sections.push_back(section);
    }
    table.cautions = {"Take care."};
    return table;
}

TEST(TableLayout, NoRowIsLostOverPages) {
    const EvenMeasure measure;
    for (const double height_mm : {30.0, 47.0, 61.0, 100.0, 400.0}) {
        const TableLayout layout = laid_out(made_table(5, 7), 150.0, height_mm, measure);
        const std::vector<TablePage> pages = paged(layout, height_mm, height_mm);
        std::size_t next = 0;
        for (const TablePage& page : pages) {
            EXPECT_EQ(page.from, next);
            EXPECT_GT(page.to, page.from);
            Marks marks;
            EXPECT_LE(draw_table(marks, Vec2::Zero(), layout, page), height_mm + 1e-9);
            next = page.to;
        }
        EXPECT_EQ(next, layout.rows.size());
    }
}

TEST(TableLayout, HeadingsStayWithTheirRowsAndSumsWithTheirs) {
    const EvenMeasure measure;
    for (double height_mm = 45.0; height_mm < 130.0; height_mm += 3.0) {
        const TableLayout layout = laid_out(made_table(6, 5), 150.0, height_mm, measure);
        for (const TablePage& page : paged(layout, height_mm, height_mm)) {
            EXPECT_NE(layout.rows[page.to - 1].kind, TableRowKind::heading) << height_mm;
            EXPECT_NE(layout.rows[page.from].kind, TableRowKind::total) << height_mm;
            EXPECT_NE(layout.rows[page.from].kind, TableRowKind::remark) << height_mm;
        }
    }
}

TEST(TableLayout, ColumnsNeverOverlapAndStayWithinTheWidth) {
    const EvenMeasure measure;
    lists::Table table = made_table(1, 2);
    for (int i = 0; i < 9; ++i) {
        table.columns.push_back({"more", "Some more words", Align::left});
        for (lists::Row& row : table.sections.front().rows) {
            row.cells.push_back({"a sentence that is rather long", {}});
        }
    }
    for (const double width_mm : {60.0, 120.0, 180.0, 260.0, 900.0}) {
        const TableLayout layout = laid_out(table, width_mm, 200.0, measure);
        double right_mm = 0.0;
        for (const TableColumn& column : layout.columns) {
            EXPECT_GE(column.left_mm, right_mm - 1e-9);
            right_mm = column.left_mm + column.width_mm;
        }
        EXPECT_LE(right_mm, width_mm + 1e-9);
    }
}

TEST(TableLayout, ARowHigherThanAPageIsParted) {
    const EvenMeasure measure;
    lists::Table table = made_table(1, 1);
    std::string words;
    for (int i = 0; i < 200; ++i) {
        words += "word" + std::to_string(i) + " ";
    }
    table.sections.front().rows.front().cells.front().text = words;
    const TableLayout layout = laid_out(table, 80.0, 60.0, measure);
    std::string set;
    for (const TablePage& page : paged(layout, 60.0, 60.0)) {
        Marks marks;
        EXPECT_LE(draw_table(marks, Vec2::Zero(), layout, page), 60.0 + 1e-9);
        for (const Mark& mark : marks) {
            if (const auto* text = std::get_if<Text>(&mark)) {
                set += text->text + " ";
            }
        }
    }
    for (int i = 0; i < 200; ++i) {
        EXPECT_NE(set.find("word" + std::to_string(i) + " "), std::string::npos) << i;
    }
}

TEST(TableLayout, EmptyColumnsAreLeftOut) {
    lists::Table table = made_table(1, 2);
    table.columns.insert(table.columns.begin() + 1, {"notes", "Notes", Align::left});
    for (lists::Row& row : table.sections.front().rows) {
        row.cells.insert(row.cells.begin() + 1, lists::Cell{});
    }
    const lists::Table kept = without_empty_columns(table);
    ASSERT_EQ(kept.columns.size(), 2U);
    EXPECT_EQ(kept.columns.back().key, "power_w");
    EXPECT_EQ(kept.sections.front().rows.front().cells.back().text, "650 W");
}

TEST(ListSheet, RepeatsTitlesOfColumnsAndHeadings) {
    const checks::Analysis analysis = analysed(small_plan());
    const SheetInput input{analysis, sheet_catalogue(), session().measure()};
    SheetOptions options;
    options.paper = "A4";
    const auto jobs = table_jobs(input, options, made_table(1, 120));
    ASSERT_TRUE(jobs);
    ASSERT_GT(jobs->size(), 2U);
    for (std::size_t i = 0; i < jobs->size(); ++i) {
        const auto page = (*jobs)[i].draw(options);
        ASSERT_TRUE(page);
        EXPECT_EQ(count_of(*page, "Name"), 1U);
        EXPECT_EQ(count_of(*page, "Power"), 1U);
        EXPECT_EQ(count_of(*page, "Section 0, continued"), i == 0 ? 0U : 1U);
        EXPECT_EQ(count_of(*page, "Take care."), 1U);
    }
}

TEST(ListSheet, EveryListWithRowsIsPrintedWhole) {
    const checks::Analysis analysis = analysed(full_plan());
    SheetOptions options;
    options.paper = "A4";
    const std::vector<Drawing> pages =
        pages_of({analysis, sheet_catalogue(), session().measure()}, options, "lists");
    std::string titles;
    std::string words;
    for (const Drawing& page : pages) {
        titles += page.title + " ";
        words += test::all_words(page);
    }
    for (const lists::ListKind& kind : lists::all_lists()) {
        const lists::Table table = kind.make({analysis, sheet_catalogue()});
        for (const lists::Section& section : table.sections) {
            if (section.rows.empty()) {
                continue;
            }
            EXPECT_NE(titles.find(table.title), std::string::npos) << kind.name;
            for (const lists::Row& row : section.rows) {
                const std::string& first = row.cells.front().text;
                EXPECT_NE(words.find(first.substr(0, first.find(' '))), std::string::npos)
                    << kind.name << ": " << first;
            }
        }
    }
}

TEST(ListSheet, ATableIsAsItWas) {
    const checks::Analysis analysis = analysed(small_plan());
    const EvenMeasure measure;
    SheetOptions options;
    options.paper = "A4";
    options.file_hash = "0123abcd";
    options.sheet_name = "Made up";
    const auto jobs = table_jobs({analysis, sheet_catalogue(), measure}, options, made_table(2, 3));
    ASSERT_TRUE(jobs);
    const auto page = jobs->front().draw(options);
    ASSERT_TRUE(page);
    test::expect_golden(*page, "list_small");
}

} // namespace
} // namespace throwline::sheet
