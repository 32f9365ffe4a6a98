/// What can be read of damaged plans.

#include "plan/salvage.h"

#include "plan/read_plan.h"
#include "support/demo_plan.h"

#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <random>

namespace throwline::plan {
namespace {

std::string demo_text(const char* name) {
    std::ifstream in{support::source_folder() / "demo" / name, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

void expect_readable(const Salvaged& rest, const std::string& what) {
    EXPECT_TRUE(read_plan(written(rest.plan), support::shipped_catalogue())) << what;
}

TEST(Salvage, TakesAWholePlanAsItIs) {
    const std::string text = demo_text("cookery.json");
    const Salvaged rest = salvaged(text, support::shipped_catalogue());
    EXPECT_TRUE(rest.errors.empty());
    EXPECT_EQ(rest.plan, support::demo_plan("cookery.json"));
}

TEST(Salvage, ReadsWhatStandsBeforeACut) {
    const std::string text = demo_text("workshop_interview.json");
    std::mt19937 random{7};
    for (int i = 0; i < 300; ++i) {
        const std::size_t cut = random() % (text.size() - 2);
        const Salvaged rest = salvaged(text.substr(0, cut), support::shipped_catalogue());
        EXPECT_FALSE(rest.errors.empty()) << cut;
        expect_readable(rest, "cut at " + std::to_string(cut));
    }
    // After the scenery all of it is there.
    const Salvaged rest =
        salvaged(text.substr(0, text.find("\"people\"")), support::shipped_catalogue());
    EXPECT_EQ(rest.plan.scenery.size(),
              support::demo_plan("workshop_interview.json").scenery.size());
}

TEST(Salvage, LeavesOutOneWrongLampAndKeepsTheOthers) {
    std::string text = demo_text("workshop_interview.json");
    const std::string lamp = "LED Fresnel 60 W";
    text.replace(text.find(lamp), lamp.size(), "no such lamp");
    const Salvaged rest = salvaged(text, support::shipped_catalogue());
    EXPECT_FALSE(rest.errors.empty());
    const Plan whole = support::demo_plan("workshop_interview.json");
    EXPECT_EQ(rest.plan.lamps.size(), whole.lamps.size() - 1);
    EXPECT_EQ(rest.plan.scenery, whole.scenery);
    expect_readable(rest, "a wrong lamp");
}

TEST(Salvage, SurvivesBytesChangedAnywhere) {
    const std::string text = demo_text("workshop_interview.json");
    std::mt19937 random{11};
    for (int i = 0; i < 300; ++i) {
        std::string damaged = text;
        for (unsigned hits = 1 + random() % 4; hits > 0; --hits) {
            damaged[random() % damaged.size()] = static_cast<char>(random() % 256);
        }
        expect_readable(salvaged(damaged, support::shipped_catalogue()), damaged);
    }
}

TEST(Salvage, GivesAnEmptyPlanForNoPlanAtAll) {
    for (const char* text : {"", "{", "[]", "nonsense", "\xff\xfe", "{\"title\": 3}"}) {
        const Salvaged rest = salvaged(text, support::shipped_catalogue());
        EXPECT_FALSE(rest.errors.empty()) << text;
        EXPECT_FALSE(rest.plan.title.empty()) << text;
        expect_readable(rest, text);
    }
}

} // namespace
} // namespace throwline::plan
