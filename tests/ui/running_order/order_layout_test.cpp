#include "ui/running_order/order_layout.h"

#include "support/demo_plan.h"

#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::demo_plan;
using support::shipped_catalogue;

OrderLayout layout_of(const plan::Plan& plan, double height = 120.0) {
    const std::vector<edit::HungBeat> order = edit::hung_order(plan, shipped_catalogue());
    std::vector<LetteringWidths> widths;
    for (const edit::HungBeat& beat : order) {
        widths.push_back(
            {90.0, beat.walks.empty() ? 0.0 : 70.0, std::vector<double>(beat.shots.size(), 60.0)});
    }
    return laid_out(order, widths, QFontMetricsF{QFont{}}, height);
}

TEST(OrderLayout, NothingOverlaps) {
    const OrderLayout layout = layout_of(demo_plan("market_hall.json"));
    double right = 0.0;
    for (const BeatBox& beat : layout.beats) {
        EXPECT_GE(beat.head.left(), right);
        if (!beat.walk.isEmpty()) {
            EXPECT_GE(beat.walk.left(), right);
            EXPECT_LE(beat.walk.right(), beat.head.left());
        }
        double shot_right = beat.head.left();
        for (const ShotBox& shot : beat.shots) {
            EXPECT_GE(shot.whole.left(), shot_right);
            EXPECT_GE(shot.whole.top(), beat.head.bottom());
            EXPECT_LE(shot.whole.bottom(), layout.height);
            shot_right = shot.whole.right();
        }
        right = beat.whole.right();
        EXPECT_GE(right, shot_right);
    }
    EXPECT_GE(layout.width, right);
}

TEST(OrderLayout, PicturesHaveTheShapeOfTheCamera) {
    const plan::Plan plan = demo_plan("cookery.json");
    const std::vector<edit::HungBeat> order = edit::hung_order(plan, shipped_catalogue());
    const QRectF box = layout_of(plan).beats[0].shots[0].picture;
    EXPECT_NEAR(box.width() / box.height(), order[0].shots[0].aspect, 0.02);
}

TEST(OrderLayout, EveryPlaceIsFoundWhereItLies) {
    const OrderLayout layout = layout_of(demo_plan("cookery.json"));
    for (int b = 0; b < static_cast<int>(layout.beats.size()); ++b) {
        const OrderPlace beat{b, -1};
        EXPECT_EQ(layout.at(layout.box(beat).center()), beat);
        const auto count = layout.beats[static_cast<std::size_t>(b)].shots.size();
        for (int s = 0; s < static_cast<int>(count); ++s) {
            const OrderPlace shot{b, s};
            EXPECT_EQ(layout.at(layout.box(shot).center()), shot);
        }
    }
    EXPECT_FALSE(layout.at({-5.0, 3.0}));
}

TEST(OrderLayout, MomentsGoThereAndBack) {
    const OrderLayout layout = layout_of(demo_plan("cookery.json"));
    for (const OrderMoment& moment :
         {OrderMoment{{1, -1}, 0.25}, OrderMoment{{2, -1}, 0.75}, OrderMoment{{3, 1}, 1.0}}) {
        const auto back = layout.moment_at(layout.x_of(moment));
        ASSERT_TRUE(back);
        EXPECT_EQ(back->place, moment.place);
        EXPECT_NEAR(back->way, moment.way, 1e-9);
    }
    EXPECT_FALSE(OrderLayout{}.moment_at(3.0));
}

TEST(OrderLayout, TimeOnlyGoesOnAlongTheStrip) {
    const OrderLayout layout = layout_of(demo_plan("cookery.json"));
    const auto rank = [](const OrderMoment& moment) {
        return moment.place.beat + (moment.way < 1.0 ? moment.way * 0.5 - 0.5 : 0.0)
               + (moment.place.shot + 1) * 0.01;
    };
    double before = -1.0;
    for (double x = 0.0; x < layout.width; x += 1.0) {
        const double now = rank(*layout.moment_at(x));
        EXPECT_GE(now, before) << x;
        before = now;
    }
}

TEST(OrderLayout, DropsShotsBetweenOthers) {
    const OrderLayout layout = layout_of(demo_plan("cookery.json"));
    const auto& shots = layout.beats[1].shots;
    EXPECT_EQ(layout.drop_of_shot(shots[0].whole.left() + 2.0).beat, 1);
    EXPECT_EQ(layout.drop_of_shot(shots[0].whole.left() + 2.0).slot, 0);
    EXPECT_EQ(layout.drop_of_shot(shots[0].whole.right() - 2.0).slot, 1);
    EXPECT_EQ(layout.drop_of_shot(shots[2].whole.right() + 1.0).slot, 3);
    EXPECT_EQ(layout.drop_of_shot(-50.0).beat, 0);
    EXPECT_EQ(layout.drop_of_shot(layout.width + 50.0).beat, 3);
}

TEST(OrderLayout, DropsBeatsBetweenOthers) {
    const OrderLayout layout = layout_of(demo_plan("cookery.json"));
    EXPECT_EQ(layout.drop_of_beat(0.0).beat, 0);
    EXPECT_EQ(layout.drop_of_beat(layout.beats[1].whole.right() - 1.0).beat, 2);
    EXPECT_EQ(layout.drop_of_beat(layout.width).beat, 4);
}

} // namespace
} // namespace throwline::ui
