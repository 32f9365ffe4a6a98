#include "sheet/shot_sheet.h"

#include "base/length_text.h"
#include "checks/shot_figures.h"
#include "checks/wording.h"
#include "sheet/clip.h"
#include "sheet/coverage_fan.h"
#include "sheet/drawn_words.h"
#include "sheet/golden.h"
#include "sheet/sheet_support.h"
#include "sheet/shot_words.h"

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

std::vector<Drawing> shots_of(const checks::Analysis& analysis, const SheetOptions& options = {}) {
    return pages_of({analysis, sheet_catalogue(), session().measure()}, options, "shots");
}

TEST(ShotSheet, EveryShotHasItsPage) {
    const checks::Analysis analysis = analysed(full_plan());
    const std::vector<Drawing> pages = shots_of(analysis);
    ASSERT_EQ(pages.size(), analysis.plan->shots.size());
    for (std::size_t i = 0; i < pages.size(); ++i) {
        EXPECT_NE(pages[i].title.find("Shot " + analysis.plan->shots[i].id.name),
                  std::string::npos);
    }
}

TEST(ShotSheet, ShowsOnlyItsCameraAndThePeopleOfItsBeat) {
    const checks::Analysis analysis = analysed(full_plan());
    SheetOptions options;
    options.shots = {{"1A"}};
    const std::vector<Drawing> pages = shots_of(analysis, options);
    ASSERT_EQ(pages.size(), 1U);
    EXPECT_EQ(count_of(pages.front(), "camera 1"), 1U);
    EXPECT_EQ(count_of(pages.front(), "camera 2"), 0U);
    EXPECT_EQ(count_of(pages.front(), "Kofi"), 0U);
}

TEST(ShotSheet, FiguresAgreeWithTheChecks) {
    const checks::Analysis analysis = analysed(small_plan());
    const auto figures = checks::figures_of(analysis.shots.front());
    ASSERT_TRUE(figures);
    const std::string words = all_words(shots_of(analysis).front());
    for (const std::string& figure :
         {checks::focal_text(figures->view.focal), checks::stop_text(figures->view.stop),
          degrees_text(figures->view.angle.horizontal),
          shown(figures->sharp->near_limit, UnitSystem::metric),
          shown(figures->view.focus_distance, UnitSystem::metric),
          shown(Length::metres(figures->subjects.front().depth_m), UnitSystem::metric),
          optics::name_of(figures->subjects.front().frame->size)}) {
        EXPECT_NE(words.find(figure), std::string::npos) << figure;
    }
    // 0.60 m up the page from the bottom wall, 2.40 m from the right one.
    EXPECT_NE(words.find("0.60 m from wall 1"), std::string::npos) << words;
    EXPECT_NE(words.find("2.40 m from wall 2"), std::string::npos) << words;
}

TEST(ShotSheet, OnlyFindingsOfTheShotAreNumbered) {
    checks::Analysis analysis = analysed(full_plan());
    checks::Finding mine;
    mine.check = "made-up";
    mine.shot = {"1A"};
    mine.message = "This is about 1A.";
    checks::Finding other = mine;
    other.shot = {"2B"};
    other.message = "This is about 2B.";
    analysis.findings = {mine, other};
    SheetOptions options;
    options.shots = {{"1A"}};
    const std::string words = all_words(shots_of(analysis, options).front());
    EXPECT_NE(words.find("This is about 1A."), std::string::npos);
    EXPECT_EQ(words.find("This is about 2B."), std::string::npos);
}

TEST(ShotSheet, IsDrawnLargerThanAWholeLargeRoom) {
    plan::Plan plan = small_plan();
    plan.room.outline = {{0.0, 0.0}, {40.0, 0.0}, {40.0, 30.0}, {0.0, 30.0}};
    const checks::Analysis analysis = analysed(plan);
    const SheetInput input{analysis, sheet_catalogue(), session().measure()};
    EXPECT_EQ(pages_of(input, {}, "floor-plan").front().scale, "1:200");
    EXPECT_EQ(shots_of(analysis).front().scale, "1:20");
}

TEST(ShotSheet, NothingOfTheCutPlanLeavesItsField) {
    plan::Plan plan = small_plan();
    plan.room.outline = {{-20.0, -20.0}, {40.0, -20.0}, {40.0, 30.0}, {-20.0, 30.0}};
    const Drawing page = shots_of(analysed(plan)).front();
    const Box sheet{0.0, 0.0, page.width_mm, page.height_mm};
    for (const Layer& layer : page.layers) {
        for (const Mark& mark : layer.marks) {
            if (const auto* path = std::get_if<Path>(&mark)) {
                for (const Vec2& point : path->points) {
                    EXPECT_TRUE(sheet.inset(9.9).contains(point)) << layer.name;
                }
            }
        }
    }
}

TEST(ShotSheet, AShotThatFindsNobodyHasNoPage) {
    plan::Plan plan = small_plan();
    plan.beats.front().marks.clear();
    const checks::Analysis analysis = analysed(plan);
    const auto jobs = shot_jobs({analysis, sheet_catalogue(), session().measure()}, {});
    ASSERT_TRUE(jobs);
    EXPECT_TRUE(jobs->empty());
}

TEST(ShotSheet, SmallPlanIsAsItWas) {
    const checks::Analysis analysis = analysed(small_plan());
    SheetOptions options;
    options.paper = "A4";
    options.file_hash = "0123abcd";
    options.findings = false;
    const EvenMeasure measure;
    test::expect_golden(
        test::with_blank_pictures(
            pages_of({analysis, sheet_catalogue(), measure}, options, "shots").front()),
        "shot_small");
}

TEST(CoverageFanAmong, AThingInTheWayCutsTheFan) {
    const Polygon room{{0.0, 0.0}, {10.0, 0.0}, {10.0, 10.0}, {0.0, 10.0}};
    const std::vector<Polygon> things{rectangle({5.0, 5.0}, 1.0, 1.0, 0.0)};
    const Polygon fan = coverage_fan_among(room, things, {5.0, 0.5}, 1.5707, 1.5709);
    ASSERT_GT(fan.size(), 2U);
    for (std::size_t i = 1; i < fan.size(); ++i) {
        EXPECT_NEAR(fan[i].y(), 4.5, 1e-9);
    }
    // Beside it, the fan goes on to the wall.
    const Polygon open = coverage_fan_among(room, things, {2.0, 0.5}, 1.5707, 1.5709);
    EXPECT_NEAR(open[1].y(), 10.0, 1e-9);
    // What it stands in hides nothing.
    const Polygon within = coverage_fan_among(room, things, {5.0, 5.0}, 1.5707, 1.5709);
    EXPECT_NEAR(within[1].y(), 10.0, 1e-9);
}

TEST(Clipped, ALineIsCutAtTheWindow) {
    const Box window{0.0, 0.0, 10.0, 10.0};
    const Marks marks = clipped(line({-5.0, 5.0}, {5.0, 5.0}, Pen{}), window);
    ASSERT_EQ(marks.size(), 1U);
    const auto& path = std::get<Path>(marks.front());
    EXPECT_NEAR(path.points.front().x(), 0.0, 1e-12);
    EXPECT_NEAR(path.points.back().x(), 5.0, 1e-12);
    EXPECT_TRUE(clipped(line({-5.0, -5.0}, {-1.0, 15.0}, Pen{}), window).empty());
}

TEST(Clipped, AFillKeepsItsShareOfTheWindow) {
    const Box window{0.0, 0.0, 10.0, 10.0};
    const Path square =
        outline({{-5.0, -5.0}, {5.0, -5.0}, {5.0, 5.0}, {-5.0, 5.0}}, Pen{}, solid(Ink::camera));
    double area_mm2 = 0.0;
    for (const Mark& mark : clipped(square, window)) {
        const auto& path = std::get<Path>(mark);
        area_mm2 += path.closed ? area(path.points) : 0.0;
    }
    EXPECT_NEAR(area_mm2, 25.0, 1e-9);
}

TEST(Clipped, RoundThingsAndWordsOutsideAreDropped) {
    const Box window{0.0, 0.0, 10.0, 10.0};
    EXPECT_TRUE(clipped(Circle{{20.0, 5.0}, 2.0, Pen{}, {}}, window).empty());
    EXPECT_EQ(clipped(Circle{{5.0, 5.0}, 2.0, Pen{}, {}}, window).size(), 1U);
    const Marks crossing = clipped(Circle{{0.0, 5.0}, 2.0, Pen{}, {}}, window);
    ASSERT_FALSE(crossing.empty());
    for (const Vec2& point : std::get<Path>(crossing.front()).points) {
        EXPECT_GE(point.x(), -1e-12);
    }
    Text text;
    text.at = {20.0, 5.0};
    EXPECT_TRUE(clipped(text, window).empty());
}

} // namespace
} // namespace throwline::sheet
