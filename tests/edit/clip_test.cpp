#include "edit/clip.h"

#include "edit/valid.h"
#include "plan/scenery.h"
#include "support/demo_plan.h"
#include "support/small_plan.h"
#include "support/taken_step.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

using support::demo_plan;
using support::shipped_catalogue;
using support::taken;

Context context_of(const plan::Plan& plan) {
    const plan::Id<plan::Beat> beat =
        plan.beats.empty() ? plan::Id<plan::Beat>{} : plan.beats.front().id;
    return {plan, shipped_catalogue(), {beat, {}}};
}

std::string all_clipped(const plan::Plan& plan) {
    const Context context = context_of(plan);
    return clipped(context, things_on_floor(context));
}

bool is_valid(const plan::Plan& plan) {
    return valid(plan, shipped_catalogue()).has_value();
}

Vec2 middle(const plan::Scenery& box) {
    return std::get<plan::BoxPiece>(box.shape).at;
}

TEST(Clip, AWholeDemoGoesOnAnEmptyFloor) {
    for (const char* name : {"cookery.json", "workshop_interview.json", "potters_bench.json"}) {
        const plan::Plan demo = demo_plan(name);
        const plan::Plan empty;
        const plan::Plan made = taken(pasted(context_of(empty), all_clipped(demo), std::nullopt));
        EXPECT_TRUE(is_valid(made)) << name;
        EXPECT_EQ(made.scenery.size(), demo.scenery.size());
        // Who is not on the floor in the first beat is not chosen with what is.
        EXPECT_LE(made.people.size(), demo.people.size());
        EXPECT_FALSE(made.people.empty());
        EXPECT_EQ(made.cameras.size(), demo.cameras.size());
        ASSERT_EQ(made.lamps.size(), demo.lamps.size());
        for (std::size_t i = 0; i < made.lamps.size(); ++i) {
            EXPECT_EQ(made.lamps[i].id, demo.lamps[i].id);
            EXPECT_EQ(made.lamps[i].instrument, demo.lamps[i].instrument);
        }
    }
}

/// Its lamps are called "1" to "18"; the only beat is the first all the same.
TEST(Clip, PeopleBringABeatToAFloorWithout) {
    const plan::Plan empty;
    const plan::Plan made =
        taken(pasted(context_of(empty), all_clipped(demo_plan("cookery.json")), std::nullopt));
    ASSERT_EQ(made.beats.size(), 1U);
    EXPECT_EQ(made.beats.front().id.name, "1");
    EXPECT_FALSE(made.beats.front().marks.empty());
}

TEST(Clip, OnTheSameFloorEverythingHasAnotherNameAndStandsBeside) {
    const plan::Plan demo = demo_plan("cookery.json");
    const Result<Step> step = pasted(context_of(demo), all_clipped(demo), std::nullopt);
    ASSERT_TRUE(step);
    EXPECT_TRUE(is_valid(step->plan));
    EXPECT_EQ(step->plan.scenery.size(), 2 * demo.scenery.size());
    EXPECT_EQ(step->plan.lamps.size(), 2 * demo.lamps.size());
    EXPECT_EQ(step->plan.lamps[demo.lamps.size()].id.name, "19");
    for (const Thing& thing : step->made) {
        EXPECT_EQ(std::count_if(step->made.begin(), step->made.end(),
                                [&](const Thing& other) { return other.name == thing.name; }),
                  1)
            << thing.name;
    }
}

TEST(Clip, ItsMiddleGoesWhereItIsWanted) {
    plan::Plan plan = testing_support::bare_room();
    testing_support::add_scenery(plan, "table", testing_support::box_piece({3, 4}, 1.0, 1.0, 0.7));
    testing_support::add_scenery(plan, "stool", testing_support::box_piece({5, 4}, 1.0, 1.0, 0.5));
    const plan::Plan made = taken(pasted(context_of(plan), all_clipped(plan), Vec2{6, 6}));
    ASSERT_EQ(made.scenery.size(), 4U);
    EXPECT_LT((middle(made.scenery[2]) - Vec2{5, 6}).norm(), 1e-9);
    EXPECT_LT((middle(made.scenery[3]) - Vec2{7, 6}).norm(), 1e-9);
}

/// Without what it is aimed at, a lamp goes on throwing its light to the same place.
TEST(Clip, AnAimThatStaysBehindBecomesAPlace) {
    const plan::Plan demo = demo_plan("cookery.json");
    const Context context = context_of(demo);
    const auto lamp = std::find_if(demo.lamps.begin(), demo.lamps.end(), [](const plan::Lamp& one) {
        return std::holds_alternative<plan::ThingName>(one.aim);
    });
    ASSERT_NE(lamp, demo.lamps.end());
    const Thing thing{Kind::lamp, lamp->id.name, 0};
    const plan::Plan empty;
    const plan::Plan made =
        taken(pasted(context_of(empty), clipped(context, std::span{&thing, 1}), std::nullopt));
    ASSERT_EQ(made.lamps.size(), 1U);
    EXPECT_TRUE(std::holds_alternative<Vec3>(made.lamps.front().aim));
    EXPECT_TRUE(is_valid(made));
}

TEST(Clip, WallsAndOpeningsDoNotTravel) {
    const plan::Plan demo = demo_plan("cookery.json");
    std::vector<Thing> fixed;
    for (const Thing& thing : things_on_floor(context_of(demo))) {
        if (thing.kind == Kind::wall || thing.kind == Kind::opening) {
            fixed.push_back(thing);
        }
    }
    ASSERT_FALSE(fixed.empty());
    EXPECT_EQ(clipped(context_of(demo), fixed), "");
}

TEST(Clip, AnyOtherTextIsRefused) {
    const plan::Plan demo = demo_plan("cookery.json");
    for (const char* text : {"", "a shopping list", "{}", "[]", "{\"throwline\": 1}", "\xff\xfe"}) {
        EXPECT_FALSE(pasted(context_of(demo), text, std::nullopt)) << text;
    }
}

} // namespace
} // namespace throwline::edit
