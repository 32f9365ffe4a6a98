#include "sheet/clouds.h"

#include "sheet/changes_shown.h"
#include "sheet/raster_outline.h"
#include "sheet/sheet_support.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::sheet {
namespace {

const Box kArea{0, 0, 200, 100};
constexpr double kCell_mm = 4.0;

/// On paper y points down, so what runs anticlockwise there has a negative area by the formula.
double paper_area_mm2(const Polygon& outline) {
    return -signed_area(outline);
}

bool holds(const Polygon& outline, const Box& box) {
    return contains(outline, {box.left, box.top}) && contains(outline, {box.right(), box.top})
           && contains(outline, {box.left, box.bottom()})
           && contains(outline, {box.right(), box.bottom()});
}

TEST(RasterOutlines, GoAroundOneBox) {
    const Box box{9, 9, 5, 1};
    const auto outlines = raster_outlines({&box, 1}, kArea, kCell_mm);
    ASSERT_EQ(outlines.size(), 1U);
    EXPECT_DOUBLE_EQ(paper_area_mm2(outlines[0]), 2.0 * kCell_mm * kCell_mm);
    EXPECT_TRUE(holds(outlines[0], box));
    EXPECT_EQ(outlines[0].size(), 6U);
}

TEST(RasterOutlines, MergeBoxesThatOverlapAndKeepOthersApart) {
    const std::vector<Box> boxes{{10, 10, 20, 20}, {25, 25, 20, 20}, {100, 10, 10, 10}};
    const auto outlines = raster_outlines(boxes, kArea, kCell_mm);
    ASSERT_EQ(outlines.size(), 2U);
    EXPECT_TRUE(holds(outlines[0], boxes[0]) && holds(outlines[0], boxes[1]));
    EXPECT_FALSE(contains(outlines[0], {40, 14}));
    EXPECT_TRUE(holds(outlines[1], boxes[2]));
}

TEST(RasterOutlines, FillHoles) {
    const std::vector<Box> ring{{20, 20, 60, 4}, {20, 60, 60, 4}, {20, 20, 4, 40}, {76, 20, 4, 40}};
    const auto outlines = raster_outlines(ring, kArea, kCell_mm);
    ASSERT_EQ(outlines.size(), 1U);
    EXPECT_TRUE(contains(outlines[0], {50, 42}));
}

RC_GTEST_PROP(RasterOutlines, AreSimpleAndHoldEveryBox, ()) {
    std::vector<Box> boxes;
    const int count = *rc::gen::inRange(1, 12);
    for (int i = 0; i < count; ++i) {
        boxes.push_back({*rc::gen::inRange(0, 1800) / 10.0, *rc::gen::inRange(0, 800) / 10.0,
                         *rc::gen::inRange(1, 200) / 10.0, *rc::gen::inRange(1, 150) / 10.0});
    }
    const auto outlines = raster_outlines(boxes, kArea, kCell_mm);
    for (const Polygon& outline : outlines) {
        RC_ASSERT(!crosses_itself(outline));
        RC_ASSERT(paper_area_mm2(outline) > 0.0);
    }
    for (const Box& box : boxes) {
        RC_ASSERT(std::any_of(outlines.begin(), outlines.end(),
                              [&](const Polygon& outline) { return holds(outline, box); }));
    }
}

TEST(Scallop, BulgesOutwardsBetweenItsEnds) {
    // Down the left side of a cell, outwards is to the left.
    const auto arc = scallop({10, 10}, {10, 14});
    EXPECT_TRUE(arc.front().isApprox(Vec2{10, 10}));
    EXPECT_TRUE(arc.back().isApprox(Vec2{10, 14}));
    const Vec2 middle = arc[arc.size() / 2];
    EXPECT_NEAR(middle.x(), 10.0 - 0.28 * 4.0, 1e-9);
    EXPECT_NEAR(middle.y(), 12.0, 1e-9);
}

plan::Difference change_of(plan::ThingKind kind, const std::vector<Vec2>& before,
                           const std::vector<Vec2>& now) {
    plan::Difference difference;
    difference.things = {{kind, "1", before, now}};
    return difference;
}

/// A board of the area with 20 mm a metre, the plan's origin at its lower left corner.
class Clouds : public testing::Test {
  protected:
    Clouded clouded(std::vector<plan::Difference> changes, const std::string& revision = "B") {
        changes_ = std::move(changes);
        return {changes_, plan_, test::sheet_catalogue(), revision};
    }
    /// Closed paths of many points, each a cloud.
    std::vector<Path> clouds() const {
        std::vector<Path> found;
        for (const Mark& mark : board_.layers[static_cast<std::size_t>(PlanLayer::findings)]) {
            if (const auto* path = std::get_if<Path>(&mark);
                path != nullptr && path->closed && path->points.size() > 12) {
                found.push_back(*path);
            }
        }
        return found;
    }
    std::vector<Text> letters() const {
        std::vector<Text> found;
        for (const Mark& mark : board_.layers[static_cast<std::size_t>(PlanLayer::findings)]) {
            if (const auto* text = std::get_if<Text>(&mark)) {
                found.push_back(*text);
            }
        }
        return found;
    }

    plan::Plan plan_;
    std::vector<plan::Difference> changes_;
    test::EvenMeasure measure_;
    PlanFrame frame_{{0.0, 100.0}, 20.0};
    LabelField field_{kArea, measure_};
    Board board_{frame_, field_};
};

TEST_F(Clouds, StandAroundWhatIsNow) {
    draw_clouds(board_, clouded({change_of(plan::ThingKind::lamp, {{1, 1}}, {{6, 2}})}));
    ASSERT_EQ(clouds().size(), 1U);
    EXPECT_TRUE(contains(clouds()[0].points, frame_.at({6, 2})));
    EXPECT_FALSE(contains(clouds()[0].points, frame_.at({1, 1})));
    ASSERT_EQ(letters().size(), 1U);
    EXPECT_EQ(letters()[0].text, "B");
    EXPECT_FALSE(contains(clouds()[0].points, letters()[0].at));
    EXPECT_EQ(board_.used.count(LegendEntry::revised), 1U);
}

TEST_F(Clouds, StandAroundWhatIsGoneWhereItWas) {
    draw_clouds(board_, clouded({change_of(plan::ThingKind::scenery,
                                           {{2, 2}, {4, 2}, {4, 3}, {2, 3}}, {})}));
    ASSERT_EQ(clouds().size(), 1U);
    for (const Vec2& corner : changes_[0].things[0].before) {
        EXPECT_TRUE(contains(clouds()[0].points, frame_.at(corner)));
    }
}

TEST_F(Clouds, AreOneWhereTheyTouch) {
    draw_clouds(board_, clouded({change_of(plan::ThingKind::lamp, {}, {{2, 2}}),
                                 change_of(plan::ThingKind::mark, {}, {{2.4, 2}}),
                                 change_of(plan::ThingKind::lamp, {}, {{8, 4}})}));
    EXPECT_EQ(clouds().size(), 2U);
    EXPECT_EQ(letters().size(), 2U);
}

TEST_F(Clouds, TakeTheSizeOfStockFromTheCatalogue) {
    plan::Scenery piece;
    piece.id = {"1"};
    piece.shape = plan::StockPiece{"work table 6x2.5", {5, 2}, {}};
    plan_.scenery = {piece};
    draw_clouds(board_, clouded({change_of(plan::ThingKind::scenery, {}, {{5, 2}})}));
    ASSERT_EQ(clouds().size(), 1U);
    // 6 ft by 2.5 ft.
    const Vec2 corner = Vec2{Length::feet(3).m(), Length::feet(1.25).m()};
    EXPECT_TRUE(contains(clouds()[0].points, frame_.at(Vec2{5, 2} + corner)));
    EXPECT_TRUE(contains(clouds()[0].points, frame_.at(Vec2{5, 2} - corner)));
}

TEST_F(Clouds, LeaveOutWhatHasNoPlaceOrHardlyMoved) {
    plan::Difference slight = change_of(plan::ThingKind::lamp, {{1, 1}}, {{1, 1}});
    slight.gathering = plan::Gathering::slight;
    draw_clouds(board_,
                clouded({slight, change_of(plan::ThingKind::targets, {}, {}),
                         change_of(plan::ThingKind::grid, {{1, 1}}, {{1, 1}}),
                         change_of(plan::ThingKind::room, {}, {{0, 0}, {9, 0}, {9, 4}, {0, 4}})}));
    EXPECT_TRUE(clouds().empty());
    EXPECT_EQ(board_.used.count(LegendEntry::revised), 0U);
}

TEST_F(Clouds, HaveAnEmptyTriangleForALongRevision) {
    draw_clouds(board_, clouded({change_of(plan::ThingKind::lamp, {}, {{6, 2}})}, "third of May"));
    EXPECT_EQ(clouds().size(), 1U);
    EXPECT_TRUE(letters().empty());
}

TEST_F(Clouds, KeepLetteringOff) {
    draw_clouds(board_, clouded({change_of(plan::ThingKind::lamp, {}, {{5, 2.5}})}));
    const auto placed =
        field_.find({.anchor = frame_.at({5, 2.5}), .half_mm = {3, 3}, .size_mm = {12, 3}});
    ASSERT_TRUE(placed);
    const std::vector<Path> drawn = clouds();
    ASSERT_EQ(drawn.size(), 1U);
    for (const Vec2& point : drawn[0].points) {
        EXPECT_FALSE(placed->box.contains(point));
    }
}

TEST(ChangesOf, LeaveOutMarksAndShotsThatTheSheetDoesNotShow) {
    plan::Plan plan = test::small_plan();
    plan::Beat beat;
    beat.id = {"later"};
    plan.beats.push_back(beat);
    const checks::Analysis analysis = test::analysed(plan);
    SheetOptions options;
    options.beat = plan.beats.front().id;
    const auto selection = selected(analysis, options);
    ASSERT_TRUE(selection);
    const auto mark_in = [](const std::string& name) {
        plan::Difference difference = change_of(plan::ThingKind::mark, {}, {{1, 1}});
        difference.things.front().beat = name;
        return difference;
    };
    const std::vector<plan::Difference> all{mark_in(options.beat.name), mark_in("later"),
                                            change_of(plan::ThingKind::shot, {{1, 1}}, {}),
                                            change_of(plan::ThingKind::lamp, {}, {{2, 2}})};
    const auto shown = changes_of(all, *selection);
    ASSERT_EQ(shown.size(), 2U);
    EXPECT_EQ(shown[0].things.front().beat, options.beat.name);
    EXPECT_EQ(shown[1].things.front().kind, plan::ThingKind::lamp);
}

} // namespace
} // namespace throwline::sheet
