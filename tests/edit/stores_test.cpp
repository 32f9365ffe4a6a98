#include "edit/stores.h"

#include "support/demo_plan.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

using support::demo_plan;
using support::shipped_catalogue;

struct Shelves {
    plan::Plan plan = demo_plan("cookery.json");
    std::vector<StoresRow> rows = stores_rows(plan, shipped_catalogue());

    const StoresRow& row(const std::string& name) const {
        const auto found = std::find_if(rows.begin(), rows.end(),
                                        [&](const StoresRow& one) { return one.name == name; });
        if (found == rows.end()) {
            ADD_FAILURE() << "no " << name;
            return rows.front();
        }
        return *found;
    }
    std::vector<std::string> found(const std::string& search) const {
        std::vector<std::string> names;
        for (const std::size_t row : found_in_stores(rows, search)) {
            names.push_back(rows[row].name);
        }
        return names;
    }
};

TEST(Stores, CountWhatIsOwnedAndWhatIsLeft) {
    const Shelves shelves;
    const StoresRow& lamp = shelves.row("Fresnel 1 kW");
    const int used = static_cast<int>(
        std::count_if(shelves.plan.lamps.begin(), shelves.plan.lamps.end(),
                      [](const plan::Lamp& one) { return one.instrument == "Fresnel 1 kW"; }));
    EXPECT_EQ(lamp.owned, 4);
    EXPECT_EQ(lamp.used, used);
    EXPECT_EQ(lamp.left(), 4 - used);
    EXPECT_EQ(shelves.row("grand piano").left(), std::nullopt);
}

TEST(Stores, SayTheCountInWords) {
    StoresRow row;
    EXPECT_EQ(count_words(row), "");
    row.used = 2;
    EXPECT_EQ(count_words(row), "2 on the plan");
    row.owned = 3;
    EXPECT_EQ(count_words(row), "owned 3, 1 left");
    row.owned = 1;
    EXPECT_EQ(count_words(row), "owned 1, 1 too few");
}

TEST(Stores, HoldEveryRowOfTheCatalogueOnce) {
    const Shelves shelves;
    const catalogue::Catalogue& tables = shipped_catalogue();
    const std::size_t extra = 4; // cast, crew, boom, outlet
    EXPECT_EQ(shelves.rows.size(), tables.stock.size() + tables.lenses.size()
                                       + tables.sensors.size() + tables.instruments.size()
                                       + tables.supports.size() + tables.filters.size() + extra);
    EXPECT_TRUE(
        std::is_sorted(shelves.rows.begin(), shelves.rows.end(),
                       [](const StoresRow& a, const StoresRow& b) { return a.shelf < b.shelf; }));
}

TEST(Stores, EverythingThatCanBePutDownCanBe) {
    const Shelves shelves;
    const Context context{shelves.plan, shipped_catalogue(), {{"2"}, {"2A"}}};
    for (const StoresRow& row : shelves.rows) {
        if (row.put) {
            const auto step = put_down(context, *row.put, {4.0, 3.0});
            EXPECT_TRUE(step) << row.name << ": " << (step ? "" : step.error().message);
        }
    }
}

TEST(Stores, AreSearchedByAnyWordInAnyOrder) {
    const Shelves shelves;
    EXPECT_EQ(shelves.found("chair dining"), std::vector<std::string>{"dining chair"});
    const auto lamps = shelves.found("fresnel led");
    EXPECT_EQ(lamps.size(), 3U);
    EXPECT_EQ(shelves.found("").size(), shelves.rows.size());
}

TEST(Stores, OfferTheNearestWhenNothingHasTheWords) {
    const Shelves shelves;
    const auto near = shelves.found("dinning chiar");
    EXPECT_NE(std::find(near.begin(), near.end(), "dining chair"), near.end());
    const auto frennel = shelves.found("frennel");
    ASSERT_FALSE(frennel.empty());
    EXPECT_EQ(frennel.front().rfind("Fresnel", 0), 0U) << frennel.front();
    EXPECT_TRUE(shelves.found("qqqqzzzz").empty());
}

TEST(Stores, KitIsSetChangedAndForgotten) {
    const Shelves shelves;
    const Context context{shelves.plan, shipped_catalogue(), {}};
    const auto owned_after = [&](const std::string& item, std::optional<int> count) {
        const auto step = kit_set(context, item, count);
        EXPECT_TRUE(step);
        EXPECT_EQ(step->name, "Set kit");
        const auto rows = stores_rows(step->plan, shipped_catalogue());
        return std::find_if(rows.begin(), rows.end(),
                            [&](const StoresRow& one) { return one.item == item; })
            ->owned;
    };
    EXPECT_EQ(owned_after("dining chair", 6), 6);
    EXPECT_EQ(owned_after("Fresnel 1 kW", 7), 7);
    EXPECT_EQ(owned_after("Fresnel 1 kW", std::nullopt), std::nullopt);
    EXPECT_FALSE(kit_set(context, "stool", -1));
}

} // namespace
} // namespace throwline::edit
