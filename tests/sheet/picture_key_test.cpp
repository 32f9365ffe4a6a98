#include "sheet/frame_picture.h"
#include "sheet/frame_words.h"
#include "sheet/picture_key.h"
#include "support/demo_plan.h"

#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using support::analysis_of;
using support::demo_plan;

plan::Plan interview() {
    return demo_plan("workshop_interview.json");
}

TEST(PictureKey, IsTheSameForTheSamePlan) {
    const checks::Analysis a = analysis_of(interview());
    const checks::Analysis b = analysis_of(interview());
    for (std::size_t i = 0; i < a.shots.size(); ++i) {
        EXPECT_EQ(picture_key(a.shots[i]), picture_key(b.shots[i]));
    }
}

TEST(PictureKey, TellsShotsApart) {
    const checks::Analysis a = analysis_of(interview());
    EXPECT_NE(picture_key(a.shots[0]), picture_key(a.shots[1]));
}

/// Whatever moves: where the key stays, the picture does.
TEST(PictureKey, KeepsOnlyWhatLooksTheSame) {
    const plan::Plan plan = interview();
    const checks::Analysis before = analysis_of(plan);
    int kept = 0;
    int changed = 0;
    for (std::size_t piece = 0; piece < plan.scenery.size(); ++piece) {
        plan::Plan moved = plan;
        moved.scenery[piece].elevation += Length::metres(0.12);
        const checks::Analysis after = analysis_of(moved);
        for (std::size_t i = 0; i < before.shots.size(); ++i) {
            const auto a = frame_picture(before.shots[i], 96);
            const auto b = frame_picture(after.shots[i], 96);
            if (picture_key(before.shots[i]) == picture_key(after.shots[i])) {
                ++kept;
                EXPECT_EQ(*a, *b) << plan.scenery[piece].id.name << " in shot " << i;
            } else {
                ++changed;
            }
        }
    }
    EXPECT_GT(kept, 0);
    EXPECT_GT(changed, 0);
}

TEST(PictureKey, IsNothingForAShotThatFindsNobody) {
    plan::Plan plan = interview();
    for (plan::Shot& shot : plan.shots) {
        shot.aim = {};
        shot.subjects.clear();
    }
    EXPECT_EQ(picture_key(analysis_of(plan).shots.front()), std::nullopt);
}

TEST(FrameWords, SayWhatAnOperatorAsks) {
    const plan::Plan plan = interview();
    const checks::Analysis analysis = analysis_of(plan);
    const FrameWords words = frame_words(analysis.shots.front(), plan.units);
    EXPECT_EQ(words.camera, "camera A");
    EXPECT_EQ(words.focal, "50 mm");
    EXPECT_EQ(words.size, "medium close-up");
    EXPECT_NE(words.distance.find(" m to "), std::string::npos);
    EXPECT_EQ(words.line().substr(0, 20), "camera A \u00B7 50 mm \u00B7");
}

TEST(FrameWords, OfAShotThatFindsNobodyAreItsCamera) {
    plan::Plan plan = interview();
    plan.shots.front().aim = {};
    plan.shots.front().subjects.clear();
    EXPECT_EQ(frame_words(analysis_of(plan).shots.front(), plan.units).line(), "camera A");
}

} // namespace
} // namespace throwline::sheet
