#include "edit/handles.h"

#include "plan/places.h"
#include "support/demo_plan.h"
#include "support/small_plan.h"
#include "support/taken_step.h"

#include <gtest/gtest.h>
#include <numbers>

namespace throwline::edit {
namespace {

using support::shipped_catalogue;
using support::taken;
using support::why_not;
using testing_support::add_camera;
using testing_support::add_person;
using testing_support::add_scenery;
using testing_support::add_shot;
using testing_support::bare_room;
using testing_support::box_piece;
using testing_support::hang_lamp;

/// A bare room of 10 m by 8 m and what a test puts in it.
struct Held {
    plan::Plan plan = bare_room();

    Context context() const { return {plan, shipped_catalogue(), {{"1"}, {}}}; }
    std::vector<Handle> all(Kind kind, const std::string& name, int index = 0) const {
        return handles_of(context(), {kind, name, index});
    }
    Handle one(Kind kind, const std::string& name, HandleKind wanted, int index = 0) const {
        for (const Handle& handle : all(kind, name)) {
            if (handle.kind == wanted && handle.index == index) {
                return handle;
            }
        }
        ADD_FAILURE() << name << " has no such handle";
        return {};
    }
    plan::Plan drag(const Handle& handle, const Vec2& to,
                    const std::optional<Thing>& onto = std::nullopt) const {
        return taken(dragged(context(), handle, to, onto));
    }
    plan::Plan type(const Handle& handle, const std::string& text) const {
        return taken(typed(context(), handle, text));
    }
    std::string why_not_typed(const Handle& handle, const std::string& text) const {
        return why_not(typed(context(), handle, text));
    }
};

/// Camera 1 at (5, 1) looks 4 m up the page at Ada.
Held with_camera() {
    Held held;
    add_person(held.plan, "Ada", {5.0, 5.0}, Angle::degrees(-90));
    add_camera(held.plan, "camera 1");
    add_shot(held.plan, "1A", "camera 1", {5.0, 1.0}, {"Ada"}).focal = Length::millimetres(20);
    return held;
}

TEST(RoomHandles, AreTheEndsOfAWall) {
    const Held held;
    const auto handles = held.all(Kind::wall, "", 3);
    ASSERT_EQ(handles.size(), 2U);
    EXPECT_EQ(handles[0].at, (Vec2{0, 8}));
    EXPECT_EQ(handles[1].at, (Vec2{0, 0}));
    EXPECT_EQ(handles[1].index, 0);
    const plan::Plan moved = held.drag(handles[0], {-1, 8});
    EXPECT_EQ(moved.room.outline[3], (Vec2{-1, 8}));
}

TEST(RoomHandles, TypedLengthIsThatOfTheWallBefore) {
    const Held held;
    const auto handles = held.all(Kind::wall, "", 0);
    EXPECT_EQ(value_shown(held.context(), handles[1]), "10.00 m");
    EXPECT_EQ(held.type(handles[1], "6.5").room.outline[1], (Vec2{6.5, 0}));
}

TEST(RoomHandles, RefuseWallsThatCross) {
    const Held held;
    EXPECT_FALSE(dragged(held.context(), held.all(Kind::wall, "", 0)[0], {5, 12}));
    EXPECT_FALSE(dragged(held.context(), held.all(Kind::wall, "", 0)[0], {10, 0}));
}

TEST(RoomHandles, EdgesWidenAnOpeningAsFarAsTheNext) {
    Held held;
    plan::Opening door;
    door.id = {"door"};
    door.from_start = Length::metres(2);
    door.width = Length::metres(1);
    door.head = Length::metres(2);
    plan::Opening window = door;
    window.id = {"window"};
    window.from_start = Length::metres(4);
    held.plan.room.openings = {door, window};
    const Handle far = held.one(Kind::opening, "door", HandleKind::edge, 1);
    EXPECT_EQ(far.at, (Vec2{3, 0}));
    EXPECT_EQ(value_shown(held.context(), far), "1.00 m");
    EXPECT_DOUBLE_EQ(held.drag(far, {3.75, 0.4}).room.openings[0].width.m(), 1.75);
    EXPECT_NEAR(held.type(far, "80 cm").room.openings[0].width.m(), 0.8, 1e-12);
    EXPECT_EQ(dragged(held.context(), far, {4.5, 0}).error().message, "window is there");
    EXPECT_EQ(dragged(held.context(), far, {1.0, 0}).error().message,
              "an opening is 10 cm wide or more");
    const Handle near = held.one(Kind::opening, "door", HandleKind::edge, 0);
    const plan::Opening wider = held.drag(near, {-5, 0}).room.openings[0];
    EXPECT_DOUBLE_EQ(wider.from_start.m(), 0.0);
    EXPECT_DOUBLE_EQ(wider.width.m(), 3.0);
}

TEST(PipeHandles, LampsStayOnAShorterPipe) {
    Held held;
    hang_lamp(held.plan, "lamp 1", "Fresnel 650 W", {2, 2, 3}, Vec3{2, 4, 1});
    std::get<plan::PipeHang>(held.plan.lamps[0].mount).along = Length::metres(0.9);
    const Handle end = held.one(Kind::pipe, "pipe of lamp 1", HandleKind::corner, 1);
    const plan::Plan shorter = held.drag(end, {2.5, 2});
    EXPECT_DOUBLE_EQ(std::get<plan::PipeHang>(shorter.lamps[0].mount).along.m(), 0.5);
    EXPECT_FALSE(dragged(held.context(), end, {2, 2}));
}

TEST(SceneryHandles, FlatsAreAddedAtTheEndThatIsDragged) {
    Held held;
    plan::FlatRun run;
    run.from = {1, 2};
    run.widths = {Length::metres(1.2), Length::metres(0.6)};
    run.height = Length::metres(2.4);
    add_scenery(held.plan, "flats", run);
    const auto after = [&](int end, const Vec2& to) {
        const Handle handle = held.one(Kind::scenery, "flats", HandleKind::corner, end);
        return std::get<plan::FlatRun>(held.drag(handle, to).scenery[0].shape);
    };
    // 4.2 m to the right of the start: 1.8 m and two more of 1.2 m.
    const plan::FlatRun longer = after(1, {5.2, 2});
    EXPECT_EQ(longer.from, (Vec2{1, 2}));
    EXPECT_NEAR(longer.total_width().m(), 4.2, 1e-12);
    // The start is pulled 1.2 m farther left; the end, at (2.8, 2), stays.
    const plan::FlatRun back = after(0, {-0.2, 2});
    EXPECT_NEAR((back.from - Vec2{-0.2, 2.0}).norm(), 0.0, 1e-9);
    EXPECT_DOUBLE_EQ(back.widths.front().m(), 1.2);
    EXPECT_DOUBLE_EQ(back.widths.back().m(), 0.6);
    EXPECT_EQ(back.widths.size(), 3U);
    // Turned about the start.
    EXPECT_NEAR(after(1, {1, 3.8}).heading.deg(), 90.0, 1e-9);
    EXPECT_EQ(after(1, {1, 3.8}).widths, run.widths);
}

TEST(SceneryHandles, TurnedByItsFront) {
    Held held;
    add_scenery(held.plan, "crate", box_piece({4, 4}, 2.0, 1.0, 1.0));
    const Handle turn = held.one(Kind::scenery, "crate", HandleKind::turn);
    EXPECT_NEAR((turn.at - Vec2{4.0, 3.2}).norm(), 0.0, 1e-9);
    EXPECT_EQ(value_shown(held.context(), turn), "turn -90°");
    const auto shape = held.drag(turn, {8, 4}).scenery[0].shape;
    EXPECT_NEAR(std::get<plan::BoxPiece>(shape).turn.deg(), 90.0, 1e-9);
    const auto typed_shape = held.type(turn, "-75").scenery[0].shape;
    EXPECT_NEAR(std::get<plan::BoxPiece>(typed_shape).turn.deg(), 15.0, 1e-9);
    EXPECT_NE(held.why_not_typed(turn, "left"), "");
}

TEST(SceneryHandles, PointsOfADrapeMove) {
    Held held;
    add_scenery(held.plan, "drape", plan::Drape{{{1, 1}, {3, 1}, {3, 4}}, Length::metres(3)});
    const Handle last = held.one(Kind::scenery, "drape", HandleKind::corner, 2);
    EXPECT_EQ(value_shown(held.context(), last), "3.00 m");
    const auto along = std::get<plan::Drape>(held.type(last, "2 m").scenery[0].shape).along;
    EXPECT_EQ(along[2], (Vec2{3, 3}));
    EXPECT_EQ(dragged(held.context(), last, {3, 1}).error().message, "another corner is there");
}

TEST(PersonHandles, LookWhereTheHandleGoes) {
    Held held;
    add_person(held.plan, "Ada", {5, 5}, Angle::degrees(0));
    add_person(held.plan, "Bo", {2, 5}, Angle::degrees(0));
    const Handle turn = held.one(Kind::person, "Ada", HandleKind::turn);
    EXPECT_NEAR((turn.at - Vec2{5.6, 5.0}).norm(), 0.0, 1e-9);
    const auto faces = [](const plan::Plan& plan) {
        return std::get<plan::Mark>(plan.beats[0].marks.at({"Ada"})).faces;
    };
    EXPECT_NEAR(std::get<Angle>(faces(held.drag(turn, {5, 9}))).deg(), 90.0, 1e-9);
    const Thing bo{Kind::person, "Bo", 0};
    EXPECT_EQ(std::get<plan::ThingName>(faces(held.drag(turn, {2, 5}, bo))).name, "Bo");
    const Thing self{Kind::person, "Ada", 0};
    EXPECT_TRUE(std::holds_alternative<Angle>(faces(held.drag(turn, {2, 5}, self))));
    const Thing wall{Kind::wall, "", 0};
    EXPECT_TRUE(std::holds_alternative<Angle>(faces(held.drag(turn, {5, 0}, wall))));
    EXPECT_NEAR(std::get<Angle>(faces(held.type(turn, "12° 30'"))).deg(), 12.5, 1e-9);
}

TEST(PersonHandles, PathOfTheBeatCanBeDrawnElsewhere) {
    Held held;
    add_person(held.plan, "Ada", {1, 1}, Angle{});
    plan::Mark there;
    there.at = {5, 5};
    there.path = {{1, 5}};
    held.plan.beats.push_back({{"2"}, {}, {{{"Ada"}, there}}, {}});
    const Context second{held.plan, shipped_catalogue(), {{"2"}, {}}};
    const auto handles = handles_of(second, {Kind::person, "Ada", 0});
    ASSERT_EQ(handles.size(), 2U);
    EXPECT_EQ(handles[1].kind, HandleKind::path);
    const plan::Plan after = taken(dragged(second, handles[1], {3, 6}));
    EXPECT_EQ(std::get<plan::Mark>(after.beats[1].marks.at({"Ada"})).path[0], (Vec2{3, 6}));
    EXPECT_EQ(held.all(Kind::person, "Ada").size(), 1U);
}

TEST(CameraHandles, CoverageIsAsWideAsThePictureAtTheSubject) {
    const Held held = with_camera();
    const Handle left = held.one(Kind::camera, "camera 1", HandleKind::coverage_left);
    const Handle right = held.one(Kind::camera, "camera 1", HandleKind::coverage_right);
    EXPECT_LT(left.at.x(), 5.0);
    EXPECT_GT(right.at.x(), 5.0);
    // 9.59 mm of chip at 20 mm: 0.4795 m across for each metre away.
    const double away_m = left.at.y() - 1.0;
    EXPECT_NEAR(right.at.x() - left.at.x(), 0.4795 * away_m, 1e-6);
    // At her face, somewhat in front of her middle.
    EXPECT_NEAR(away_m, 4.0, 0.2);
    EXPECT_EQ(value_shown(held.context(), left), "20 mm");
}

TEST(CameraHandles, DraggingAnEdgeSetsTheFocalLength) {
    const Held held = with_camera();
    const Handle left = held.one(Kind::camera, "camera 1", HandleKind::coverage_left);
    // An edge at 1 in 4 off the axis: f = 9.59 / 2 / (1/4) = 19.18 mm, in steps of half a mm.
    EXPECT_NEAR(held.drag(left, {4.0, 5.0}).shots[0].focal->mm(), 19.0, 1e-9);
    // 1 in 10: 47.95 mm.
    EXPECT_NEAR(held.drag(left, {4.6, 5.0}).shots[0].focal->mm(), 48.0, 1e-9);
    // Dragging the right edge the same distance off the axis gives the same.
    const Handle right = held.one(Kind::camera, "camera 1", HandleKind::coverage_right);
    EXPECT_NEAR(held.drag(right, {5.4, 5.0}).shots[0].focal->mm(), 48.0, 1e-9);
}

TEST(CameraHandles, ZoomStopsAtItsEnds) {
    const Held held = with_camera();
    const Handle left = held.one(Kind::camera, "camera 1", HandleKind::coverage_left);
    EXPECT_NEAR(held.drag(left, {-9.0, 1.5}).shots[0].focal->mm(), 7.6, 1e-9);
    EXPECT_NEAR(held.drag(left, {5.0, 5.0}).shots[0].focal->mm(), 137.0, 1e-9);
}

TEST(CameraHandles, ExtenderReachesTwiceAsFar) {
    Held held = with_camera();
    held.plan.shots[0].extender = true;
    held.plan.shots[0].focal = Length::millimetres(40);
    const Handle left = held.one(Kind::camera, "camera 1", HandleKind::coverage_left);
    EXPECT_NEAR(held.drag(left, {5.0, 5.0}).shots[0].focal->mm(), 274.0, 1e-9);
}

TEST(CameraHandles, FocalLengthIsTypedInMillimetres) {
    const Held held = with_camera();
    const Handle left = held.one(Kind::camera, "camera 1", HandleKind::coverage_left);
    EXPECT_NEAR(held.type(left, "35").shots[0].focal->mm(), 35.0, 1e-9);
    EXPECT_NEAR(held.type(left, "12,3 mm").shots[0].focal->mm(), 12.3, 1e-9);
    EXPECT_EQ(held.why_not_typed(left, "500"), "the lens goes from 7.6 mm to 137 mm");
    EXPECT_EQ(held.why_not_typed(left, "-35"), "the lens goes from 7.6 mm to 137 mm");
    EXPECT_NE(held.why_not_typed(left, "wide"), "");
}

TEST(CameraHandles, PrimeHasNoCoverageToDrag) {
    Held held = with_camera();
    held.plan.cameras[0].sensor = "Super 35 16:9";
    held.plan.cameras[0].lens = "prime 18 T2";
    held.plan.shots[0].focal.reset();
    const auto handles = held.all(Kind::camera, "camera 1");
    ASSERT_EQ(handles.size(), 1U);
    EXPECT_EQ(handles[0].kind, HandleKind::aim);
}

TEST(CameraHandles, AimFollowsWhatIsUnderThePointer) {
    Held held = with_camera();
    add_person(held.plan, "Bo", {7, 6}, Angle{});
    const Handle aim = held.one(Kind::camera, "camera 1", HandleKind::aim);
    EXPECT_NEAR(aim.at.x(), 5.0, 1e-9);
    const Thing bo{Kind::person, "Bo", 0};
    EXPECT_EQ(std::get<plan::ThingName>(held.drag(aim, {7, 6}, bo).shots[0].aim).name, "Bo");
    const Thing self{Kind::camera, "camera 1", 0};
    EXPECT_TRUE(std::holds_alternative<Vec3>(held.drag(aim, {7, 6}, self).shots[0].aim));
}

TEST(CameraHandles, AimAtTheFloorKeepsItsHeight) {
    Held held = with_camera();
    held.plan.shots[0].aim = Vec3{5, 4, 0.9};
    const Handle aim = held.one(Kind::camera, "camera 1", HandleKind::aim);
    EXPECT_EQ(aim.at, (Vec2{5, 4}));
    EXPECT_EQ(std::get<Vec3>(held.drag(aim, {8, 4}).shots[0].aim), (Vec3{8, 4, 0.9}));
    EXPECT_FALSE(dragged(held.context(), aim, {5, 1}));
}

TEST(CameraHandles, NoneWithoutAShot) {
    Held held;
    add_camera(held.plan, "camera 1");
    held.plan.cameras[0].home = Vec2{1, 1};
    EXPECT_TRUE(held.all(Kind::camera, "camera 1").empty());
}

/// A Fresnel 650 W, 3 m over the floor, straight down: 11 degrees at spot, 50 at flood.
Held with_lamp() {
    Held held;
    hang_lamp(held.plan, "lamp 1", "Fresnel 650 W", {4, 4, 3}, Vec3{4, 4, 0});
    return held;
}

TEST(LampHandles, PoolIsAsWideAsTheBeam) {
    const Held held = with_lamp();
    const Handle pool = held.one(Kind::lamp, "lamp 1", HandleKind::pool);
    // 3 m x tan 5.5 degrees = 0.2889 m.
    EXPECT_NEAR((pool.at - Vec2{4, 4}).norm(), 0.28887, 1e-5);
    EXPECT_EQ(value_shown(held.context(), pool), "0.58 m across");
}

TEST(LampHandles, DraggingTheRimFloods) {
    const Held held = with_lamp();
    const Handle pool = held.one(Kind::lamp, "lamp 1", HandleKind::pool);
    // Half of 30.5 degrees, half way between 11 and 50: 3 m x tan 15.25 degrees = 0.8179 m.
    EXPECT_NEAR(held.drag(pool, {4.8179, 4}).lamps[0].focus, 0.5, 1e-9);
    EXPECT_NEAR(held.type(pool, "1.636").lamps[0].focus, 0.5, 1e-9);
    EXPECT_DOUBLE_EQ(held.drag(pool, {4, 9}).lamps[0].focus, 1.0);
    EXPECT_DOUBLE_EQ(held.drag(pool, {4, 4}).lamps[0].focus, 0.0);
    EXPECT_EQ(held.why_not_typed(pool, "5 m"), "the pool goes from 0.58 m to 2.80 m across there");
}

TEST(LampHandles, FixedBeamHasNoRimToDrag) {
    Held held = with_lamp();
    held.plan.lamps[0].instrument = "LED panel 60x30 soft";
    const auto handles = held.all(Kind::lamp, "lamp 1");
    ASSERT_EQ(handles.size(), 1U);
    EXPECT_EQ(handles[0].kind, HandleKind::aim);
}

TEST(LampHandles, AimKeepsItsHeightOnAnEmptyFloor) {
    Held held = with_lamp();
    add_person(held.plan, "Ada", {6, 6}, Angle{});
    held.plan.lamps[0].aim = Vec3{4, 5, 1.2};
    const Handle aim = held.one(Kind::lamp, "lamp 1", HandleKind::aim);
    EXPECT_EQ(aim.at, (Vec2{4, 5}));
    EXPECT_EQ(std::get<Vec3>(held.drag(aim, {5, 5}).lamps[0].aim), (Vec3{5, 5, 1.2}));
    const Thing ada{Kind::person, "Ada", 0};
    EXPECT_EQ(std::get<plan::ThingName>(held.drag(aim, {6, 6}, ada).lamps[0].aim).name, "Ada");
    EXPECT_EQ(std::get<Vec3>(held.type(aim, "3 m").lamps[0].aim), (Vec3{4, 7, 1.2}));
}

TEST(BoomHandles, MicrophoneIsMeasuredFromTheOperator) {
    Held held;
    plan::Boom boom;
    boom.id = {"boom"};
    boom.operator_at = {2, 2};
    boom.microphone = {4, 2};
    held.plan.booms = {boom};
    const Handle microphone = held.one(Kind::boom, "boom", HandleKind::microphone);
    EXPECT_EQ(value_shown(held.context(), microphone), "2.00 m");
    EXPECT_EQ(held.type(microphone, "2.5").booms[0].microphone, (Vec2{4.5, 2}));
    EXPECT_EQ(held.drag(microphone, {3, 3}).booms[0].microphone, (Vec2{3, 3}));
    EXPECT_EQ(held.why_not_typed(microphone, "0"), "a length is above 0");
}

TEST(Handles, LockedAndHiddenThingsHaveNone) {
    Held held = with_camera();
    const Handle aim = held.one(Kind::camera, "camera 1", HandleKind::aim);
    held.plan.arrangement.locked = {"camera 1"};
    EXPECT_TRUE(held.all(Kind::camera, "camera 1").empty());
    EXPECT_FALSE(dragged(held.context(), aim, {4, 4}));
    EXPECT_FALSE(typed(held.context(), aim, "3 m"));
    held.plan.arrangement.locked.clear();
    held.plan.arrangement.hidden = {"camera 1"};
    EXPECT_TRUE(held.all(Kind::camera, "camera 1").empty());
}

TEST(Handles, OfWhatIsGoneCannotBeDragged) {
    Held held = with_camera();
    const Handle aim = held.one(Kind::camera, "camera 1", HandleKind::aim);
    held.plan.cameras.clear();
    held.plan.shots.clear();
    EXPECT_EQ(dragged(held.context(), aim, {4, 4}).error().message,
              "camera 1 is not there any more");
    EXPECT_EQ(value_shown(held.context(), aim), "");
}

} // namespace
} // namespace throwline::edit
