/// The scanned plan put in its place by hand.

#include "edit/underlay.h"
#include "plan/picture_placing.h"
#include "support/small_plan.h"
#include "ui/floor/floor_case.h"
#include "ui/floor/floor_painter.h"

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

/// A scan that is black all over, at its full strength.
PictureWanted wanted_over_black(Theme theme) {
    plan::Plan plan = with_scan();
    plan.underlay->strength = 1.0;
    auto black = std::make_shared<sheet::Pixels>();
    black->width = 1000;
    black->height = 1000;
    black->rgb.assign(std::size_t{3} * 1000 * 1000, 0);
    PictureWanted made;
    made.plan = std::make_shared<const plan::Plan>(std::move(plan));
    made.catalogue = support::shared_catalogue();
    made.now.beat = {"1"};
    made.mm_per_m = 10.0;
    made.window = {-20.0, -100.0, 140.0, 120.0};
    made.theme = theme;
    made.underlay =
        std::make_shared<const std::vector<sheet::ReducedPicture>>(sheet::reduced_pictures(black));
    return made;
}

TEST(FloorUnderlay, IsSeenBeneathThePlanAndNotBeyondItself) {
    for (const Theme theme : {Theme::light, Theme::dark}) {
        const PictureWanted of = wanted_over_black(theme);
        const std::optional<QImage> image = painted_floor(of, {});
        ASSERT_TRUE(image);
        const auto at = [&](double across_m, double up_m) {
            const QPointF mm{across_m * of.mm_per_m - of.window.left,
                             -up_m * of.mm_per_m - of.window.top};
            return image->pixelColor((mm * of.px_per_mm).toPoint());
        };
        // On slate a scan is chalk.
        EXPECT_EQ(at(4.3, 5.3), theme == Theme::light ? QColor{Qt::black} : QColor{Qt::white});
        EXPECT_EQ(at(-1.7, 9.4), floor_ground(theme));
    }
}

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
