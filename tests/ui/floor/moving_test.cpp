#include "ui/floor/floor_case.h"

#include "edit/handles.h"
#include "edit/moves.h"

#include <algorithm>

namespace throwline::ui {
namespace {

constexpr double kClose_m = 1e-6;
/// Half a pixel at the scales of these tests.
constexpr double kPixel_m = 0.02;

TEST(FloorMoving, ADragMovesAndOneUndoTakesItBack) {
    const OnFloor on;
    const std::string before = on.desk->plan_text();
    on.drag({3.0, 4.0}, {4.03, 2.57}, Qt::AltModifier);
    EXPECT_NEAR(on.place(scenery("table")).x(), 4.03, kPixel_m);
    EXPECT_NEAR(on.place(scenery("table")).y(), 2.57, kPixel_m);
    EXPECT_EQ(on.desk->chosen(), std::vector<Thing>{scenery("table")});
    on.desk->undo();
    EXPECT_EQ(on.desk->plan_text(), before);
    EXPECT_FALSE(on.desk->history().can_undo());
}

TEST(FloorMoving, WhileDraggedOthersSeeWhereItIs) {
    const OnFloor on;
    on.press({3.0, 4.0}, Qt::AltModifier);
    on.move({4.0, 3.0}, Qt::AltModifier);
    EXPECT_TRUE(on.desk->is_previewing());
    EXPECT_NEAR(edit::place_of(on.desk->shown_context(), scenery("table"))->x(), 4.0, kPixel_m);
    on.key(Qt::Key_Escape);
    EXPECT_FALSE(on.desk->is_previewing());
    on.release({4.0, 3.0});
    EXPECT_FALSE(on.desk->history().can_undo());
}

TEST(FloorMoving, IsDrawnToAWallUnlessAltIsHeld) {
    const OnFloor snapping;
    snapping.press({3.0, 4.0});
    snapping.move({2.0, 4.0});
    snapping.move({0.55, 4.0});
    snapping.release({0.55, 4.0});
    EXPECT_NEAR(snapping.place(scenery("table")).x(), 0.5, kClose_m);
    const OnFloor free;
    free.drag({3.0, 4.0}, {0.55, 4.0}, Qt::AltModifier);
    EXPECT_GT(free.place(scenery("table")).x(), 0.52);
}

TEST(FloorMoving, ATypedLengthIsHowFarItGoes) {
    const OnFloor on;
    on.press({3.0, 4.0}, Qt::AltModifier);
    on.move({3.5, 4.0}, Qt::AltModifier);
    on.type("1.5 m");
    on.enter();
    EXPECT_NEAR(on.place(scenery("table")).x(), 4.5, kClose_m);
    on.release({3.5, 4.0});
    EXPECT_NEAR(on.place(scenery("table")).x(), 4.5, kClose_m);
    EXPECT_EQ(QApplication::focusWidget(), on.floor.get());
}

TEST(FloorMoving, ATextThatIsNoLengthStaysOpenAndChangesNothing) {
    const OnFloor on;
    on.press({3.0, 4.0}, Qt::AltModifier);
    on.move({3.5, 4.0}, Qt::AltModifier);
    on.type("1.5 zz");
    on.enter();
    EXPECT_FALSE(on.desk->history().can_undo());
    auto* line = on.floor->findChild<TypedLine*>();
    EXPECT_TRUE(line->isVisible());
    EXPECT_FALSE(line->accessibleDescription().isEmpty());
}

TEST(FloorMoving, EscapeWhileTypingAfterLettingGoEndsTheDrag) {
    const OnFloor on;
    on.press({3.0, 4.0}, Qt::AltModifier);
    on.move({3.5, 4.0}, Qt::AltModifier);
    on.type("1");
    on.release({3.5, 4.0});
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    EXPECT_FALSE(on.desk->is_previewing());
    on.move({6.0, 2.0}, {}, false);
    EXPECT_FALSE(on.desk->is_previewing());
    EXPECT_FALSE(on.desk->history().can_undo());
}

TEST(FloorMoving, ArrowKeysNudgeByWholeCentimetresAndTen) {
    const OnFloor on;
    on.desk->choose({scenery("table")});
    on.key(Qt::Key_Right);
    EXPECT_NEAR(on.place(scenery("table")).x(), 3.01, kClose_m);
    on.key(Qt::Key_Up, Qt::ShiftModifier);
    EXPECT_NEAR(on.place(scenery("table")).y(), 4.1, kClose_m);
}

TEST(FloorMoving, ArrowKeysNudgeByHalfInchesInAnImperialPlan) {
    plan::Plan plan = small_production();
    plan.units = UnitSystem::imperial;
    const OnFloor on{plan};
    on.desk->choose({scenery("table")});
    on.key(Qt::Key_Left);
    EXPECT_NEAR(on.place(scenery("table")).x(), 3.0 - 0.0127, kClose_m);
}

TEST(FloorMoving, ALockedThingStaysAndSaysWhy) {
    plan::Plan plan = small_production();
    const std::vector<Thing> table{scenery("table")};
    const Result<edit::Step> locked =
        edit::locked({plan, support::shipped_catalogue(), {}}, table, true);
    ASSERT_TRUE(locked);
    OnFloor on{locked->plan};
    on.drag({3.0, 4.0}, {4.0, 3.0});
    EXPECT_NEAR(on.place(scenery("table")).x(), 3.0, kClose_m);
    EXPECT_FALSE(on.said.empty());
}

TEST(FloorMoving, TheTurnHandleTurnsInWholeSteps) {
    const OnFloor on;
    on.click({3.0, 4.0});
    const std::vector<edit::Handle> handles =
        edit::handles_of(on.desk->context(), scenery("table"));
    const auto turn = std::find_if(handles.begin(), handles.end(), [](const edit::Handle& handle) {
        return handle.kind == edit::HandleKind::turn;
    });
    ASSERT_NE(turn, handles.end());
    const Vec2 arm = turn->at - Vec2{3.0, 4.0};
    const Vec2 to = Vec2{3.0, 4.0} + rotated(arm, Angle::degrees(44.0).rad());
    on.drag(turn->at, to);
    const auto& box = std::get<plan::BoxPiece>(on.plan().scenery.front().shape);
    EXPECT_NEAR(box.turn.deg(), 45.0, 1e-6);
}

TEST(FloorMoving, AnAimHandleTakesATypedValueOrTheThingUnderIt) {
    const OnFloor on;
    const Thing camera{Kind::camera, "camera 1", 0};
    on.desk->choose({camera});
    const std::vector<edit::Handle> handles = edit::handles_of(on.desk->context(), camera);
    const auto aim = std::find_if(handles.begin(), handles.end(), [](const edit::Handle& handle) {
        return handle.kind == edit::HandleKind::aim;
    });
    ASSERT_NE(aim, handles.end());
    on.drag(aim->at, {3.0, 4.0});
    const plan::Aim& aimed = on.plan().shots.front().aim;
    ASSERT_TRUE(std::holds_alternative<plan::ThingName>(aimed));
    EXPECT_EQ(std::get<plan::ThingName>(aimed).name, "table");
}

TEST(FloorMoving, ThePictureHasEverythingAgainAfterADrag) {
    const OnFloor on;
    ASSERT_TRUE(on.came_to_rest());
    on.drag({3.0, 4.0}, {4.0, 3.0});
    EXPECT_TRUE(on.came_to_rest());
}

TEST(FloorMoving, WhatIsUndoneWhileItIsHeldStaysUndone) {
    const OnFloor on;
    on.drag({3.0, 4.0}, {4.0, 4.0});
    const plan::PlanPtr moved = on.desk->plan();
    on.press({4.0, 4.0});
    on.move({4.5, 4.5});
    on.desk->undo();
    const plan::PlanPtr before = on.desk->plan();
    ASSERT_NE(before, moved);
    on.release({4.5, 4.5});
    EXPECT_EQ(*on.desk->plan(), *before);
    EXPECT_TRUE(on.desk->history().can_redo());
}

} // namespace
} // namespace throwline::ui
