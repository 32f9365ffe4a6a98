/// The scanned plan put in its place by hand.

#include "edit/underlay.h"
#include "plan/picture_placing.h"
#include "support/small_plan.h"
#include "ui/floor/floor_case.h"

namespace throwline::ui {
namespace {

/// A place is pointed at with an error of a pixel.
constexpr double kClose_m = 0.03;

/// A scan of 10 m by 10 m over 1000 pixels beneath a room of 10 m by 8 m.
plan::Plan with_scan() {
    plan::Plan plan = testing_support::bare_room();
    return edit::underlay_laid({plan, support::shipped_catalogue(), {}}, "scan.png", 1000, 1000)
        ->plan;
}

struct OverScan : OnFloor {
    OverScan() : OnFloor{with_scan()} { floor->set_hand(HandId::underlay); }
    Vec2 pixel(const Vec2& at) const { return plan::PicturePlacing{*plan().underlay}.pixel(at); }
    Vec2 at(const Vec2& pixel) const { return plan::PicturePlacing{*plan().underlay}.at(pixel); }
};

TEST(FloorUnderlay, IsMovedByDragging) {
    const OverScan on;
    const Vec2 pixel = on.pixel({3, 3});
    on.drag({3, 3}, {5, 4});
    EXPECT_LT((on.at(pixel) - Vec2{5, 4}).norm(), kClose_m);
    EXPECT_FALSE(on.desk->is_previewing());
    on.desk->undo();
    EXPECT_LT((on.at(pixel) - Vec2{3, 3}).norm(), kClose_m);
}

TEST(FloorUnderlay, TakesItsSizeFromADistanceThatIsTyped) {
    const OverScan on;
    const Vec2 from = on.pixel({2, 2});
    const Vec2 to = on.pixel({4, 2});
    on.click({2, 2});
    on.click({4, 2});
    on.type("3 m");
    on.enter();
    EXPECT_LT((on.at(from) - Vec2{2, 2}).norm(), kClose_m);
    EXPECT_LT((on.at(to) - Vec2{5, 2}).norm(), 2.0 * kClose_m);
}

TEST(FloorUnderlay, IsStraightenedByADirection) {
    const OverScan on;
    const Vec2 from = on.pixel({2, 2});
    const Vec2 to = on.pixel({4, 3});
    on.click({2, 2});
    on.click({4, 3});
    on.type("3 m 90deg");
    on.enter();
    EXPECT_LT((on.at(from) - Vec2{2, 2}).norm(), kClose_m);
    EXPECT_LT((on.at(to) - Vec2{2, 5}).norm(), 2.0 * kClose_m);
}

TEST(FloorUnderlay, StaysWhereEscapeLeavesIt) {
    const OverScan on;
    const plan::Plan before = on.plan();
    on.press({3, 3});
    on.move({4, 4});
    on.move({5, 5});
    EXPECT_TRUE(on.desk->is_previewing());
    on.key(Qt::Key_Escape);
    EXPECT_FALSE(on.desk->is_previewing());
    on.release({5, 5});
    on.click({1, 1});
    on.key(Qt::Key_Escape);
    EXPECT_EQ(on.plan(), before);
}

TEST(FloorUnderlay, SaysWhyALengthCannotBe) {
    const OverScan on;
    const plan::Plan before = on.plan();
    on.click({2, 2});
    on.click({4, 2});
    on.type("0 m");
    on.enter();
    EXPECT_TRUE(on.floor->findChild<TypedLine*>()->isVisible());
    EXPECT_EQ(on.plan(), before);
}

TEST(FloorUnderlay, SaysThatThereIsNone) {
    const OnFloor on{testing_support::bare_room()};
    on.floor->set_hand(HandId::underlay);
    on.drag({3, 3}, {5, 4});
    EXPECT_FALSE(on.said.isEmpty());
}

} // namespace
} // namespace throwline::ui
