#include "sheet/camera_card.h"

#include "checks/shot_figures.h"
#include "checks/wording.h"
#include "sheet/drawn_words.h"
#include "sheet/golden.h"
#include "sheet/sheet_support.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::all_words;
using test::analysed;
using test::count_of;
using test::EvenMeasure;
using test::full_plan;
using test::pages_of;
using test::session;
using test::sheet_catalogue;
using test::small_plan;

SheetOptions on(const std::string& paper) {
    SheetOptions options;
    options.paper = paper;
    return options;
}

std::vector<Drawing> cards_of(const checks::Analysis& analysis, const SheetOptions& options) {
    return pages_of({analysis, sheet_catalogue(), session().measure()}, options, "camera-cards");
}

TEST(CameraCards, EveryCameraHasACardWithItsShots) {
    const checks::Analysis analysis = analysed(full_plan());
    const std::vector<Drawing> cards = cards_of(analysis, on("A4"));
    ASSERT_EQ(cards.size(), 3U);
    for (std::size_t i = 0; i < cards.size(); ++i) {
        const plan::Camera& camera = analysis.plan->cameras[i];
        EXPECT_EQ(count_of(cards[i], camera.id.name), 1U);
        for (const plan::Shot& shot : analysis.plan->shots) {
            EXPECT_EQ(count_of(cards[i], shot.id.name), shot.camera == camera.id ? 1U : 0U)
                << camera.id.name << shot.id.name;
        }
    }
}

TEST(CameraCards, NamesOfShotsAreLarge) {
    const std::vector<Drawing> cards = cards_of(analysed(small_plan()), on("A4"));
    for (const Text& text : test::texts_of(cards.front())) {
        EXPECT_GE(text.height_mm, 2.5) << text.text;
        if (text.text == "1A") {
            EXPECT_GE(text.height_mm, 6.0);
        }
    }
}

TEST(CameraCards, FiguresAgreeWithTheChecks) {
    const checks::Analysis analysis = analysed(small_plan());
    const auto figures = checks::figures_of(analysis.shots.front());
    ASSERT_TRUE(figures);
    const std::string words = all_words(cards_of(analysis, on("A4")).front());
    EXPECT_NE(words.find(checks::focal_text(figures->view.focal) + ", "
                         + checks::stop_text(figures->view.stop)),
              std::string::npos)
        << words;
    EXPECT_NE(words.find("0.60 m from wall 1"), std::string::npos) << words;
    EXPECT_NE(words.find("Not to scale"), std::string::npos);
}

TEST(CameraCards, ManyShotsGoOnAndNoneIsLost) {
    plan::Plan plan = small_plan();
    const plan::Shot first = plan.shots.front();
    for (int i = 2; i <= 30; ++i) {
        plan::Shot shot = first;
        shot.id = {"1-" + std::to_string(i)};
        plan.shots.push_back(shot);
    }
    const checks::Analysis analysis = analysed(plan);
    const std::vector<Drawing> cards = cards_of(analysis, on("A4"));
    EXPECT_GT(cards.size(), 3U);
    for (const plan::Shot& shot : plan.shots) {
        std::size_t count = 0;
        for (const Drawing& card : cards) {
            count += count_of(card, shot.id.name);
        }
        EXPECT_EQ(count, 1U) << shot.id.name;
    }
    for (const Drawing& card : cards) {
        EXPECT_EQ(count_of(card, "camera 1"), 1U);
    }
}

TEST(CameraCards, EachShotHasItsPicture) {
    const checks::Analysis analysis = analysed(full_plan());
    std::size_t pictures = 0;
    for (const Drawing& card : cards_of(analysis, on("A4"))) {
        for (const Mark& mark : card.layers.front().marks) {
            pictures += std::holds_alternative<Picture>(mark) ? 1U : 0U;
        }
    }
    EXPECT_EQ(pictures, analysis.plan->shots.size());
}

TEST(CameraCards, SmallPlanIsAsItWas) {
    const checks::Analysis analysis = analysed(small_plan());
    SheetOptions options = on("A4");
    options.file_hash = "0123abcd";
    const EvenMeasure measure;
    test::expect_golden(
        test::with_blank_pictures(
            pages_of({analysis, sheet_catalogue(), measure}, options, "camera-cards").front()),
        "camera_card_small");
}

} // namespace
} // namespace throwline::sheet
