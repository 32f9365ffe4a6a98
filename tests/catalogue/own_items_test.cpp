#include "catalogue/own_items.h"

#include "base/text_file.h"

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>

namespace throwline::catalogue {
namespace {

/// A folder that is gone after the test.
class OwnItems : public testing::Test {
  protected:
    OwnItems()
        : folder{std::filesystem::temp_directory_path()
                 / ("own_items_" + std::to_string(::getpid()) + "_"
                    + testing::UnitTest::GetInstance()->current_test_info()->name())},
          file{folder / "deep" / "own-items.json"} {}
    ~OwnItems() override { std::filesystem::remove_all(folder); }

    static OwnRow dresser() {
        return {"stock",
                {{"name", "Tall dresser"},
                 {"use", "storage"},
                 {"shape", "box"},
                 {"width_m", 1.2},
                 {"depth_m", 0.45},
                 {"height_m", 2.0},
                 {"mass_kg", 60.0}}};
    }
    Catalogue read() const {
        Checked<Catalogue> read = with_own_items({}, file);
        EXPECT_TRUE(read) << (read ? "" : text_of(read.error().front()));
        return read ? *read : Catalogue{};
    }

    std::filesystem::path folder;
    std::filesystem::path file;
};

TEST_F(OwnItems, AreReadBackAsTheyWereKept) {
    ASSERT_TRUE(own_item_kept(file, dresser()));
    const Catalogue catalogue = read();
    ASSERT_EQ(catalogue.stock.size(), 1U);
    EXPECT_EQ(catalogue.stock[0].name, "Tall dresser");
    EXPECT_EQ(catalogue.stock[0].use, StockUse::storage);
    EXPECT_NEAR(catalogue.stock[0].depth.m(), 0.45, 1e-12);
    EXPECT_EQ(*own_names(file), std::vector<std::string>{"Tall dresser"});
}

TEST_F(OwnItems, TakeThePlaceOfTheOneOfTheirName) {
    ASSERT_TRUE(own_item_kept(file, dresser()));
    OwnRow lower = dresser();
    lower.set("name", "tall  DRESSER");
    lower.set("height_m", 1.5);
    ASSERT_TRUE(own_item_kept(file, lower));
    const Catalogue catalogue = read();
    ASSERT_EQ(catalogue.stock.size(), 1U);
    EXPECT_NEAR(catalogue.stock[0].height.m(), 1.5, 1e-12);
}

TEST_F(OwnItems, LeaveWhatElseTheFileHolds) {
    std::filesystem::create_directories(file.parent_path());
    std::ofstream{file} << R"({"finishes": [{"name": "sea green", "reflectance": 0.3}]})";
    ASSERT_TRUE(own_item_kept(file, dresser()));
    EXPECT_NE(read().finish("sea green"), nullptr);
    ASSERT_TRUE(own_item_removed(file, "tall dresser"));
    const Catalogue after = read();
    EXPECT_TRUE(after.stock.empty());
    EXPECT_NE(after.finish("sea green"), nullptr);
}

TEST_F(OwnItems, ThatTheTablesRefuseLeaveTheFileAsItWas) {
    ASSERT_TRUE(own_item_kept(file, dresser()));
    const std::string before = *read_text_file(file, 100000);
    OwnRow flat = dresser();
    flat.set("height_m", 0.0);
    const auto refused = own_item_kept(file, flat);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().front().place.pointer, "/height_m");
    EXPECT_TRUE(refused.error().front().place.file.empty()) << "nobody knows of a trial file";
    EXPECT_EQ(*read_text_file(file, 100000), before);
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator{file.parent_path()}, {}), 1);
}

TEST_F(OwnItems, NeedANameAndAFileOfItems) {
    OwnRow nameless = dresser();
    nameless.set("name", "  ");
    EXPECT_FALSE(own_item_kept(file, nameless));
    std::filesystem::create_directories(file.parent_path());
    std::ofstream{file} << "[1, 2]";
    EXPECT_FALSE(own_item_kept(file, dresser()));
    EXPECT_FALSE(own_names(file));
    EXPECT_FALSE(own_item_removed(file, "Tall dresser"));
}

TEST_F(OwnItems, AreNoneWithoutAFile) {
    EXPECT_TRUE(own_names(file)->empty());
    EXPECT_FALSE(own_item_removed(file, "Tall dresser"));
}

} // namespace
} // namespace throwline::catalogue
