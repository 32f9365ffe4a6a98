/// The scanned plan beneath everything.

#include "edit/underlay.h"

#include "edit/valid.h"
#include "plan/picture_placing.h"
#include "support/demo_plan.h"

#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

using support::shipped_catalogue;

class UnderlayCase : public testing::Test {
  protected:
    /// Takes what it must be given; a plan that would not open again fails.
    void take(const Result<Step>& step) {
        ASSERT_TRUE(step) << step.error().message;
        const auto checked = valid(step->plan, catalogue);
        ASSERT_TRUE(checked) << checked.error().front().message;
        plan = step->plan;
    }
    Context context() const { return {plan, catalogue, {}}; }
    Vec2 at(const Vec2& pixel) const { return plan::PicturePlacing{*plan.underlay}.at(pixel); }

    const catalogue::Catalogue& catalogue = shipped_catalogue();
    plan::Plan plan;
};

TEST_F(UnderlayCase, IsLaidUprightAroundTheMiddleOfTheRoom) {
    plan.room.outline = {{1, 2}, {9, 2}, {9, 6}, {1, 6}};
    plan.room.height = Length::metres(3);
    plan.room.walls.assign(4, {Length::metres(3), Length::metres(0.1), {}, false});
    take(underlay_laid(context(), "scan.png", 1600, 1000));
    EXPECT_EQ(plan.underlay->file, "scan.png");
    EXPECT_LT((at({800, 500}) - Vec2{5, 4}).norm(), 1e-9);
    // 8 m over 1600 pixels.
    EXPECT_LT((at({0, 0}) - Vec2{1, 6.5}).norm(), 1e-9);
    EXPECT_LT((at({1600, 1000}) - Vec2{9, 1.5}).norm(), 1e-9);
}

TEST_F(UnderlayCase, IsTenMetresLongOnAnEmptyFloor) {
    take(underlay_laid(context(), "scan.png", 500, 2000));
    EXPECT_LT((at({250, 1000})).norm(), 1e-9);
    EXPECT_NEAR((at({0, 0}) - at({0, 2000})).norm(), 10.0, 1e-9);
}

/// What is 3 m apart as drawn and turned by 10 degrees, is truly 4.5 m and level.
TEST_F(UnderlayCase, TakesSizeAndTurnFromAKnownDistance) {
    take(underlay_laid(context(), "scan.png", 1000, 1000));
    const Vec2 from{-1, 1};
    const Vec2 to = from + 3.0 * unit_at(10.0 * 3.14159265358979 / 180.0);
    const plan::PicturePlacing before{*plan.underlay};
    const Vec2 from_px = before.pixel(from);
    const Vec2 to_px = before.pixel(to);
    take(underlay_placed(context(), from, to, from + Vec2{4.5, 0}));
    EXPECT_LT((at(from_px) - from).norm(), 1e-9);
    EXPECT_LT((at(to_px) - Vec2{3.5, 1}).norm(), 1e-9);
    // 10 m over 1000 pixels, and half as much again.
    EXPECT_NEAR((at({0, 0}) - at({1, 0})).norm(), 0.015, 1e-9);
}

TEST_F(UnderlayCase, StaysMirrored) {
    take(underlay_laid(context(), "scan.png", 1000, 1000));
    plan.underlay->mirrored = true;
    const plan::PicturePlacing before{*plan.underlay};
    const Vec2 to_px = before.pixel({2, 1});
    take(underlay_placed(context(), {0, 0}, {2, 1}, {0, 4}));
    EXPECT_TRUE(plan.underlay->mirrored);
    EXPECT_LT((at(to_px) - Vec2{0, 4}).norm(), 1e-9);
}

TEST_F(UnderlayCase, FindsThePixelOfEveryPlace) {
    for (const bool mirrored : {false, true}) {
        plan::Underlay underlay;
        underlay.pixel_a = {120, 90};
        underlay.pixel_b = {480, 310};
        underlay.at_a = {1, 2};
        underlay.at_b = {-3, 4.5};
        underlay.mirrored = mirrored;
        const plan::PicturePlacing placing{underlay};
        for (const Vec2& pixel : {Vec2{0, 0}, Vec2{33, 700}, Vec2{-20, 14}}) {
            EXPECT_LT((placing.pixel(placing.at(pixel)) - pixel).norm(), 1e-9);
        }
    }
}

TEST_F(UnderlayCase, MovesWhole) {
    take(underlay_laid(context(), "scan.png", 1000, 1000));
    const Vec2 before = at({300, 200});
    take(underlay_moved(context(), {1.5, -2}));
    EXPECT_LT((at({300, 200}) - before - Vec2{1.5, -2}).norm(), 1e-9);
}

TEST_F(UnderlayCase, IsTakenAway) {
    take(underlay_laid(context(), "scan.png", 1000, 1000));
    take(underlay_removed(context()));
    EXPECT_FALSE(plan.underlay);
}

TEST_F(UnderlayCase, RefusesWhatCannotBe) {
    EXPECT_FALSE(underlay_placed(context(), {0, 0}, {1, 0}, {2, 0}));
    EXPECT_FALSE(underlay_moved(context(), {1, 0}));
    EXPECT_FALSE(underlay_removed(context()));
    take(underlay_laid(context(), "scan.png", 1000, 1000));
    EXPECT_FALSE(underlay_placed(context(), {1, 1}, {1, 1}, {2, 0}));
    EXPECT_FALSE(underlay_placed(context(), {1, 1}, {2, 1}, {1, 1}));
    EXPECT_FALSE(underlay_placed(context(), {1, 1}, {2, 1}, {2000, 1}));
    EXPECT_FALSE(underlay_moved(context(), {5000, 0}));
}

} // namespace
} // namespace throwline::edit
