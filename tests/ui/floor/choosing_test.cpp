#include "ui/floor/floor_case.h"

#include <algorithm>

namespace throwline::ui {
namespace {

using Things = std::vector<Thing>;

Things sorted(Things things) {
    std::sort(things.begin(), things.end());
    return things;
}

TEST(FloorChoosing, AClickChoosesWhatIsUnderThePointer) {
    const OnFloor on;
    on.click({3.0, 4.0});
    EXPECT_EQ(on.desk->chosen(), Things{scenery("table")});
}

TEST(FloorChoosing, AClickOnBareFloorChoosesNothing) {
    const OnFloor on;
    on.click({3.0, 4.0});
    on.click({1.5, 1.5});
    EXPECT_TRUE(on.desk->chosen().empty());
}

TEST(FloorChoosing, ShiftAddsAndTakesAway) {
    const OnFloor on;
    on.click({3.0, 4.0});
    on.click({5.0, 6.0}, Qt::ShiftModifier);
    EXPECT_EQ(sorted(on.desk->chosen()), (Things{scenery("table"), {Kind::person, "Ana", 0}}));
    on.click({3.0, 4.0}, Qt::ShiftModifier);
    EXPECT_EQ(on.desk->chosen(), (Things{{Kind::person, "Ana", 0}}));
}

TEST(FloorChoosing, AnotherClickGoesOnToWhatLiesBeneath) {
    const OnFloor on;
    on.click({7.0, 4.0});
    EXPECT_EQ(on.desk->chosen(), Things{scenery("crate")});
    on.click({7.0, 4.0});
    EXPECT_EQ(on.desk->chosen(), Things{scenery("bench")});
    on.click({7.0, 4.0});
    EXPECT_EQ(on.desk->chosen(), Things{scenery("crate")});
}

TEST(FloorChoosing, ABoxTakesWhatIsWhollyInsideWhicheverWayItIsDrawn) {
    const OnFloor on;
    on.drag({5.8, 4.8}, {8.2, 3.2});
    EXPECT_EQ(sorted(on.desk->chosen()), (Things{scenery("bench"), scenery("crate")}));
    on.drag({8.2, 3.2}, {5.8, 4.8});
    EXPECT_EQ(sorted(on.desk->chosen()), (Things{scenery("bench"), scenery("crate")}));
    on.drag({2.0, 5.0}, {3.0, 3.0});
    EXPECT_TRUE(on.desk->chosen().empty());
}

TEST(FloorChoosing, WithAltABoxTakesAlsoWhatItTouches) {
    const OnFloor on;
    on.drag({2.9, 5.0}, {2.0, 3.0}, Qt::AltModifier);
    EXPECT_EQ(on.desk->chosen(), Things{scenery("table")});
}

TEST(FloorChoosing, ADoubleClickWantsTheCard) {
    const OnFloor on;
    QSignalSpy wanted{on.floor.get(), &Floor::card_wanted};
    on.click({3.0, 4.0});
    on.mouse(QEvent::MouseButtonDblClick, on.px({3.0, 4.0}), Qt::LeftButton, Qt::LeftButton);
    EXPECT_EQ(wanted.count(), 1);
}

TEST(FloorChoosing, TabGoesFromThingToThingAndBack) {
    const OnFloor on;
    const Things things = on.floor->things();
    ASSERT_GT(things.size(), 3U);
    on.key(Qt::Key_Tab);
    EXPECT_EQ(on.desk->chosen(), Things{things[0]});
    on.key(Qt::Key_Tab);
    EXPECT_EQ(on.desk->chosen(), Things{things[1]});
    on.key(Qt::Key_Backtab, Qt::ShiftModifier);
    on.key(Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_EQ(on.desk->chosen(), Things{things.back()});
}

TEST(FloorChoosing, EnterWantsTheCardAndEscapeChoosesNothing) {
    const OnFloor on;
    QSignalSpy wanted{on.floor.get(), &Floor::card_wanted};
    on.desk->choose({scenery("table")});
    on.key(Qt::Key_Return);
    EXPECT_EQ(wanted.count(), 1);
    on.key(Qt::Key_Escape);
    EXPECT_TRUE(on.desk->chosen().empty());
}

TEST(FloorChoosing, AMenuIsWantedForWhatIsUnderThePointer) {
    const OnFloor on;
    std::vector<Thing> things;
    QObject::connect(on.floor.get(), &Floor::context_wanted, on.floor.get(),
                     [&](const QPoint&, const std::vector<Thing>& these) { things = these; });
    const QPoint at = on.px({3.0, 4.0}).toPoint();
    QContextMenuEvent event{QContextMenuEvent::Mouse, at, on.floor->mapToGlobal(at)};
    QApplication::sendEvent(on.floor.get(), &event);
    EXPECT_EQ(things, Things{scenery("table")});
}

} // namespace
} // namespace throwline::ui
