#include "card/own_item.h"

#include "support/demo_plan.h"

#include <fstream>
#include <gtest/gtest.h>
#include <regex>
#include <set>

namespace throwline::card {
namespace {

using catalogue::OwnRow;
using support::shipped_catalogue;

const OwnField& field(std::string_view table, std::string_view key) {
    for (const OwnField& one : own_table(table).fields) {
        if (one.key == key) {
            return one;
        }
    }
    throw std::logic_error{std::string{key}};
}

double number(const OwnRow& row, std::string_view key) {
    const catalogue::OwnValue* value = row.find(key);
    EXPECT_NE(value, nullptr) << key;
    return value == nullptr ? 0.0 : std::get<double>(*value);
}

/// Whoever opens the form of any shipped thing and keeps it unchanged has the same thing, in either
/// system of units.
TEST(OwnItem, TypedBackAsItIsShownStaysTheSame) {
    int rows = 0;
    const auto look = [&](std::string_view table, const auto& of_table) {
        for (const auto& one : of_table) {
            for (const UnitSystem units : {UnitSystem::metric, UnitSystem::imperial}) {
                const OwnRow before = *catalogue::own_row(shipped_catalogue(), table, one.name);
                OwnRow row = before;
                for (const OwnField& asked : own_table(table).fields) {
                    const auto put = put_value(row, asked, shown_value(asked, row, units), units);
                    ASSERT_TRUE(put)
                        << one.name << ", " << asked.words << ": " << put.error().message;
                }
                for (const auto& [key, value] : before.values) {
                    ASSERT_NE(row.find(key), nullptr) << one.name << " lost " << key;
                    EXPECT_EQ(*row.find(key), value) << one.name << ": " << key;
                }
                ++rows;
            }
        }
    };
    look("stock", shipped_catalogue().stock);
    look("lenses", shipped_catalogue().lenses);
    look("sensors", shipped_catalogue().sensors);
    look("instruments", shipped_catalogue().instruments);
    look("supports", shipped_catalogue().supports);
    look("filters", shipped_catalogue().filters);
    EXPECT_GT(rows, 200);
}

/// The keys in the first cells of a table's section in the tables' own description.
std::set<std::string> documented_keys(std::string_view table) {
    std::ifstream text{THROWLINE_SOURCE_DIR "/lensdata/README.md"};
    std::set<std::string> keys{"name"};
    bool is_in_section = false;
    const std::regex key{"`([a-z_]+)`"};
    for (std::string line; std::getline(text, line);) {
        if (line.starts_with("## ")) {
            is_in_section = line.starts_with("## " + std::string{table} + ".json");
        }
        if (is_in_section && line.starts_with("| `")) {
            const std::string cell = line.substr(0, line.find('|', 1));
            for (std::sregex_iterator at{cell.begin(), cell.end(), key}, end; at != end; ++at) {
                keys.insert((*at)[1]);
            }
        }
    }
    return keys;
}

/// A key that nobody is asked for could never be set in the window.
TEST(OwnItem, AsksForEveryKeyThatARowMayHave) {
    for (const OwnTable& table : own_tables()) {
        std::set<std::string> asked;
        for (const OwnField& one : table.fields) {
            EXPECT_TRUE(asked.emplace(one.key).second) << one.key;
            EXPECT_FALSE(one.words.empty());
        }
        EXPECT_EQ(asked, documented_keys(table.table)) << table.table;
        EXPECT_GT(asked.size(), 4U) << table.table;
    }
    EXPECT_THROW(own_table("papers"), std::logic_error);
}

TEST(OwnItem, ReadsEachKindOfAnswerInItsUnit) {
    OwnRow row{"lenses"};
    EXPECT_TRUE(put_value(row, field("lenses", "focal_min_mm"), "28", UnitSystem::imperial));
    EXPECT_EQ(number(row, "focal_min_mm"), 28.0) << "millimetres whatever the plan's units";
    EXPECT_TRUE(put_value(row, field("lenses", "length_mm"), "6 in", UnitSystem::imperial));
    EXPECT_NEAR(number(row, "length_mm"), 152.4, 1e-9);
    EXPECT_TRUE(put_value(row, field("lenses", "close_focus_m"), "1'6", UnitSystem::metric));
    EXPECT_NEAR(number(row, "close_focus_m"), 0.4572, 1e-9);
    EXPECT_TRUE(put_value(row, field("lenses", "close_focus_m"), "0,5", UnitSystem::metric));
    EXPECT_NEAR(number(row, "close_focus_m"), 0.5, 1e-9);
    EXPECT_TRUE(put_value(row, field("filters", "transmission"), "37.5 %", UnitSystem::metric));
    EXPECT_NEAR(number(row, "transmission"), 0.375, 1e-12);
    EXPECT_TRUE(
        put_value(row, field("instruments", "spot_beam_deg"), "12,5\u00b0", UnitSystem::metric));
    EXPECT_EQ(number(row, "spot_beam_deg"), 12.5) << "not 12.500000000000002";
    EXPECT_TRUE(put_value(row, field("instruments", "spot_field_deg"), "24", UnitSystem::metric));
    EXPECT_EQ(number(row, "spot_field_deg"), 24.0);
    EXPECT_TRUE(put_value(row, field("instruments", "soft"), "yes", UnitSystem::metric));
    EXPECT_EQ(shown_value(field("instruments", "soft"), row, UnitSystem::metric), "yes");
}

TEST(OwnItem, TakesWhatIsLeftEmptyAsItsTipSays) {
    OwnRow row{"lenses", {{"focal_min_mm", 50.0}, {"squeeze", 2.0}}};
    EXPECT_TRUE(put_value(row, field("lenses", "focal_max_mm"), " ", UnitSystem::metric));
    EXPECT_EQ(number(row, "focal_max_mm"), 50.0);
    EXPECT_EQ(shown_value(field("lenses", "focal_max_mm"), row, UnitSystem::metric), "");
    EXPECT_TRUE(put_value(row, field("lenses", "squeeze"), "", UnitSystem::metric));
    EXPECT_EQ(row.find("squeeze"), nullptr);
    EXPECT_TRUE(put_value(row, field("stock", "mass_kg"), "", UnitSystem::metric));
    EXPECT_EQ(number(row, "mass_kg"), 0.0);
}

TEST(OwnItem, RefusesWhatCannotBeReadAtItsKey) {
    OwnRow row{"lenses"};
    const auto empty = put_value(row, field("lenses", "image_circle_mm"), "", UnitSystem::metric);
    ASSERT_FALSE(empty);
    EXPECT_EQ(empty.error().place.pointer, "/image_circle_mm");
    EXPECT_FALSE(put_value(row, field("lenses", "stop_wide"), "T2.8.1", UnitSystem::metric));
    EXPECT_FALSE(put_value(row, field("lenses", "close_focus_m"), "near", UnitSystem::metric));
    EXPECT_FALSE(put_value(row, field("filters", "transmission"), "%", UnitSystem::metric));
    EXPECT_TRUE(row.values.empty());
}

} // namespace
} // namespace throwline::card
