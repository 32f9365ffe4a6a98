#include "lists/list_cases.h"
#include "lists/table.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <rapidcheck/gtest.h>

namespace throwline::lists_test {
namespace {

using lists::Align;
using lists::Cell;
using lists::Row;
using lists::Table;
using Record = std::vector<std::string>;

/// A reader of RFC 4180 that knows nothing of the writer.
std::vector<Record> read_csv(const std::string& csv) {
    std::vector<Record> records;
    Record record{""};
    bool quoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        const char c = csv[i];
        if (quoted && c == '"' && i + 1 < csv.size() && csv[i + 1] == '"') {
            record.back() += c;
            ++i;
        } else if (c == '"') {
            quoted = !quoted;
        } else if (!quoted && c == ',') {
            record.emplace_back();
        } else if (!quoted && c == '\r' && i + 1 < csv.size() && csv[i + 1] == '\n') {
            records.push_back(record);
            record = {""};
            ++i;
        } else {
            record.back() += c;
        }
    }
    EXPECT_FALSE(quoted);
    EXPECT_EQ(record, Record{""}) << "the last line has no end";
    return records;
}

Table table_of(const std::vector<Row>& rows) {
    return {
        "test", "Test", {{"name", "Name"}, {"way_m", "Way", Align::right}}, {{"", rows, {}}}, {}};
}

Row row(const std::string& name, const Cell& way) {
    return {{Cell{name, std::nullopt}, way}};
}

TEST(TableCsv, IsReadBackAsItWas) {
    const Table table =
        table_of({row("plain", {"1'-0\"", 0.3048}), row("comma, \"quote\"", {"", std::nullopt}),
                  row("two\nlines", {"far", std::nullopt}), row("Größe → 5 µm", {"x", -0.25})});
    EXPECT_EQ(read_csv(lists::as_csv(table)), (std::vector<Record>{{"name", "way_m"},
                                                                   {"plain", "0.3048"},
                                                                   {"comma, \"quote\"", ""},
                                                                   {"two\nlines", "far"},
                                                                   {"Größe → 5 µm", "-0.25"}}));
}

TEST(TableCsv, StopsFormulas) {
    const Table table = table_of({row("=1+1", {}), row("+1", {}), row("-1", {}), row("@sum", {}),
                                  row("\tx", {}), row("\rx", {}), row("a=1", {})});
    const auto records = read_csv(lists::as_csv(table));
    const std::vector<std::string> kExpected{"'=1+1", "'+1", "'-1", "'@sum", "'\tx", "'\rx", "a=1"};
    ASSERT_EQ(records.size(), kExpected.size() + 1);
    for (std::size_t i = 0; i < kExpected.size(); ++i) {
        EXPECT_EQ(records[i + 1].front(), kExpected[i]);
    }
}

TEST(TableCsv, NamesSectionsAndLeavesTotalsOut) {
    Table table = table_of({row("a", {"1", 1.0})});
    table.sections.front().rows.push_back({{Cell{"all", std::nullopt}, Cell{"1", 1.0}}, true});
    table.sections.front().heading = "=first";
    table.sections.push_back({"second", {row("b", {"2", 2.0})}, {"a remark"}});
    EXPECT_EQ(read_csv(lists::as_csv(table)),
              (std::vector<Record>{
                  {"section", "name", "way_m"}, {"'=first", "a", "1"}, {"second", "b", "2"}}));
}

TEST(TableCsv, RoundsAwayBinaryFractions) {
    EXPECT_EQ(read_csv(lists::as_csv(table_of({row("a", {"", 0.1 + 0.2}), row("b", {"", -0.0}),
                                               row("c", {"", 1.2191999999999998})}))),
              (std::vector<Record>{{"name", "way_m"}, {"a", "0.3"}, {"b", "0"}, {"c", "1.2192"}}));
}

RC_GTEST_PROP(TableCsv, KeepsAnyText, (const std::string& text)) {
    const auto records = read_csv(lists::as_csv(table_of({row("x" + text, {"", 1.0})})));
    RC_ASSERT(records.size() == 2U);
    RC_ASSERT(records[1].front() == "x" + text);
}

TEST(TableCsv, HoldsTheListsOfEveryProduction) {
    for (const Production& production : productions()) {
        for (const lists::ListKind& kind : lists::all_lists()) {
            const Table table = list(production, std::string{kind.name});
            const auto records = read_csv(lists::as_csv(table));
            std::size_t rows = 0;
            for (const lists::Section& section : table.sections) {
                for (const Row& each : section.rows) {
                    rows += each.total ? 0 : 1;
                }
            }
            ASSERT_EQ(records.size(), rows + 1) << table.name;
            for (const Record& record : records) {
                EXPECT_EQ(record.size(), records.front().size()) << table.name;
            }
        }
    }
}

TEST(TableJson, HoldsNumbersTextsAndNulls) {
    Table table = table_of({row("a\"<b>", {"1'-0\"", 0.3048}), row("", {"far", std::nullopt})});
    table.sections.front().rows.push_back({{Cell{"all", std::nullopt}, Cell{"2", 2.0}}, true});
    table.sections.front().remarks = {"a remark"};
    table.cautions = {"mind"};
    const auto json = nlohmann::json::parse(lists::as_json(table));
    EXPECT_EQ(json["name"], "test");
    EXPECT_EQ(json["columns"][1]["key"], "way_m");
    const auto& section = json["sections"][0];
    EXPECT_EQ(section["rows"].size(), 2U);
    EXPECT_EQ(section["rows"][0]["name"], "a\"<b>");
    EXPECT_EQ(section["rows"][0]["way_m"], 0.3048);
    EXPECT_TRUE(section["rows"][1]["name"].is_null());
    EXPECT_EQ(section["rows"][1]["way_m"], "far");
    EXPECT_EQ(section["totals"][0]["way_m"], 2.0);
    EXPECT_EQ(section["remarks"][0], "a remark");
    EXPECT_EQ(json["cautions"][0], "mind");
}

TEST(TableJson, SurvivesBytesThatAreNoText) {
    const Table table = table_of({row("\xff\xfe", {"", 1.0})});
    EXPECT_TRUE(nlohmann::json::accept(lists::as_json(table)));
}

TEST(TableText, AlignsColumnsByCharacters) {
    const std::string text =
        lists::as_text(table_of({row("Ä", {"9 m", 9.0}), row("long name", {"10 m", 10.0})}));
    EXPECT_EQ(text, "Test\n\n"
                    "Name        Way\n"
                    "Ä           9 m\n"
                    "long name  10 m\n");
}

TEST(TableText, LeavesEmptyColumnsOutAndKeepsToLines) {
    const std::string text = lists::as_text(table_of({row("two\nlines\x1b[31m", {})}));
    EXPECT_EQ(text, "Test\n\nName\ntwo lines\xEF\xBF\xBD[31m\n");
}

} // namespace
} // namespace throwline::lists_test
