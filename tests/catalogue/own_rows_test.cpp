#include "catalogue/own_rows.h"

#include "catalogue/own_items.h"
#include "support/shipped_catalogue.h"

#include <filesystem>
#include <gtest/gtest.h>
#include <unistd.h>

namespace throwline::catalogue {
namespace {

const Catalogue& shipped_catalogue() {
    static const Catalogue tables = testing_support::shipped_catalogue();
    return tables;
}

std::vector<OwnRow> every_row() {
    const Catalogue& tables = shipped_catalogue();
    std::vector<OwnRow> rows;
    const auto add = [&](std::string_view table, const auto& of_table) {
        for (const auto& row : of_table) {
            const auto own = own_row(tables, table, row.name);
            EXPECT_TRUE(own) << row.name;
            rows.push_back(own.value_or(OwnRow{}));
        }
    };
    add("stock", tables.stock);
    add("lenses", tables.lenses);
    add("sensors", tables.sensors);
    add("instruments", tables.instruments);
    add("supports", tables.supports);
    add("filters", tables.filters);
    return rows;
}

/// Every figure of the shipped tables has at most four decimals, so that nothing may be lost.
TEST(OwnRow, OfEveryShippedItemIsReadBackAsTheSame) {
    const std::filesystem::path folder =
        std::filesystem::temp_directory_path() / ("own_rows_" + std::to_string(::getpid()));
    const std::filesystem::path file = folder / "own.json";
    const std::vector<OwnRow> rows = every_row();
    ASSERT_GT(rows.size(), 100U);
    for (const OwnRow& row : rows) {
        const auto kept = own_item_kept(file, row);
        ASSERT_TRUE(kept) << row.name() << ": " << text_of(kept.error().front());
    }
    const auto read = with_own_items({}, file);
    ASSERT_TRUE(read) << text_of(read.error().front());
    for (const OwnRow& row : rows) {
        EXPECT_EQ(own_row(*read, row.table, row.name()), row) << row.name();
    }
    const Instrument& before = *shipped_catalogue().instrument("Fresnel 1 kW");
    const Instrument& after = *read->instrument("Fresnel 1 kW");
    EXPECT_EQ(after.kind, before.kind);
    EXPECT_EQ(after.spot.peak_cd, before.spot.peak_cd);
    EXPECT_NEAR(after.flood.field.rad(), before.flood.field.rad(), 1e-12);
    EXPECT_EQ(after.face_width.m(), before.face_width.m());
    EXPECT_EQ(after.clearance.m(), before.clearance.m());
    EXPECT_EQ(after.round_face, before.round_face);
    std::filesystem::remove_all(folder);
}

TEST(OwnRow, LeavesOutWhatSaysNothing) {
    const auto prime = own_row(shipped_catalogue(), "lenses", "prime 35 T1.5");
    ASSERT_TRUE(prime);
    EXPECT_EQ(prime->find("squeeze"), nullptr);
    EXPECT_EQ(prime->find("source"), nullptr) << "whoever changes it is its source";
    ASSERT_NE(prime->find("focal_min_mm"), nullptr);
    EXPECT_EQ(std::get<double>(*prime->find("focal_min_mm")), 35.0);
}

TEST(OwnRow, IsNoneOfATableOrANameThatIsNot) {
    EXPECT_FALSE(own_row(shipped_catalogue(), "papers", "A4"));
    EXPECT_FALSE(own_row(shipped_catalogue(), "lenses", "Fresnel 1 kW"));
    EXPECT_FALSE(own_row(shipped_catalogue(), "", "boom"));
}

} // namespace
} // namespace throwline::catalogue
