#include "edit/hung_order.h"
#include "support/demo_plan.h"

#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

using support::demo_plan;
using support::shipped_catalogue;

plan::Plan cookery() {
    return demo_plan("cookery.json");
}

std::vector<std::string> names_on(const plan::Plan& plan, std::size_t beat) {
    std::vector<std::string> names;
    const std::vector<HungBeat> order = hung_order(plan, shipped_catalogue());
    for (const HungShot& shot : order[beat].shots) {
        names.push_back(shot.shot.name);
    }
    return names;
}

Context context_of(const plan::Plan& plan) {
    return {plan, shipped_catalogue(), {plan.beats.front().id, {}}};
}

using Names = std::vector<std::string>;

TEST(HungOrder, ShotsHangOnTheirFirstBeat) {
    plan::Plan plan = cookery();
    plan.shots[0].beats = {{"1"}, {"2"}};
    const std::vector<HungBeat> order = hung_order(plan, shipped_catalogue());
    ASSERT_EQ(order.size(), 4U);
    EXPECT_EQ(names_on(plan, 0), (Names{"1A", "1B", "1C"}));
    EXPECT_EQ(names_on(plan, 1), (Names{"2A", "2B", "2C"}));
    EXPECT_EQ(order[0].shots[0].goes_on_to.name, "2");
    EXPECT_TRUE(order[0].shots[1].goes_on_to.empty());
}

TEST(HungOrder, WalksLieBeforeEveryBeatButTheFirst) {
    const std::vector<HungBeat> order = hung_order(cookery(), shipped_catalogue());
    EXPECT_TRUE(order[0].walks.empty());
    EXPECT_GT(order[1].longest_walk_m, 0.0);
}

TEST(HungOrder, WalkingTimeGoesByThePace) {
    EXPECT_DOUBLE_EQ(walking_time_s(2.6), 2.0);
}

TEST(HungOrder, PicturesOfAnUnknownCameraHaveTheUsualShape) {
    plan::Plan plan = cookery();
    plan.cameras.front().sensor = "no such mode";
    plan.shots.front().camera = plan.cameras.front().id;
    EXPECT_DOUBLE_EQ(hung_order(plan, shipped_catalogue())[0].shots[0].aspect, 16.0 / 9.0);
}

TEST(ShotHung, GoesBeforeTheOneAtTheSlot) {
    const plan::Plan plan = cookery();
    const Result<Step> step = shot_hung(context_of(plan), {"1C"}, {"1"}, 0);
    ASSERT_TRUE(step);
    EXPECT_EQ(names_on(step->plan, 0), (Names{"1C", "1A", "1B"}));
}

TEST(ShotHung, GoesIntoAnotherBeatAtAnyPlace) {
    const plan::Plan plan = cookery();
    for (int slot = 0; slot <= 3; ++slot) {
        const Result<Step> step = shot_hung(context_of(plan), {"1A"}, {"3"}, slot);
        ASSERT_TRUE(step);
        const Names names = names_on(step->plan, 2);
        ASSERT_EQ(names.size(), 4U);
        EXPECT_EQ(names[static_cast<std::size_t>(slot)], "1A");
        EXPECT_EQ(names_on(step->plan, 0), (Names{"1B", "1C"}));
    }
}

TEST(ShotHung, GoesIntoABeatWithoutShots) {
    plan::Plan plan = cookery();
    std::erase_if(plan.shots,
                  [](const plan::Shot& shot) { return shot.beats.front().name == "2"; });
    const Result<Step> step = shot_hung(context_of(plan), {"4A"}, {"2"}, 0);
    ASSERT_TRUE(step);
    EXPECT_EQ(names_on(step->plan, 1), (Names{"4A"}));
    EXPECT_EQ(step->plan.shots[3].id.name, "4A");
}

TEST(ShotStepped, PassesItsNeighbour) {
    const plan::Plan plan = cookery();
    const Result<Step> later = shot_stepped(context_of(plan), {"1A"}, 1);
    ASSERT_TRUE(later);
    EXPECT_EQ(names_on(later->plan, 0), (Names{"1B", "1A", "1C"}));
    const Result<Step> back = shot_stepped(context_of(later->plan), {"1A"}, -1);
    ASSERT_TRUE(back);
    EXPECT_EQ(names_on(back->plan, 0), (Names{"1A", "1B", "1C"}));
}

TEST(ShotStepped, GoesOnIntoTheNextBeat) {
    const plan::Plan plan = cookery();
    const Result<Step> later = shot_stepped(context_of(plan), {"1C"}, 1);
    ASSERT_TRUE(later);
    EXPECT_EQ(names_on(later->plan, 1), (Names{"1C", "2A", "2B", "2C"}));
    const Result<Step> back = shot_stepped(context_of(later->plan), {"1C"}, -1);
    ASSERT_TRUE(back);
    EXPECT_EQ(names_on(back->plan, 0), (Names{"1A", "1B", "1C"}));
}

TEST(ShotStepped, StopsAtTheEndsWithASentence) {
    const plan::Plan plan = cookery();
    const Result<Step> before = shot_stepped(context_of(plan), {"1A"}, -1);
    ASSERT_FALSE(before);
    EXPECT_EQ(before.error().message, "shot 1A is the first one already");
    const Result<Step> after = shot_stepped(context_of(plan), {"4C"}, 1);
    ASSERT_FALSE(after);
    EXPECT_EQ(after.error().message, "shot 4C is the last one already");
    EXPECT_FALSE(shot_stepped(context_of(plan), {"9Z"}, 1));
}

TEST(BeatStepped, ChangesPlacesWithItsNeighbour) {
    const plan::Plan plan = cookery();
    const Result<Step> step = beat_stepped(context_of(plan), {"2"}, 1);
    ASSERT_TRUE(step);
    EXPECT_EQ(step->plan.beats[1].id.name, "3");
    EXPECT_EQ(step->plan.beats[2].id.name, "2");
    EXPECT_FALSE(beat_stepped(context_of(plan), {"1"}, -1));
    EXPECT_FALSE(beat_stepped(context_of(plan), {"4"}, 1));
}

TEST(BeatRetold, KeepsItsNumber) {
    const plan::Plan plan = cookery();
    const Result<Step> step = beat_retold(context_of(plan), {"2"}, "Peeling");
    ASSERT_TRUE(step);
    EXPECT_EQ(step->name, "Name beat 2");
    EXPECT_EQ(step->plan.beats[1].id.name, "2");
    EXPECT_EQ(step->plan.beats[1].name, "Peeling");
    EXPECT_FALSE(beat_retold(context_of(plan), {"7"}, "Peeling"));
}

} // namespace
} // namespace throwline::edit
