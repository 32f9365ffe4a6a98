#include "card/say_field.h"

#include "card/card.h"
#include "support/demo_plan.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::card {
namespace {

using support::demo_plan;
using support::shipped_catalogue;

struct Spoken {
    plan::Plan plan = demo_plan("cookery.json");
    edit::Context context{plan, shipped_catalogue(), {{"2"}, {"2A"}}};
    std::vector<edit::Thing> lamp{{edit::Kind::lamp, "3", 0}};

    Result<edit::Step> set(const std::string& field, const std::string& text,
                           const std::vector<edit::Thing>& things) const {
        return fulfilled(context, {}, {things, field, text});
    }
};

/// Every value that offers its words is found by them.
TEST(SayField, EveryOfferedValueIsFound) {
    const Spoken spoken;
    for (const edit::Thing& thing : edit::things_on_floor(spoken.context)) {
        const std::vector<edit::Thing> one{thing};
        for (const std::string& words : field_words(spoken.context, one)) {
            const auto step = spoken.set(words, "", one);
            EXPECT_TRUE(step || step.error().message.find("no value") == std::string::npos)
                << edit::name_of(thing) << " " << words;
        }
    }
}

TEST(SayField, SetsAValueOfAThing) {
    const Spoken spoken;
    const auto step = spoken.set("level", "40 %", spoken.lamp);
    ASSERT_TRUE(step) << step.error().message;
    EXPECT_NEAR(plan::find(step->plan, plan::Id<plan::Lamp>{"3"})->level, 0.4, 1e-9);
}

TEST(SayField, WithoutThingsItIsWhatIsChosenElseTheProduction) {
    const Spoken spoken;
    const auto lamp = fulfilled(spoken.context, spoken.lamp, {{}, "level", "40 %"});
    EXPECT_TRUE(lamp) << lamp.error().message;
    const auto title = fulfilled(spoken.context, {}, {{}, "title", "Saturday kitchen"});
    ASSERT_TRUE(title) << title.error().message;
    EXPECT_EQ(title->plan.title, "Saturday kitchen");
}

TEST(SayField, NamesTheNearestValue) {
    const Spoken spoken;
    const auto step = spoken.set("levle", "40 %", spoken.lamp);
    ASSERT_FALSE(step);
    EXPECT_NE(step.error().message.find("the nearest is \"level\""), std::string::npos)
        << step.error().message;
}

TEST(SayField, OffersValuesBehindSet) {
    const Spoken spoken;
    const auto words = words_next(spoken.context, spoken.lamp, "set le", {});
    EXPECT_NE(std::find(words.begin(), words.end(), "level"), words.end());
    const auto others = words_next(spoken.context, {}, "move cam", {});
    EXPECT_EQ(others.front(), "camera 1");
}

} // namespace
} // namespace throwline::card
