#include "ui/running_order/running_order.h"

#include "sheet/finding_rows.h"
#include "ui/desk_case.h"
#include "ui/running_order/order_strip.h"

#include <QAccessible>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QScrollBar>
#include <QWheelEvent>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::came_to;
using support::demo_plan;

/// A running order on a desk with a demo, shown.
struct Shown {
    std::unique_ptr<Desk> desk;
    std::unique_ptr<RunningOrder> order;
    QStringList said;

    explicit Shown(plan::Plan plan = demo_plan("cookery.json"), int width = 900) {
        desk = support::desk_with(std::move(plan));
        order = std::make_unique<RunningOrder>(*desk);
        QObject::connect(desk.get(), &Desk::said, order.get(),
                         [this](const QString& sentence) { said.append(sentence); });
        order->resize(width, 150);
        order->show();
        strip().setFocus();
    }
    OrderStrip& strip() const { return order->strip(); }
    QPoint middle_of(const OrderPlace& place) const { return strip().shown_at(place).center(); }
    /// Whether every shot has a picture of the plan on the desk.
    bool has_all_pictures() const {
        return std::all_of(desk->plan()->shots.begin(), desk->plan()->shots.end(),
                           [&](const plan::Shot& shot) {
                               const FramePicture* picture = strip().pictures().of(shot.id);
                               return picture != nullptr && picture->plan == desk->plan();
                           });
    }
    void drag(const QPoint& from, const QPoint& to) const {
        QWidget* viewport = strip().viewport();
        QTest::mousePress(viewport, Qt::LeftButton, {}, from);
        QTest::mouseMove(viewport, (from + to) / 2);
        QTest::mouseMove(viewport, to);
        QTest::mouseRelease(viewport, Qt::LeftButton, {}, to);
    }
};

std::string first_shot(const Desk& desk) {
    return desk.plan()->shots.front().id.name;
}

TEST(RunningOrder, ShowsAPictureOfEveryShot) {
    Shown shown;
    EXPECT_TRUE(came_to([&] { return shown.has_all_pictures(); }));
    const FramePicture* picture = shown.strip().pictures().of({"1A"});
    EXPECT_FALSE(picture->image.isNull());
    EXPECT_TRUE(picture->focal);
}

TEST(RunningOrder, KeepsTheOldPictureUntilTheNewOneIsThere) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.has_all_pictures(); }));
    const plan::PlanPtr before = shown.desk->plan();
    const QImage old = shown.strip().pictures().of({"1A"})->image;
    plan::Plan moved = *before;
    moved.shots.front().at += Vec2{0.5, 0.2};
    ASSERT_TRUE(shown.desk->take(edit::Step{"Move camera 2", std::move(moved), {}}));
    EXPECT_EQ(shown.strip().pictures().of({"1A"})->plan, before);
    ASSERT_TRUE(came_to([&] { return shown.has_all_pictures(); }));
    EXPECT_NE(shown.strip().pictures().of({"1A"})->image, old);
}

TEST(RunningOrder, AClickGoesThere) {
    Shown shown;
    QTest::mouseClick(shown.strip().viewport(), Qt::LeftButton, {}, shown.middle_of({0, 1}));
    EXPECT_EQ(shown.desk->now(), (edit::Now{{"1"}, {"1B"}}));
    QTest::mouseClick(shown.strip().viewport(), Qt::LeftButton, {}, shown.middle_of({0, -1}));
    EXPECT_EQ(shown.desk->now(), (edit::Now{{"1"}, {}}));
}

TEST(RunningOrder, ArrowsGoAlongAndEnterGoesThere) {
    Shown shown;
    shown.strip().set_focus_place({0, -1});
    for (int i = 0; i < 6; ++i) {
        QTest::keyClick(&shown.strip(), Qt::Key_Right);
    }
    EXPECT_EQ(shown.strip().focus_place(), (OrderPlace{1, 1}));
    EXPECT_EQ(shown.desk->now().shot.name, "1A");
    QTest::keyClick(&shown.strip(), Qt::Key_Return);
    EXPECT_EQ(shown.desk->now().shot.name, "2B");
    QTest::keyClick(&shown.strip(), Qt::Key_Home);
    EXPECT_EQ(shown.strip().focus_place(), (OrderPlace{0, -1}));
    QTest::keyClick(&shown.strip(), Qt::Key_End);
    EXPECT_EQ(shown.strip().focus_place(), (OrderPlace{3, 2}));
    EXPECT_GT(shown.strip().horizontalScrollBar()->value(), 0);
}

TEST(RunningOrder, AltWithAnArrowReordersInOneStep) {
    Shown shown;
    const std::string before = shown.desk->plan_text();
    shown.strip().set_focus_place({0, 0});
    QTest::keyClick(&shown.strip(), Qt::Key_Right, Qt::AltModifier);
    EXPECT_EQ(first_shot(*shown.desk), "1B");
    EXPECT_EQ(shown.strip().focus_place(), (OrderPlace{0, 1}));
    shown.desk->undo();
    EXPECT_EQ(shown.desk->plan_text(), before);
}

TEST(RunningOrder, AltWithAnArrowAtTheEndSaysWhy) {
    Shown shown;
    shown.strip().set_focus_place({0, 0});
    QTest::keyClick(&shown.strip(), Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(first_shot(*shown.desk), "1A");
    ASSERT_EQ(shown.said.size(), 1);
    EXPECT_EQ(shown.said.front().toStdString(), "shot 1A is the first one already");
}

TEST(RunningOrder, ADragHangsAShotOnAnotherBeat) {
    Shown shown{demo_plan("cookery.json"), 1800};
    const QPoint to = shown.strip().shown_at({1, 0}).center() + QPoint{-60, 0};
    shown.drag(shown.middle_of({0, 2}), to);
    const plan::Shot* shot = plan::find(*shown.desk->plan(), plan::Id<plan::Shot>{"1C"});
    ASSERT_NE(shot, nullptr);
    EXPECT_EQ(shot->beats.front().name, "2");
    shown.desk->undo();
    EXPECT_TRUE(shown.desk->is_saved());
}

TEST(RunningOrder, ADragOfABeatReordersBeats) {
    Shown shown{demo_plan("cookery.json"), 2600};
    const QRect last = shown.strip().shown_at({2, -1});
    shown.drag(shown.strip().shown_at({0, -1}).center(), last.center() + QPoint{60, 0});
    EXPECT_EQ(shown.desk->plan()->beats[2].id.name, "1");
    EXPECT_EQ(shown.desk->plan()->beats[0].id.name, "2");
}

TEST(RunningOrder, EscapeLetsADragGo) {
    Shown shown{demo_plan("cookery.json"), 1800};
    QWidget* viewport = shown.strip().viewport();
    const QPoint from = shown.middle_of({0, 0});
    QTest::mousePress(viewport, Qt::LeftButton, {}, from);
    QTest::mouseMove(viewport, from + QPoint{300, 0});
    QTest::keyClick(&shown.strip(), Qt::Key_Escape);
    QTest::mouseRelease(viewport, Qt::LeftButton, {}, from + QPoint{300, 0});
    EXPECT_EQ(first_shot(*shown.desk), "1A");
    EXPECT_TRUE(shown.desk->is_saved());
}

TEST(RunningOrder, DraggingBetweenBeatsScrubsTheWalk) {
    Shown shown{demo_plan("cookery.json"), 1800};
    const QRectF walk = shown.strip().view().layout.beats[1].walk;
    const QPoint at{static_cast<int>(walk.center().x()), static_cast<int>(walk.center().y()) + 30};
    QTest::mousePress(shown.strip().viewport(), Qt::LeftButton, {}, at);
    EXPECT_EQ(shown.desk->now().beat.name, "2");
    EXPECT_NEAR(shown.desk->way(), 0.5, 0.05);
    QTest::mouseMove(shown.strip().viewport(), at + QPoint{static_cast<int>(walk.width() / 4), 0});
    EXPECT_NEAR(shown.desk->way(), 0.75, 0.05);
    EXPECT_NE(shown.desk->shown(), shown.desk->plan());
    QTest::mouseRelease(shown.strip().viewport(), Qt::LeftButton, {}, at);
    EXPECT_TRUE(shown.desk->is_saved());
}

TEST(RunningOrder, SpacePlaysTheMoveIntoTheNextBeat) {
    Shown shown;
    shown.order->player().set_pace(4.0);
    QTest::keyClick(&shown.strip(), Qt::Key_Space);
    EXPECT_TRUE(shown.order->player().is_playing());
    EXPECT_EQ(shown.desk->now().beat.name, "2");
    EXPECT_LT(shown.desk->way(), 1.0);
    EXPECT_TRUE(came_to([&] { return !shown.order->player().is_playing(); }));
    EXPECT_EQ(shown.desk->way(), 1.0);
}

TEST(RunningOrder, SpaceStopsAPlayedMoveWhereItIs) {
    Shown shown;
    shown.order->player().set_pace(0.05);
    shown.order->play_or_stop();
    ASSERT_TRUE(came_to([&] { return shown.desk->way() > 0.0; }));
    QTest::keyClick(&shown.strip(), Qt::Key_Space);
    EXPECT_FALSE(shown.order->player().is_playing());
    EXPECT_LT(shown.desk->way(), 1.0);
}

TEST(RunningOrder, OneBeatHasNoMoveToPlay) {
    plan::Plan plan = demo_plan("cookery.json");
    plan.beats.resize(1);
    std::erase_if(plan.shots,
                  [](const plan::Shot& shot) { return shot.beats.front().name != "1"; });
    Shown shown{std::move(plan)};
    shown.order->play_or_stop();
    EXPECT_FALSE(shown.order->player().is_playing());
    EXPECT_EQ(shown.said.size(), 1);
}

TEST(RunningOrder, ADoubleClickRenamesInPlace) {
    Shown shown;
    QTest::mouseDClick(shown.strip().viewport(), Qt::LeftButton, {}, shown.middle_of({0, 0}));
    auto* field = shown.strip().viewport()->findChild<QLineEdit*>();
    ASSERT_NE(field, nullptr);
    EXPECT_EQ(field->text().toStdString(), "1A");
    QTest::keyClicks(field, QStringLiteral("1X"));
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(first_shot(*shown.desk), "1X");
}

TEST(RunningOrder, F2TellsWhatHappensInABeatAnew) {
    Shown shown;
    shown.strip().set_focus_place({1, -1});
    QTest::keyClick(&shown.strip(), Qt::Key_F2);
    auto* field = shown.strip().viewport()->findChild<QLineEdit*>();
    ASSERT_NE(field, nullptr);
    QTest::keyClicks(field, QStringLiteral("Peeling"));
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(shown.desk->plan()->beats[1].name, "Peeling");
}

TEST(RunningOrder, EscapeKeepsTheName) {
    Shown shown;
    shown.strip().rename({0, 0});
    auto* field = shown.strip().viewport()->findChild<QLineEdit*>();
    QTest::keyClicks(field, QStringLiteral("9Z"));
    QTest::keyClick(field, Qt::Key_Escape);
    EXPECT_EQ(first_shot(*shown.desk), "1A");
    EXPECT_TRUE(shown.desk->is_saved());
}

TEST(RunningOrder, NewBeatsAndShotsAreGoneTo) {
    Shown shown;
    shown.strip().add_beat();
    ASSERT_EQ(shown.desk->plan()->beats.size(), 5U);
    EXPECT_EQ(shown.desk->now().beat, shown.desk->plan()->beats[1].id);
    shown.strip().add_shot({"camera 1"});
    ASSERT_EQ(shown.desk->plan()->shots.size(), 13U);
    EXPECT_EQ(plan::find(*shown.desk->plan(), shown.desk->now().shot)->camera.name, "camera 1");
}

TEST(RunningOrder, DeleteTakesAShotOut) {
    Shown shown;
    shown.strip().set_focus_place({0, 1});
    QTest::keyClick(&shown.strip(), Qt::Key_Delete);
    EXPECT_EQ(plan::find(*shown.desk->plan(), plan::Id<plan::Shot>{"1B"}), nullptr);
}

TEST(RunningOrder, WhatIsTakenAwayWhileItIsHeldIsLetGo) {
    Shown shown;
    const auto& beats = shown.desk->plan()->beats;
    const OrderPlace last{static_cast<int>(beats.size()) - 1, -1};
    const plan::Id<plan::Beat> held = beats.back().id;
    const QPoint at = shown.middle_of(last);
    QTest::mousePress(shown.strip().viewport(), Qt::LeftButton, {}, at);
    ASSERT_TRUE(shown.desk->take(edit::beat_removed(shown.desk->context(), held)));
    const edit::Now now = shown.desk->now();
    QTest::mouseMove(shown.strip().viewport(), at + QPoint{60, 0});
    QTest::mouseRelease(shown.strip().viewport(), Qt::LeftButton, {}, at + QPoint{60, 0});
    EXPECT_EQ(shown.desk->now(), now);
    EXPECT_EQ(plan::find(*shown.desk->plan(), held), nullptr);
}

/// Several findings may say the same of the same things; a number means one of them everywhere.
TEST(RunningOrder, FindingsHaveTheNumbersOfTheList) {
    Shown shown{demo_plan("workshop_interview.json")};
    ASSERT_TRUE(came_to([&] { return shown.desk->analysis() != nullptr; }));
    const AnalysisPtr known = shown.desk->analysis();
    const std::vector<int> numbers = sheet::finding_numbers(*known);
    ASSERT_LT(numbers.back(), static_cast<int>(numbers.size())) << "some must be said twice";
    const OrderView view =
        view_of(*shown.desk, shown.strip().pictures(), known.get(), shown.strip().font(), 120.0);
    ASSERT_FALSE(view.spots.empty());
    for (const FindingSpot& spot : view.spots) {
        EXPECT_EQ(spot.number, numbers[static_cast<std::size_t>(spot.finding)]);
        EXPECT_TRUE(spot.sentences.startsWith(QString::number(spot.number) + QStringLiteral(". ")));
    }
}

TEST(RunningOrder, TheMenuReachesEverything) {
    Shown shown;
    QMenu menu;
    shown.strip().fill_menu(menu, {0, -1});
    QStringList words;
    for (const QAction* action : menu.actions()) {
        words.append(action->text());
    }
    for (const char* wanted :
         {"Go there", "Say what happens in it", "Change its number", "One earlier", "One later",
          "Take this beat away", "New beat after now"}) {
        EXPECT_TRUE(words.contains(QString::fromLatin1(wanted))) << wanted;
    }
}

TEST(RunningOrder, EverythingHasASpokenName) {
    Shown shown;
    QAccessibleInterface* list = QAccessible::queryAccessibleInterface(&shown.strip());
    ASSERT_NE(list, nullptr);
    ASSERT_EQ(list->childCount(), 16);
    for (int i = 0; i < list->childCount(); ++i) {
        EXPECT_FALSE(list->child(i)->text(QAccessible::Name).isEmpty()) << i;
        EXPECT_FALSE(list->child(i)->rect().isEmpty()) << i;
    }
    EXPECT_EQ(list->child(0)->text(QAccessible::Name).toStdString(), "beat 1 Welcome");
    list->child(2)->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(shown.desk->now().shot.name, "1B");
    for (const QPushButton* button : shown.order->findChildren<QPushButton*>()) {
        EXPECT_FALSE(button->accessibleName().isEmpty());
    }
}

TEST(RunningOrder, SaysWhatIsPlayedNow) {
    Shown shown;
    const auto described = [&] {
        return QAccessible::queryAccessibleInterface(&shown.strip())
            ->text(QAccessible::Description)
            .toStdString();
    };
    shown.desk->set_now({shown.desk->plan()->beats.front().id, {}});
    EXPECT_TRUE(described().starts_with("Now: beat 1 Welcome.")) << described();
    shown.desk->set_now({shown.desk->plan()->beats.front().id, {"1B"}});
    EXPECT_TRUE(described().starts_with("Now: shot 1B")) << described();
}

TEST(RunningOrder, TheWheelGoesAlong) {
    Shown shown;
    QWheelEvent turn{{100, 50},
                     shown.strip().mapToGlobal(QPointF{100, 50}),
                     {},
                     {0, -120},
                     Qt::NoButton,
                     Qt::NoModifier,
                     Qt::NoScrollPhase,
                     false};
    QApplication::sendEvent(shown.strip().viewport(), &turn);
    EXPECT_EQ(shown.strip().horizontalScrollBar()->value(), 120);
}

TEST(RunningOrder, NowIsKeptInView) {
    Shown shown;
    shown.desk->set_now({{"4"}, {"4C"}});
    const QRect box = shown.strip().shown_at({3, 2});
    EXPECT_GE(box.left(), 0);
    EXPECT_LE(box.right(), shown.strip().viewport()->width());
}

TEST(RunningOrder, AFindingIsPointedAtByItsLozenge) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return !shown.strip().view().spots.empty(); }));
    const FindingSpot& spot = shown.strip().view().spots.front();
    shown.desk->set_now(shown.strip().view().now_of(spot.place));
    ASSERT_TRUE(came_to([&] { return shown.desk->analysis() != nullptr; }));
    const QPointF at =
        spot.centre - QPointF{static_cast<double>(shown.strip().horizontalScrollBar()->value()), 0};
    QTest::mouseClick(shown.strip().viewport(), Qt::LeftButton, {}, at.toPoint());
    EXPECT_EQ(shown.desk->finding_pointed_at(), spot.finding);
}

TEST(RunningOrder, AnEmptyOrderSaysWhatToDo) {
    Shown shown{plan::Plan{}};
    EXPECT_TRUE(shown.strip().view().order.empty());
    EXPECT_FALSE(shown.order->grab().isNull());
    shown.strip().add_shot({"camera 1"});
    EXPECT_EQ(shown.said.size(), 1);
}

TEST(RunningOrder, SixtyShotsScroll) {
    plan::Plan plan = demo_plan("cookery.json");
    const std::vector<plan::Shot> shots = plan.shots;
    for (int copy = 0; copy < 4; ++copy) {
        for (plan::Shot shot : shots) {
            shot.id.name += std::to_string(copy);
            plan.shots.push_back(std::move(shot));
        }
    }
    Shown shown{std::move(plan)};
    EXPECT_TRUE(came_to([&] { return shown.has_all_pictures(); }));
    EXPECT_GT(shown.strip().horizontalScrollBar()->maximum(), 5000);
}

} // namespace
} // namespace throwline::ui
