#include "edit/order.h"

#include "plan/places.h"
#include "support/demo_plan.h"
#include "support/small_plan.h"
#include "support/taken_step.h"

#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

using support::shipped_catalogue;
using support::taken;
using support::why_not;
using testing_support::add_camera;
using testing_support::add_person;
using testing_support::add_shot;
using testing_support::bare_room;

/// Three beats: Ada goes from (1, 1) by way of (4, 1) to (4, 5), and sits down there; Bo comes on
/// in the second at (8, 8) and leaves in the third.
plan::Plan three_beats() {
    plan::Plan plan = bare_room();
    add_person(plan, "Ada", {1, 1}, Angle{});
    plan::Person bo;
    bo.id = {"Bo"};
    plan.people.push_back(bo);
    plan::Mark sits;
    sits.at = {4, 5};
    sits.path = {{4, 1}};
    sits.faces = Angle::degrees(180);
    sits.pose = plan::Pose::sit;
    plan::Mark comes;
    comes.at = {8, 8};
    plan.beats.push_back({{"2"}, "they meet", {{{"Ada"}, sits}, {{"Bo"}, comes}}, {}});
    plan.beats.push_back({{"3"}, "alone", {{{"Bo"}, plan::OffFloor{}}}, {}});
    add_camera(plan, "camera 1");
    add_shot(plan, "1A", "camera 1", {5, 0.5}, {"Ada"});
    add_shot(plan, "2A", "camera 1", {2, 0.5}, {"Ada"}).beats = {{"2"}};
    add_shot(plan, "2B", "camera 1", {3, 0.5}, {"Ada"}).beats = {{"2"}, {"3"}};
    return plan;
}

Context context_of(const plan::Plan& plan) {
    return {plan, shipped_catalogue(), {{"2"}, {}}};
}

std::vector<std::string> beats_of(const plan::Plan& plan) {
    std::vector<std::string> names;
    for (const plan::Beat& beat : plan.beats) {
        names.push_back(beat.id.name);
    }
    return names;
}

std::vector<std::string> shots_of(const plan::Plan& plan) {
    std::vector<std::string> names;
    for (const plan::Shot& shot : plan.shots) {
        names.push_back(shot.id.name);
    }
    return names;
}

using Names = std::vector<std::string>;

/// Where everybody is in a beat, without the ways there.
std::map<plan::Id<plan::Person>, plan::Mark> standing(const plan::Plan& plan,
                                                      const std::string& beat) {
    auto marks = plan::marks_at(plan, {beat});
    for (auto& [person, mark] : marks) {
        mark.path.clear();
    }
    return marks;
}

TEST(BeatAdded, LeavesEverybodyWhereTheyWere) {
    const plan::Plan plan = three_beats();
    const plan::Plan after = taken(beat_added(context_of(plan), {"2"}, "a pause"));
    EXPECT_EQ(beats_of(after), (Names{"1", "2", "4", "3"}));
    EXPECT_EQ(after.beats[2].name, "a pause");
    EXPECT_EQ(standing(after, "4"), standing(plan, "2"));
    EXPECT_EQ(beats_of(taken(beat_added(context_of(plan), {}, ""))), (Names{"4", "1", "2", "3"}));
    EXPECT_EQ(why_not(beat_added(context_of(plan), {"9"}, "")), "there is no beat 9");
}

TEST(BeatRemoved, CarriesMarksToTheNext) {
    const plan::Plan plan = three_beats();
    const plan::Plan after = taken(beat_removed(context_of(plan), {"2"}));
    EXPECT_EQ(beats_of(after), (Names{"1", "3"}));
    EXPECT_EQ(standing(after, "3"), standing(plan, "3"));
    // 2A had that beat only; 2B had another.
    EXPECT_EQ(shots_of(after), (Names{"1A", "2B"}));
    EXPECT_EQ(after.shots[1].beats.size(), 1U);
}

TEST(BeatRemoved, LampOfTheBeatDoesNotBurnInAllBeatsInstead) {
    plan::Plan plan = three_beats();
    testing_support::hang_lamp(plan, "lamp 1", "Fresnel 650 W", {4, 4, 3}, Vec3{4, 4, 0});
    plan.lamps[0].beats = {{"2"}};
    plan.lamps[0].aim_beat = {"2"};
    const plan::Lamp lamp = taken(beat_removed(context_of(plan), {"2"})).lamps.at(0);
    ASSERT_EQ(lamp.beats.size(), 1U);
    EXPECT_EQ(lamp.beats[0].name, "1");
    EXPECT_TRUE(lamp.aim_beat.empty());
}

TEST(BeatRemoved, BoomOfTheBeatGoesWithEveryMentionOfIt) {
    plan::Plan plan = three_beats();
    plan::Boom boom;
    boom.id = {"boom"};
    boom.beats = {{"3"}};
    plan.booms = {boom};
    plan.shots[0].aim = plan::ThingName{"boom"};
    const plan::Plan after = taken(beat_removed(context_of(plan), {"3"}));
    EXPECT_TRUE(after.booms.empty());
}

TEST(BeatRemoved, LastBeatCanGoToo) {
    plan::Plan plan = bare_room();
    add_person(plan, "Ada", {1, 1}, Angle{});
    const plan::Plan after = taken(beat_removed(context_of(plan), {"1"}));
    EXPECT_TRUE(after.beats.empty());
    EXPECT_EQ(why_not(beat_removed(context_of(plan), {"9"})), "there is no beat 9");
}

TEST(BeatMoved, EverybodyKeepsTheMarkOfEachBeat) {
    const plan::Plan plan = three_beats();
    for (int from = 0; from < 3; ++from) {
        for (int to = -1; to < 4; ++to) {
            const plan::Id<plan::Beat> beat = plan.beats[static_cast<std::size_t>(from)].id;
            const plan::Plan after = taken(beat_moved(context_of(plan), beat, to));
            EXPECT_EQ(after.beats[static_cast<std::size_t>(std::clamp(to, 0, 2))].id, beat);
            for (const char* name : {"1", "2", "3"}) {
                EXPECT_EQ(standing(after, name), standing(plan, name)) << from << " to " << to;
            }
        }
    }
}

TEST(BeatMoved, WritesDownNoMoreThanItMust) {
    const plan::Plan plan = three_beats();
    EXPECT_EQ(taken(beat_moved(context_of(plan), {"2"}, 1)).beats, plan.beats);
    // Beat 3 first: Ada sits in it as she does in 2; Bo is off in it, as he is before any beat.
    const plan::Plan after = taken(beat_moved(context_of(plan), {"3"}, 0));
    EXPECT_EQ(after.beats[0].marks.size(), 2U);
    EXPECT_EQ(after.beats[1].marks.size(), 1U);
    EXPECT_EQ(after.beats[2].marks.size(), 2U);
}

TEST(BeatMoved, ShotsKeepTheirBeatsInOrder) {
    const plan::Plan plan = three_beats();
    const plan::Plan after = taken(beat_moved(context_of(plan), {"3"}, 0));
    EXPECT_EQ(after.shots[2].beats, (std::vector<plan::Id<plan::Beat>>{{"3"}, {"2"}}));
}

TEST(BeatRenamed, EveryMentionFollows) {
    const plan::Plan plan = three_beats();
    const plan::Plan after = taken(beat_renamed(context_of(plan), {"2"}, "meeting"));
    EXPECT_EQ(after.beats[1].id.name, "meeting");
    EXPECT_EQ(after.shots[1].beats[0].name, "meeting");
    EXPECT_EQ(why_not(beat_renamed(context_of(plan), {"2"}, "3")), "something is called 3 already");
    EXPECT_EQ(why_not(beat_renamed(context_of(plan), {"2"}, "")), "a beat needs a name");
    EXPECT_EQ(why_not(beat_renamed(context_of(plan), {"9"}, "x")), "there is no beat 9");
}

TEST(ShotAdded, TakesTheNextLetterAfterTheOthersOfItsBeat) {
    const plan::Plan plan = three_beats();
    const plan::Plan after = taken(shot_added(context_of(plan), {"1"}, {"camera 1"}));
    EXPECT_EQ(shots_of(after), (Names{"1A", "1B", "2A", "2B"}));
    const plan::Shot& shot = after.shots[1];
    EXPECT_EQ(shot.at, (Vec2{5, 0.5}));
    ASSERT_EQ(shot.subjects.size(), 1U);
    EXPECT_EQ(shot.subjects[0].name, "Ada");
    EXPECT_EQ(*shot.size, ShotSize::medium);
    const plan::Plan second = taken(shot_added(context_of(plan), {"2"}, {"camera 1"}));
    EXPECT_EQ(shots_of(second), (Names{"1A", "2A", "2B", "2C"}));
    EXPECT_EQ(second.shots[3].subjects.size(), 2U);
}

TEST(ShotAdded, CameraThatWasNowhereStandsBeforeItsSubjects) {
    plan::Plan plan = three_beats();
    add_camera(plan, "camera 2");
    const plan::Plan after = taken(shot_added(context_of(plan), {"2"}, {"camera 2"}));
    // Middle of (4, 5) and (8, 8), 3 m down the page.
    EXPECT_EQ(after.shots[3].at, (Vec2{6.0, 3.5}));
}

TEST(ShotAdded, OfNobodyLooksUpThePage) {
    plan::Plan plan = bare_room();
    add_camera(plan, "camera 1");
    plan.cameras[0].home = Vec2{2, 1};
    const plan::Shot shot = taken(shot_added(context_of(plan), {"1"}, {"camera 1"})).shots.at(0);
    EXPECT_EQ(shot.at, (Vec2{2, 1}));
    EXPECT_EQ(std::get<Vec3>(shot.aim), (Vec3{2, 4, 1.5}));
    EXPECT_FALSE(shot.size);
}

TEST(ShotAdded, SaysWhatIsMissing) {
    const plan::Plan plan = three_beats();
    EXPECT_EQ(why_not(shot_added(context_of(plan), {}, {"camera 1"})),
              "make a beat first: a shot belongs to one");
    EXPECT_EQ(why_not(shot_added(context_of(plan), {"9"}, {"camera 1"})), "there is no beat 9");
    EXPECT_EQ(why_not(shot_added(context_of(plan), {"1"}, {"camera 9"})),
              "put a camera on the floor first");
}

TEST(ShotMoved, GoesToItsPlaceAndIntoABeat) {
    const plan::Plan plan = three_beats();
    const plan::Plan first = taken(shot_moved(context_of(plan), {"2B"}, 0, {}));
    EXPECT_EQ(shots_of(first), (Names{"2B", "1A", "2A"}));
    EXPECT_EQ(first.shots[0].beats.size(), 2U);
    const plan::Plan into = taken(shot_moved(context_of(plan), {"2B"}, 9, {"1"}));
    EXPECT_EQ(shots_of(into), (Names{"1A", "2A", "2B"}));
    EXPECT_EQ(into.shots[2].beats, (std::vector<plan::Id<plan::Beat>>{{"1"}}));
    EXPECT_EQ(taken(shot_moved(context_of(plan), {"2B"}, 2, {"3"})).shots[2].beats.size(), 2U);
    EXPECT_EQ(why_not(shot_moved(context_of(plan), {"9A"}, 0, {})), "there is no shot 9A");
    EXPECT_EQ(why_not(shot_moved(context_of(plan), {"2A"}, 0, {"9"})), "there is no beat 9");
}

TEST(ShotRemoved, GoesWithEveryMention) {
    plan::Plan plan = three_beats();
    plan.shots[0].cuts_to = {{"2A"}};
    plan.accepted = {{"off-the-set", {"2A"}, {}, "it is dark there"}};
    const plan::Plan after = taken(shot_removed(context_of(plan), {"2A"}));
    EXPECT_EQ(shots_of(after), (Names{"1A", "2B"}));
    EXPECT_TRUE(after.shots[0].cuts_to.empty());
    EXPECT_EQ(why_not(shot_removed(context_of(plan), {"9A"})), "there is no shot 9A");
}

TEST(ShotRenamed, EveryMentionFollows) {
    plan::Plan plan = three_beats();
    plan.shots[0].cuts_to = {{"2A"}};
    const plan::Plan after = taken(shot_renamed(context_of(plan), {"2A"}, "insert"));
    EXPECT_EQ(after.shots[0].cuts_to[0].name, "insert");
    EXPECT_EQ(why_not(shot_renamed(context_of(plan), {"2A"}, "2B")),
              "something is called 2B already");
    EXPECT_EQ(why_not(shot_renamed(context_of(plan), {"2A"}, "")), "a shot needs a name");
}

TEST(WalksInto, GoByWayOfThePath) {
    const plan::Plan plan = three_beats();
    const std::vector<Walk> walks = walks_into(plan, {"2"});
    // Bo comes from nowhere: no way to show.
    ASSERT_EQ(walks.size(), 1U);
    EXPECT_EQ(walks[0].person.name, "Ada");
    EXPECT_EQ(walks[0].points, (std::vector<Vec2>{{1, 1}, {4, 1}, {4, 5}}));
    EXPECT_DOUBLE_EQ(walks[0].length_m, 7.0);
    EXPECT_TRUE(walks_into(plan, {"1"}).empty());
    EXPECT_TRUE(walks_into(plan, {"3"}).empty());
    EXPECT_TRUE(walks_into(plan, {"9"}).empty());
}

plan::Mark ada_at(const plan::Plan& plan, double share) {
    return plan::marks_at(on_the_way(plan, {"2"}, share), {"2"}).at({"Ada"});
}

TEST(OnTheWay, GoesEvenlyAlongThePath) {
    const plan::Plan plan = three_beats();
    EXPECT_EQ(ada_at(plan, 0.0).at, (Vec2{1, 1}));
    // 2 of 7 m: still to the right; 5 of 7 m: 2 m up the second leg.
    EXPECT_NEAR((ada_at(plan, 2.0 / 7.0).at - Vec2{3, 1}).norm(), 0.0, 1e-12);
    EXPECT_NEAR((ada_at(plan, 5.0 / 7.0).at - Vec2{4, 3}).norm(), 0.0, 1e-12);
    EXPECT_EQ(ada_at(plan, -3.0).at, (Vec2{1, 1}));
}

TEST(OnTheWay, LooksWhereItGoesAndStands) {
    const plan::Plan plan = three_beats();
    const plan::Mark first = ada_at(plan, 2.0 / 7.0);
    EXPECT_NEAR(std::get<Angle>(first.faces).deg(), 0.0, 1e-12);
    EXPECT_EQ(first.pose, plan::Pose::stand);
    EXPECT_NEAR(std::get<Angle>(ada_at(plan, 5.0 / 7.0).faces).deg(), 90.0, 1e-12);
}

TEST(OnTheWay, EndsAsThePlanItself) {
    const plan::Plan plan = three_beats();
    EXPECT_EQ(on_the_way(plan, {"2"}, 1.0), plan);
    EXPECT_EQ(ada_at(plan, 1.0).pose, plan::Pose::sit);
    EXPECT_EQ(on_the_way(plan, {"1"}, 0.5), plan);
    EXPECT_EQ(on_the_way(plan, {"9"}, 0.5), plan);
}

TEST(OnTheWay, LeavesOthersAndOtherBeatsAlone) {
    const plan::Plan plan = three_beats();
    const plan::Plan half = on_the_way(plan, {"2"}, 0.5);
    EXPECT_EQ(plan::marks_at(half, {"2"}).at({"Bo"}), plan::marks_at(plan, {"2"}).at({"Bo"}));
    EXPECT_EQ(half.beats[0], plan.beats[0]);
    EXPECT_EQ(half.shots, plan.shots);
}

} // namespace
} // namespace throwline::edit
