#include "ui/viewfinder/frame_worker.h"

#include "ui/desk_case.h"

#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::came_to;

/// A worker, and what was seen of it.
struct Working {
    CataloguePtr catalogue = support::shared_catalogue();
    plan::PlanPtr plan =
        std::make_shared<const plan::Plan>(support::demo_plan("workshop_interview.json"));
    FrameWorker worker;
    std::vector<std::shared_ptr<const FrameSeen>> seen;

    Working() {
        QObject::connect(
            &worker, &FrameWorker::seen, &worker,
            [this](std::shared_ptr<const FrameSeen> frame) { seen.push_back(std::move(frame)); });
    }
    FrameQuestion of(std::size_t shot, int side_px, Shading shading = Shading::plain) const {
        const plan::Shot& of = plan->shots[shot];
        return {plan, catalogue, of.beats.front(), of.id, side_px, shading};
    }
    bool has_whole(const FrameQuestion& question) const {
        return came_to([&] {
            return !seen.empty() && seen.back()->question == question
                   && seen.back()->image.width() == question.side_px;
        });
    }
};

TEST(FrameWorker, ShowsASmallPictureAndThenTheWholeOne) {
    for (const Shading shading : {Shading::plain, Shading::lit}) {
        Working working;
        working.worker.ask(working.of(0, 400, shading));
        ASSERT_TRUE(working.has_whole(working.of(0, 400, shading)));
        ASSERT_EQ(working.seen.size(), 2U);
        EXPECT_LT(working.seen.front()->image.width(), 400);
    }
}

TEST(FrameWorker, VeryLargePicturesComeInAMiddleSizeFirst) {
    Working working;
    working.worker.ask(working.of(0, 1600));
    ASSERT_TRUE(working.has_whole(working.of(0, 1600)));
    ASSERT_EQ(working.seen.size(), 3U);
    EXPECT_LT(working.seen[0]->image.width(), working.seen[1]->image.width());
    EXPECT_LT(working.seen[1]->image.width(), 1600);
}

TEST(FrameWorker, WhatIsAskedLastIsSeenLast) {
    Working working;
    for (const std::size_t shot : {0U, 1U, 2U, 1U, 0U}) {
        working.worker.ask(working.of(shot, 400, Shading::lit));
    }
    working.worker.ask(working.of(2, 400, Shading::lit));
    EXPECT_TRUE(working.has_whole(working.of(2, 400, Shading::lit)));
}

TEST(FrameWorker, NothingIsSeenOfWhatIsForgotten) {
    Working working;
    working.worker.ask(working.of(0, 200));
    working.worker.forget();
    working.worker.ask(working.of(1, 200));
    ASSERT_TRUE(working.has_whole(working.of(1, 200)));
    for (const auto& frame : working.seen) {
        EXPECT_EQ(frame->question, working.of(1, 200));
    }
}

TEST(FrameWorker, AnotherShadingIsOfTheSameStage) {
    Working working;
    working.worker.ask(working.of(0, 200));
    ASSERT_TRUE(working.has_whole(working.of(0, 200)));
    working.worker.ask(working.of(0, 200, Shading::lit));
    ASSERT_TRUE(working.has_whole(working.of(0, 200, Shading::lit)));
    EXPECT_EQ(working.seen.front()->raised, working.seen.back()->raised);
    EXPECT_NE(working.seen.front()->image, working.seen.back()->image);
}

} // namespace
} // namespace throwline::ui
