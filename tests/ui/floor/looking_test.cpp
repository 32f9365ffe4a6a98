#include "ui/floor/floor_case.h"
#include "ui/floor/foot.h"
#include "ui/floor/hands.h"
#include "ui/floor/rulers.h"

#include <QAccessible>
#include <QComboBox>
#include <QLabel>
#include <cmath>

namespace throwline::ui {
namespace {

constexpr double kClose_m = 1e-9;

TEST(FloorLooking, TheWheelKeepsThePointUnderThePointer) {
    const OnFloor on;
    const QPointF at = on.px({7.0, 2.0});
    for (const int notches : {3, -5, 1}) {
        const double before = on.floor->view().mm_per_m;
        on.wheel(at, notches);
        EXPECT_EQ(on.floor->view().mm_per_m > before, notches > 0);
        EXPECT_NEAR((on.floor->view().plan_at(at) - Vec2{7.0, 2.0}).norm(), 0.0, kClose_m);
    }
}

TEST(FloorLooking, TheMiddleButtonShiftsTheSheet) {
    const OnFloor on;
    const QPointF from = on.px({5.0, 4.0});
    const QPointF to = from + QPointF{40.0, -25.0};
    on.mouse(QEvent::MouseButtonPress, from, Qt::MiddleButton, Qt::MiddleButton);
    on.mouse(QEvent::MouseMove, to, Qt::NoButton, Qt::MiddleButton);
    on.mouse(QEvent::MouseButtonRelease, to, Qt::MiddleButton, {});
    EXPECT_NEAR((on.floor->view().plan_at(to) - Vec2{5.0, 4.0}).norm(), 0.0, kClose_m);
}

TEST(FloorLooking, SpaceHeldShiftsTheSheetInsteadOfChoosing) {
    const OnFloor on;
    QTest::keyPress(on.floor.get(), Qt::Key_Space);
    const QPointF from = on.px({3.0, 4.0});
    on.mouse(QEvent::MouseButtonPress, from, Qt::LeftButton, Qt::LeftButton);
    on.mouse(QEvent::MouseMove, from + QPointF{30, 0}, Qt::NoButton, Qt::LeftButton);
    on.mouse(QEvent::MouseButtonRelease, from + QPointF{30, 0}, Qt::LeftButton, {});
    QTest::keyRelease(on.floor.get(), Qt::Key_Space);
    EXPECT_TRUE(on.desk->chosen().empty());
    EXPECT_NEAR(on.px({3.0, 4.0}).x(), from.x() + 30.0, 1e-6);
}

TEST(FloorLooking, HomeShowsTheWholePlan) {
    const OnFloor on;
    on.wheel(on.px({1.0, 1.0}), 12);
    on.key(Qt::Key_Home);
    for (const Vec2& corner : on.plan().room.outline) {
        EXPECT_TRUE(on.floor->view().window_px.contains(on.px(corner)));
    }
}

TEST(FloorLooking, AScaleIsSetExactlyAndNamed) {
    OnFloor on;
    EXPECT_TRUE(on.floor->set_scale(QStringLiteral("1:50")));
    EXPECT_EQ(on.floor->scale_shown(), QStringLiteral("1:50"));
    // A metre is 20 mm of paper at the screen's nominal resolution.
    const QPointF metre = on.px({1.0, 0.0}) - on.px({0.0, 0.0});
    EXPECT_NEAR(metre.x(), 20.0 / 25.4 * on.floor->logicalDpiX(), 1e-6);
    EXPECT_FALSE(on.floor->set_scale(QStringLiteral("large")));
    EXPECT_FALSE(on.said.empty());
    on.floor->zoom_in();
    EXPECT_TRUE(on.floor->scale_shown().startsWith(QStringLiteral("about ")));
}

TEST(FloorLooking, AScaleTypedAtTheFootIsTaken) {
    const OnFloor on;
    auto* scale = on.floor->findChild<QComboBox*>();
    scale->setFocus();
    scale->setEditText(QStringLiteral("1:100"));
    QTest::keyClick(scale, Qt::Key_Return);
    EXPECT_NEAR(on.floor->view().ratio(), 100.0, 1e-9);
}

TEST(FloorLooking, ZoomingToSomethingBringsItIntoTheMiddle) {
    const OnFloor on;
    on.floor->zoom_to({scenery("table")});
    EXPECT_LT((on.floor->view().middle() - Vec2{3.0, 4.0}).norm(), 0.1);
}

TEST(FloorLooking, AnEmptyFloorIsLookedAtToo) {
    const OnFloor on{plan::Plan{}};
    on.floor->fit();
    EXPECT_TRUE(std::isfinite(on.floor->view().mm_per_m));
    EXPECT_TRUE(on.came_to_rest());
}

TEST(FloorLooking, ThePictureComesToShowThePlan) {
    const OnFloor on;
    ASSERT_TRUE(on.came_to_rest());
    const QImage shown = on.floor->grab().toImage();
    const double ratio = shown.devicePixelRatio();
    int dark = 0;
    const QPointF wall = on.px({4.0, -0.05});
    for (int dy = -6; dy <= 6; ++dy) {
        const QPoint at = (QPointF{wall.x(), wall.y() + dy} * ratio).toPoint();
        dark += qGray(shown.pixel(at)) < 128 ? 1 : 0;
    }
    EXPECT_GT(dark, 0);
}

/// The levels of a plan as a picture, and of what.
FloorLevels levels_of(const LevelsWanted& of) {
    const stage::Stage stage = stage::raise(*of.plan, *of.catalogue, of.beat);
    return {of, std::make_shared<const sheet::LevelPicture>(sheet::level_picture(
                    *stage::level_map(stage, of.plan->room.outline, {}), of.plan->units))};
}

TEST(FloorLooking, LevelsAreShownWithThePlanThatTheyAreOf) {
    plan::Plan lit = small_production();
    testing_support::hang_lamp(lit, "1", "Fresnel 1 kW", {5, 3, 3.5}, Vec3{5, 5, 1.0});
    OnFloor on{lit};
    sheet::Overlays overlays;
    overlays.levels = true;
    on.desk->set_overlays(overlays);
    const auto grabbed = [&] {
        EXPECT_TRUE(on.came_to_rest());
        return on.floor->grab().toImage();
    };
    ASSERT_TRUE(support::came_to([&] { return on.desk->analysis() != nullptr; }));
    const QImage without = grabbed();
    const LevelsWanted shown{on.desk->shown(), on.desk->catalogue(), on.desk->now().beat};
    LevelsWanted older = shown;
    older.plan = std::make_shared<const plan::Plan>(lit);
    on.floor->set_levels(levels_of(older));
    EXPECT_EQ(grabbed(), without);
    on.floor->set_levels(levels_of(shown));
    EXPECT_NE(grabbed(), without);
}

TEST(FloorRulers, StepsAreRoundInTheUnitsOfThePlan) {
    EXPECT_NEAR(ruler_steps(75.0, UnitSystem::metric, 60.0).long_m, 1.0, 1e-12);
    EXPECT_NEAR(ruler_steps(750.0, UnitSystem::metric, 60.0).long_m, 0.1, 1e-12);
    EXPECT_NEAR(ruler_steps(75.0, UnitSystem::imperial, 40.0).long_m, 2 * 0.3048, 1e-12);
    EXPECT_EQ(ruler_figure(2.5, UnitSystem::metric), "2.5");
    EXPECT_EQ(ruler_figure(-1e-17, UnitSystem::metric), "0");
    EXPECT_EQ(ruler_figure(1.5 * 0.3048, UnitSystem::imperial), "1'6\"");
    EXPECT_EQ(ruler_figure(-0.5 * 0.3048, UnitSystem::imperial), "-6\"");
}

/// What each hand says at first, and when something is chosen, being boxed or being drawn.
TEST(FloorHints, FitBesideTheScaleInASmallWindow) {
    plan::Plan imperial = small_production();
    imperial.units = UnitSystem::imperial;
    const OnFloor on{std::move(imperial), {706, 420}};
    const auto* foot = on.floor->findChild<FloorFoot*>();
    const auto expect_whole = [&] {
        bool has_hint = false;
        for (const QLabel* label : foot->findChildren<QLabel*>()) {
            has_hint = has_hint || label->toolTip().size() > 10;
            EXPECT_FALSE(label->text().contains(QChar{0x2026})) << label->text().toStdString();
        }
        EXPECT_TRUE(has_hint);
    };
    for (const HandRow& row : hands()) {
        on.floor->set_hand(row.id);
        expect_whole();
        on.click({2.0, 2.0});
        on.move({4.0, 3.0}, {}, false);
        expect_whole();
    }
    on.floor->set_hand(HandId::choose);
    on.desk->choose({scenery("table")});
    expect_whole();
    on.press({3.0, 4.0});
    on.move({3.5, 4.5});
    expect_whole();
    on.release({3.5, 4.5});
    on.press({1.0, 7.0});
    on.move({2.0, 6.0});
    expect_whole();
}

TEST(FloorAccess, EveryThingIsAnItemWithItsNameAndPlace) {
    const OnFloor on;
    QAccessibleInterface* floor = QAccessible::queryAccessibleInterface(on.floor.get());
    ASSERT_NE(floor, nullptr);
    ASSERT_GE(floor->childCount(), static_cast<int>(on.floor->things().size()));
    QStringList names;
    for (int i = 0; i < static_cast<int>(on.floor->things().size()); ++i) {
        names << floor->child(i)->text(QAccessible::Name);
        EXPECT_FALSE(names.back().isEmpty());
        EXPECT_EQ(floor->indexOfChild(floor->child(i)), i);
    }
    EXPECT_FALSE(names.filter(QStringLiteral("table, 3.00 m across, 4.00 m up")).isEmpty());
}

TEST(FloorAccess, WhatIsChosenHasTheFocus) {
    const OnFloor on;
    on.desk->choose({scenery("table")});
    QAccessibleInterface* floor = QAccessible::queryAccessibleInterface(on.floor.get());
    QAccessibleInterface* focus = floor->focusChild();
    ASSERT_NE(focus, nullptr);
    EXPECT_TRUE(focus->text(QAccessible::Name).startsWith(QStringLiteral("table")));
    EXPECT_TRUE(focus->state().selected);
}

TEST(FloorAccess, NoWidgetOnTheFloorIsWithoutAName) {
    const OnFloor on;
    for (const QWidget* widget : on.floor->findChildren<QWidget*>()) {
        if (widget->focusPolicy() != Qt::NoFocus && widget->isVisible()) {
            QAccessibleInterface* access =
                QAccessible::queryAccessibleInterface(const_cast<QWidget*>(widget));
            EXPECT_FALSE(access->text(QAccessible::Name).isEmpty())
                << widget->metaObject()->className();
        }
    }
}

} // namespace
} // namespace throwline::ui
