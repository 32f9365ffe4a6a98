#include "ui/viewfinder/viewfinder.h"

#include "ui/desk_case.h"
#include "ui/viewfinder/frame_view.h"

#include <QLabel>
#include <QPushButton>
#include <QWheelEvent>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::came_to;
using support::demo_plan;

struct Shown {
    std::unique_ptr<Desk> desk;
    std::unique_ptr<Viewfinder> finder;
    QStringList said;

    explicit Shown(plan::Plan plan = demo_plan("cookery.json")) {
        desk = support::desk_with(std::move(plan));
        finder = std::make_unique<Viewfinder>(*desk);
        QObject::connect(desk.get(), &Desk::said, finder.get(),
                         [this](const QString& sentence) { said.append(sentence); });
        finder->resize(360, 300);
        finder->show();
        view().setFocus();
    }
    FrameView& view() const { return finder->frame_view(); }
    bool is_of(const std::string& shot) const {
        const FrameSeen* frame = view().frame();
        return frame != nullptr && frame->question.shot.name == shot
               && frame->question.plan == desk->shown() && !frame->image.isNull();
    }
    bool is_whole() const {
        const FrameSeen* frame = view().frame();
        const int side_px = std::max(view().width(), view().height());
        return frame != nullptr && frame->question.plan == desk->shown()
               && frame->question.side_px == side_px
               && std::max(frame->image.width(), frame->image.height()) == side_px;
    }
    bool is_lit() const {
        const FrameSeen* frame = view().frame();
        return frame != nullptr && frame->question.shading == Shading::lit;
    }
    QPushButton* light_button() const {
        for (auto* button : finder->findChildren<QPushButton*>()) {
            if (button->accessibleName() == QStringLiteral("The frame in the light of its lamps")) {
                return button;
            }
        }
        return nullptr;
    }
    QString told() const {
        for (const QLabel* label : finder->findChildren<QLabel*>()) {
            if (label->accessibleName() == QStringLiteral("About the frame")) {
                return label->text();
            }
        }
        return {};
    }
    optics::CameraPose pose() const { return view().frame()->raised->scene.view->pose; }
    double focal_mm() const { return view().frame()->raised->scene.view->focal.mm(); }
    QPointF centre() const { return view().picture_box().center(); }
    void turn_wheel(int notches) const {
        QWheelEvent turn{centre(),
                         view().mapToGlobal(centre()),
                         {},
                         {0, 120 * notches},
                         Qt::NoButton,
                         Qt::NoModifier,
                         Qt::NoScrollPhase,
                         false};
        QApplication::sendEvent(&view(), &turn);
    }
};

TEST(Viewfinder, ShowsTheShotOfNow) {
    Shown shown;
    EXPECT_TRUE(came_to([&] { return shown.is_of("1A"); }));
    shown.desk->set_now({{"2"}, {"2B"}});
    EXPECT_TRUE(came_to([&] { return shown.is_of("2B"); }));
    shown.desk->set_now({{"3"}, {}});
    EXPECT_TRUE(came_to([&] { return shown.is_of("3A"); }));
}

TEST(Viewfinder, ShowsWhatTheChosenCameraSees) {
    Shown shown;
    shown.desk->choose({{edit::Kind::camera, "camera 1", 0}});
    EXPECT_TRUE(came_to([&] { return shown.is_of("1C"); }));
}

TEST(Viewfinder, BecomesSharpOnceThingsStandStill) {
    Shown shown;
    EXPECT_TRUE(came_to([&] { return shown.is_whole(); }));
    EXPECT_EQ(shown.view().frame()->question.side_px, 348);
}

TEST(Viewfinder, IsAsSharpAsTheScreenWhenWide) {
    Shown shown{demo_plan("workshop_interview.json")};
    shown.finder->resize(1500, 1000);
    EXPECT_TRUE(came_to([&] { return shown.is_whole(); }));
    EXPECT_GT(shown.view().frame()->question.side_px, 1400);
}

TEST(Viewfinder, FollowsAPreview) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_of("1A"); }));
    plan::Plan moved = *shown.desk->plan();
    moved.shots.front().at += Vec2{0.4, 0.0};
    const Vec3 before = shown.pose().lens;
    shown.desk->preview(edit::Step{"Move camera 2", moved, {}});
    ASSERT_TRUE(came_to([&] { return shown.is_of("1A"); }));
    EXPECT_NEAR(shown.pose().lens.x(), before.x() + 0.4, 1e-9);
    shown.desk->end_preview();
    ASSERT_TRUE(came_to([&] { return shown.is_of("1A"); }));
    EXPECT_NEAR(shown.pose().lens.x(), before.x(), 1e-9);
}

TEST(Viewfinder, TellsFocalSizeAndDistance) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_of("1A"); }));
    const auto labels = shown.finder->findChildren<QLabel*>();
    const bool told = std::any_of(labels.begin(), labels.end(), [](const QLabel* label) {
        const QString words = label->text();
        return words.startsWith(QStringLiteral("camera 2")) && words.contains(QStringLiteral("mm"))
               && words.contains(QStringLiteral("medium long"))
               && words.contains(QStringLiteral("to Mara"));
    });
    EXPECT_TRUE(told);
}

TEST(Viewfinder, NamesWhatIsPointedAtAndChoosesItOnAClick) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_whole(); }));
    const auto& scene = shown.view().frame()->raised->scene;
    const stage::Figure* figure = scene.stage.figure({"Mara"});
    ASSERT_NE(figure, nullptr);
    const Vec2 at = *scene.view->frame.project(figure->face);
    const QRectF box = shown.view().picture_box();
    const QPointF place{box.center().x() + at.x() * box.width() / 2.0,
                        box.center().y() - at.y() * box.height() / 2.0};
    const auto pointed = shown.view().pointed(place);
    ASSERT_TRUE(pointed);
    EXPECT_EQ(pointed->name, "Mara");
    QTest::mouseClick(&shown.view(), Qt::LeftButton, {}, place.toPoint());
    EXPECT_EQ(shown.desk->chosen(), (std::vector<edit::Thing>{{edit::Kind::person, "Mara", 0}}));
    EXPECT_FALSE(shown.view().pointed({-4.0, -4.0}));
}

TEST(Viewfinder, ADragAimsInOneStep) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_whole(); }));
    const std::string before = shown.desk->plan_text();
    const double pan = shown.pose().pan.rad();
    const QPoint from = shown.centre().toPoint();
    QTest::mousePress(&shown.view(), Qt::LeftButton, {}, from);
    for (int step = 1; step <= 4; ++step) {
        QTest::mouseMove(&shown.view(), from + QPoint{10 * step, 0});
    }
    EXPECT_TRUE(shown.desk->is_previewing());
    QTest::mouseRelease(&shown.view(), Qt::LeftButton, {}, from + QPoint{40, 0});
    EXPECT_FALSE(shown.desk->is_previewing());
    EXPECT_EQ(shown.desk->history().undo_name(), "Aim camera 2 in shot 1A");
    ASSERT_TRUE(came_to([&] { return shown.is_of("1A"); }));
    EXPECT_GT(shown.pose().pan.rad(), pan);
    shown.desk->undo();
    EXPECT_EQ(shown.desk->plan_text(), before);
    EXPECT_FALSE(shown.desk->history().can_undo());
}

TEST(Viewfinder, ARunOfTheWheelZoomsInOneStep) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_whole(); }));
    const double focal_mm = shown.focal_mm();
    for (int notch = 0; notch < 3; ++notch) {
        shown.turn_wheel(1);
    }
    EXPECT_TRUE(shown.desk->is_previewing());
    ASSERT_TRUE(came_to([&] { return !shown.desk->is_previewing(); }));
    ASSERT_TRUE(came_to([&] { return shown.is_of("1A"); }));
    EXPECT_NEAR(shown.focal_mm(), focal_mm * 1.06 * 1.06 * 1.06, 0.1);
    shown.desk->undo();
    EXPECT_FALSE(shown.desk->history().can_undo());
}

TEST(Viewfinder, KeysPanTiltAndZoom) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_whole(); }));
    const optics::CameraPose before = shown.pose();
    QTest::keyClick(&shown.view(), Qt::Key_Left);
    QTest::keyClick(&shown.view(), Qt::Key_Left);
    QTest::keyClick(&shown.view(), Qt::Key_Up);
    ASSERT_TRUE(came_to([&] { return shown.desk->history().can_undo(); }));
    ASSERT_TRUE(came_to([&] { return shown.is_of("1A"); }));
    EXPECT_NEAR(shown.pose().pan.deg(), before.pan.deg() + 2.0, 1e-6);
    EXPECT_NEAR(shown.pose().tilt.deg(), before.tilt.deg() + 1.0, 1e-6);
    QTest::keyClick(&shown.view(), Qt::Key_Plus);
    shown.view().clearFocus();
    EXPECT_NE(shown.desk->history().undo_name().find("Set shot 1A"), std::string::npos);
}

TEST(Viewfinder, EscapeGivesUpARun) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_whole(); }));
    QTest::keyClick(&shown.view(), Qt::Key_Left);
    EXPECT_TRUE(shown.desk->is_previewing());
    QTest::keyClick(&shown.view(), Qt::Key_Escape);
    EXPECT_FALSE(shown.desk->is_previewing());
    QTest::qWait(600);
    EXPECT_TRUE(shown.desk->is_saved());
}

TEST(Viewfinder, LettersSwitchGuides) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_whole(); }));
    const FrameGuides before = shown.view().guides();
    const QImage plain = shown.view().grab().toImage();
    QTest::keyClick(&shown.view(), Qt::Key_T);
    EXPECT_NE(shown.view().guides().thirds, before.thirds);
    EXPECT_NE(shown.view().grab().toImage(), plain);
    QTest::keyClick(&shown.view(), Qt::Key_T);
    EXPECT_EQ(shown.view().guides(), before);
    EXPECT_EQ(shown.view().grab().toImage(), plain);
}

TEST(Viewfinder, LAndItsButtonShowTheLightOfTheLamps) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_whole(); }));
    const QImage plain = shown.view().frame()->image;
    QTest::keyClick(&shown.view(), Qt::Key_L);
    ASSERT_TRUE(came_to([&] { return shown.is_lit() && shown.is_whole(); }));
    EXPECT_EQ(shown.view().frame()->image.size(), plain.size());
    EXPECT_NE(shown.view().frame()->image, plain);
    EXPECT_TRUE(shown.light_button()->isChecked());
    shown.light_button()->click();
    ASSERT_TRUE(came_to([&] { return !shown.is_lit() && shown.is_whole(); }));
    EXPECT_EQ(shown.view().frame()->image, plain);
}

TEST(Viewfinder, StaysLitFromShotToShot) {
    Shown shown;
    shown.view().set_shading(Shading::lit);
    EXPECT_TRUE(came_to([&] { return shown.is_of("1A") && shown.is_lit(); }));
    shown.desk->set_now({{"2"}, {"2B"}});
    EXPECT_TRUE(came_to([&] { return shown.is_of("2B") && shown.is_lit(); }));
    EXPECT_TRUE(shown.told().contains(QStringLiteral("exposed for")));
}

TEST(Viewfinder, ReadsTheLightWhereALitFrameIsPointedAt) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_whole(); }));
    ASSERT_TRUE(shown.view().pointed(shown.centre()));
    EXPECT_EQ(shown.view().pointed(shown.centre())->light, "");
    shown.view().set_shading(Shading::lit);
    ASSERT_TRUE(came_to([&] { return shown.is_lit(); }));
    const auto pointed = shown.view().pointed(shown.centre());
    ASSERT_TRUE(pointed);
    EXPECT_NE(pointed->light.find("stops"), std::string::npos) << pointed->light;
}

TEST(Viewfinder, WithoutABurningLampItSaysSoAndStaysPlain) {
    plan::Plan dark = demo_plan("cookery.json");
    for (plan::Lamp& lamp : dark.lamps) {
        lamp.level = 0.0;
    }
    Shown shown{dark};
    ASSERT_TRUE(came_to([&] { return shown.is_whole(); }));
    const QImage plain = shown.view().frame()->image;
    shown.view().set_shading(Shading::lit);
    ASSERT_TRUE(came_to([&] { return shown.is_lit() && shown.is_whole(); }));
    EXPECT_EQ(shown.view().frame()->image, plain);
    EXPECT_TRUE(shown.told().contains(QStringLiteral("No lamp burns in beat 1: shown plain.")));
    EXPECT_EQ(shown.view().pointed(shown.centre())->light, "");
}

TEST(Viewfinder, MarksTheFindingPointedAt) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.is_whole() && shown.desk->analysis() != nullptr; }));
    const QImage plain = shown.view().grab().toImage();
    shown.desk->point_at_finding(2);
    EXPECT_NE(shown.view().grab().toImage(), plain);
    shown.desk->point_at_finding(-1);
    EXPECT_EQ(shown.view().grab().toImage(), plain);
}

TEST(Viewfinder, AFindingThatIsNoLongerThereIsNotMarked) {
    Shown shown;
    ASSERT_TRUE(came_to([&] { return shown.desk->analysis() != nullptr && shown.is_whole(); }));
    shown.desk->point_at_finding(static_cast<int>(shown.desk->analysis()->findings.size()) + 40);
    EXPECT_FALSE(shown.view().grab().isNull());
}

TEST(Viewfinder, ABeatWithoutAShotOffersOne) {
    plan::Plan plan = demo_plan("cookery.json");
    std::erase_if(plan.shots,
                  [](const plan::Shot& shot) { return shot.beats.front().name == "2"; });
    Shown shown{std::move(plan)};
    shown.desk->set_now({{"2"}, {}});
    EXPECT_EQ(shown.finder->why_no_picture().toStdString(), "Beat 2 has no shot yet.");
    const auto buttons = shown.finder->findChildren<QPushButton*>();
    const auto offer = std::find_if(buttons.begin(), buttons.end(), [](const QPushButton* button) {
        return button->text() == QStringLiteral("New shot by camera 1");
    });
    ASSERT_NE(offer, buttons.end());
    (*offer)->click();
    EXPECT_EQ(plan::find(*shown.desk->plan(), shown.desk->now().shot)->beats.front().name, "2");
}

TEST(Viewfinder, AnEmptyFloorSaysWhatIsMissing) {
    Shown shown{plan::Plan{}};
    EXPECT_EQ(shown.finder->why_no_picture().toStdString(),
              "No camera yet. Put one on the floor from the Stores.");
    EXPECT_FALSE(shown.finder->grab().isNull());
}

TEST(Viewfinder, AShotThatFindsNobodySaysSo) {
    plan::Plan plan = demo_plan("cookery.json");
    plan.shots.front().aim = {};
    plan.shots.front().subjects.clear();
    Shown shown{std::move(plan)};
    ASSERT_TRUE(came_to([&] { return shown.view().frame() != nullptr; }));
    EXPECT_TRUE(shown.finder->why_no_picture().startsWith(
        QStringLiteral("Shot 1A finds nobody to look at in beat 1.")));
    EXPECT_FALSE(shown.view().pointed({50.0, 50.0}));
}

} // namespace
} // namespace throwline::ui
