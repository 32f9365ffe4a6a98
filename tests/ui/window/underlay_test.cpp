/// The scanned plan in the real window.

#include "plan/read_plan.h"
#include "ui/underlay/underlay_reader.h"
#include "ui/window/window_case.h"

#include <QImage>
#include <fstream>

namespace throwline::ui {
namespace {

class UnderlayInWindow : public WindowCase {
  protected:
    void put_scan() const {
        QImage image{400, 300, QImage::Format_RGB888};
        image.fill(Qt::lightGray);
        ASSERT_TRUE(image.save(path("scan.png")));
    }
    void put_plan_with_scan() const {
        plan::Plan plan;
        plan.underlay = plan::Underlay{"scan.png", {0, 300}, {400, 300}, {0, 0}, {4, 0}};
        std::ofstream{folder / "plan.json"} << plan::written(plan);
    }
    void do_action(const char* id) const {
        EXPECT_TRUE(window->do_action(QString::fromUtf8(id))) << id;
    }
};

TEST_F(UnderlayInWindow, IsReadFromBesideThePlanThatIsOpened) {
    put_scan();
    put_plan_with_scan();
    window->open(path("plan.json"));
    ASSERT_TRUE(support::came_to([&] { return window->underlay().pixels() != nullptr; }));
    EXPECT_TRUE(window->underlay().fault().isEmpty());
}

TEST_F(UnderlayInWindow, IsMissedInASentenceAndStopsNothing) {
    put_plan_with_scan();
    window->open(path("plan.json"));
    ASSERT_TRUE(support::came_to([&] { return !window->underlay().fault().isEmpty(); }));
    EXPECT_TRUE(window->has_plan());
    EXPECT_TRUE(told.isEmpty()) << told.join(QLatin1Char{'\n'}).toStdString();
}

TEST_F(UnderlayInWindow, IsChosenPlacedAndTakenAwayFromTheMenu) {
    put_scan();
    window->begin_empty_floor();
    EXPECT_FALSE(window->do_action(QStringLiteral("draw.place_scan")));
    picture = path("scan.png");
    do_action("draw.lay_scan");
    ASSERT_TRUE(support::came_to([&] { return plan().underlay.has_value(); }));
    EXPECT_EQ(window->hand(), HandId::underlay);
    window->draw_with(HandId::choose);
    do_action("draw.place_scan");
    EXPECT_EQ(window->hand(), HandId::underlay);
    do_action("draw.take_scan_away");
    EXPECT_FALSE(plan().underlay);
    EXPECT_EQ(window->underlay().pixels(), nullptr);
    window->desk().undo();
    EXPECT_TRUE(support::came_to([&] { return window->underlay().pixels() != nullptr; }));
}

TEST_F(UnderlayInWindow, IsLeftWhenNoneIsChosen) {
    window->begin_empty_floor();
    picture.clear();
    do_action("draw.lay_scan");
    EXPECT_FALSE(window->underlay().is_reading());
    EXPECT_FALSE(plan().underlay);
}

} // namespace
} // namespace throwline::ui
