#include "sheet/section.h"

#include "sheet/golden.h"
#include "sheet/layout_check.h"
#include "sheet/section_heights.h"
#include "sheet/section_lines.h"
#include "sheet/section_room.h"
#include "sheet/sheet_support.h"
#include "sheet/silhouettes.h"
#include "support/small_plan.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <numbers>
#include <set>

namespace throwline::sheet {
namespace {

using test::analysed;
using test::EvenMeasure;
using test::sheet_catalogue;

constexpr double kHundredth_rad = 0.01 * std::numbers::pi / 180.0;

/// A cut with what it stands on.
class Cutting {
  public:
    explicit Cutting(const plan::Plan& plan, const SectionLine& line = {})
        : analysis_{analysed(plan)} {
        options.section = line;
        options.paper = "A3";
        options.file_hash = "0123abcd";
        options.sheet_name = "Section";
    }

    SheetInput input() const { return {analysis_, sheet_catalogue(), measure_}; }
    Result<SectionCut> cut() { return section_cut(input(), options, bare_); }
    Result<Drawing> drawing() const { return section_sheet(input(), options); }

    SheetOptions options;

  private:
    checks::Analysis analysis_;
    EvenMeasure measure_;
    stage::Stage bare_;
};

SectionLine along_shot(const std::string& name) {
    SectionLine line;
    line.shot = {name};
    return line;
}

SectionLine between(const Vec2& from, const Vec2& to) {
    SectionLine line;
    line.ends = {from, to};
    return line;
}

const Layer& layer_of(const Drawing& drawing, const std::string& name) {
    return *std::find_if(drawing.layers.begin(), drawing.layers.end(),
                         [&](const Layer& layer) { return layer.name == name; });
}

/// Single strokes of one ink on a layer.
std::vector<Path> strokes(const Drawing& drawing, const std::string& layer, Ink ink) {
    std::vector<Path> found;
    for (const Mark& mark : layer_of(drawing, layer).marks) {
        const auto* path = std::get_if<Path>(&mark);
        if (path != nullptr && path->points.size() == 2 && path->pen.ink == ink) {
            found.push_back(*path);
        }
    }
    return found;
}

double rise_rad(const Path& path) {
    const Vec2 way = path.points[1] - path.points[0];
    return std::atan2(-way.y(), std::abs(way.x()));
}

TEST(SectionCut, GoesFromTheCameraThroughItsFirstSubject) {
    Cutting cutting{test::full_plan(), along_shot("2A")};
    const auto cut = cutting.cut();
    ASSERT_TRUE(cut);
    EXPECT_EQ(cut->name, "Section along shot 2A");
    const stage::Figure* ines = cut->stage->figure({"Ines"});
    ASSERT_NE(ines, nullptr);
    EXPECT_NEAR(cut->ahead_m(floor_of(ines->eyes)), 0.0, 1e-12);
    EXPECT_GT(cut->along_m(floor_of(ines->eyes)), 0.0);
}

TEST(SectionCut, LooksToTheLeftOfItsLine) {
    Cutting cutting{test::full_plan(), between({1.0, 2.0}, {9.0, 2.0})};
    const auto cut = cutting.cut();
    ASSERT_TRUE(cut);
    EXPECT_NEAR(cut->ahead_m({4.0, 5.0}), 3.0, 1e-12);
    EXPECT_NEAR(cut->along_m({4.0, 5.0}), 3.0, 1e-12);
}

TEST(SectionCut, LeavesAndEntersACornerRoomAgain) {
    plan::Plan plan = testing_support::bare_room();
    plan.room.outline = {{0, 0}, {9, 0}, {9, 6}, {6, 6}, {6, 2.5}, {3.5, 2.5}, {3.5, 6}, {0, 6}};
    plan.room.walls.assign(8, plan.room.walls.front());
    Cutting cutting{plan, between({1.0, 4.0}, {2.0, 4.0})};
    const auto cut = cutting.cut();
    ASSERT_TRUE(cut);
    ASSERT_EQ(cut->inside.size(), 2U);
    EXPECT_NEAR(cut->inside[0].to_m - cut->inside[0].from_m, 3.5, 1e-12);
    EXPECT_NEAR(cut->inside[1].to_m - cut->inside[1].from_m, 3.0, 1e-12);
    EXPECT_EQ(walls_cut(*cut, plan.room).size(), 4U);
    EXPECT_TRUE(cutting.drawing());
}

TEST(SectionCut, SaysWhatIsWrongWithItsLine) {
    const auto message = [](const SectionLine& line) {
        Cutting cutting{test::full_plan(), line};
        const auto cut = cutting.cut();
        return cut ? std::string{} : cut.error().message;
    };
    EXPECT_EQ(message(along_shot("2X")), "there is no shot \"2X\"");
    EXPECT_EQ(message(between({1.0, 1.0}, {1.0, 1.0})),
              "the two ends of the section's line are one place");
    EXPECT_EQ(message(between({20.0, 0.0}, {20.0, 5.0})), "the section's line misses the room");
}

TEST(Section, ViewLinesStandAtTheAnglesOfTheOptics) {
    for (const char* shot : {"1A", "2A", "3C"}) {
        Cutting cutting{test::full_plan(), along_shot(shot)};
        const auto cut = cutting.cut();
        ASSERT_TRUE(cut);
        const optics::Frame& frame = cut->shot->view->frame;
        const auto elevation = [](const Vec3& way) {
            return std::atan2(way.z(), floor_of(way).norm());
        };
        const auto drawing = cutting.drawing();
        ASSERT_TRUE(drawing);
        std::vector<double> rises;
        for (const Path& path : strokes(*drawing, "cameras", Ink::camera)) {
            rises.push_back(rise_rad(path));
        }
        ASSERT_EQ(rises.size(), 3U);
        EXPECT_NEAR(rises[0], elevation(frame.ray_direction({0.0, 1.0})), kHundredth_rad);
        EXPECT_NEAR(rises[1], elevation(frame.ray_direction({0.0, -1.0})), kHundredth_rad);
        EXPECT_NEAR(rises[2], elevation(frame.ray_direction({0.0, 0.0})), kHundredth_rad);
        EXPECT_NEAR(rises[0] - rises[1], cut->shot->view->angle.vertical.rad(), kHundredth_rad);
    }
}

TEST(Section, HeightsAreTrueToScale) {
    Cutting cutting{test::full_plan(), between({1.0, 2.0}, {9.0, 2.0})};
    cutting.options.paper = "A2";
    const auto drawing = cutting.drawing();
    ASSERT_TRUE(drawing);
    ASSERT_EQ(drawing->scale, "1:50");
    std::set<double> chain_mm;
    for (const Path& path : strokes(*drawing, "lettering", Ink::dimension)) {
        const Vec2 way = path.points[1] - path.points[0];
        if (way.x() == 0.0) {
            chain_mm.insert(std::round(std::abs(way.y()) * 1e6) / 1e6);
        }
    }
    // Floor to ceiling, 5.0 m, as a chain, its overall, and the marks of single heights.
    EXPECT_TRUE(chain_mm.count(100.0));
}

TEST(Section, ALampInThePlaneOfTheCutIsDrawnAtItsTrueAngles) {
    plan::Plan plan = testing_support::bare_room();
    testing_support::hang_lamp(plan, "key", "Fresnel 650 W", {2.0, 4.0, 3.5}, Vec3{5.0, 4.0, 1.5});
    Cutting cutting{plan, between({1.0, 4.0}, {9.0, 4.0})};
    const auto cut = cutting.cut();
    ASSERT_TRUE(cut);
    const stage::PlacedLamp& lamp = cut->stage->lamps.front();
    const auto beam = side_beam(*cut, plan.room, lamp);
    ASSERT_TRUE(beam);
    const auto fall = [&](const Vec2& end) {
        return std::atan2(beam->face.y() - end.y(), end.x() - beam->face.x());
    };
    EXPECT_NEAR(fall(beam->aim), beam->elevation.rad(), kHundredth_rad);
    EXPECT_NEAR(fall(beam->lower) - fall(beam->aim), lamp.beam.beam.rad() / 2.0, kHundredth_rad);
    EXPECT_NEAR(fall(beam->aim) - fall(beam->upper), lamp.beam.beam.rad() / 2.0, kHundredth_rad);
    EXPECT_NEAR(beam->off_the_cut.rad(), 0.0, 1e-6);
    EXPECT_NEAR(beam->distance.m(), (*lamp.target - lamp.face).norm(), 1e-12);
}

TEST(Silhouettes, ShowWhatLiesAheadWithinTheDepth) {
    plan::Plan plan = testing_support::bare_room();
    testing_support::add_scenery(plan, "near", testing_support::box_piece({5.0, 3.0}, 1, 1, 1));
    testing_support::add_scenery(plan, "far", testing_support::box_piece({5.0, 7.0}, 1, 1, 1));
    testing_support::add_scenery(plan, "behind", testing_support::box_piece({5.0, 1.0}, 1, 1, 1));
    SectionLine line = between({1.0, 2.0}, {9.0, 2.0});
    line.depth = Length::metres(3.0);
    Cutting cutting{plan, line};
    const auto cut = cutting.cut();
    ASSERT_TRUE(cut);
    std::set<std::string> seen;
    for (const Silhouette& shape : silhouettes(*cut)) {
        seen.insert(cut->stage->owners[static_cast<std::size_t>(shape.owner)].name);
    }
    EXPECT_EQ(seen, std::set<std::string>{"near"});
    EXPECT_EQ(not_shown(*cut, stage::OwnerKind::scenery),
              (std::vector<std::string>{"far", "behind"}));
}

TEST(Silhouettes, AStandingPersonIsAsTallAsTheyAre) {
    plan::Plan plan = testing_support::bare_room();
    testing_support::add_person(plan, "Ana", {5.0, 4.0}, Angle::degrees(0), plan::Pose::stand,
                                1.75);
    Cutting cutting{plan, between({1.0, 2.0}, {9.0, 2.0})};
    const auto cut = cutting.cut();
    ASSERT_TRUE(cut);
    Extent extent;
    for (const Silhouette& shape : silhouettes(*cut)) {
        for (const Vec2& corner : shape.outline) {
            extent.include(corner);
        }
    }
    EXPECT_NEAR(extent.low.y(), 0.0, 1e-6);
    EXPECT_NEAR(extent.high.y(), 1.75, 0.01);
}

TEST(Levels, TellHeightsFromTheFloorUp) {
    Cutting cutting{test::full_plan(), between({1.0, 2.0}, {9.0, 2.0})};
    const auto cut = cutting.cut();
    ASSERT_TRUE(cut);
    const auto levels = levels_of(*cut, test::full_plan(), sheet_catalogue());
    ASSERT_GT(levels.size(), 4U);
    EXPECT_EQ(levels.front().words, "floor");
    EXPECT_EQ(levels.back().words, "ceiling");
    EXPECT_TRUE(std::is_sorted(levels.begin(), levels.end(), [](const Level& a, const Level& b) {
        return a.height_m < b.height_m;
    }));
}

TEST(Section, LetteringIsSound) {
    const TextMeasure& measure = test::session().measure();
    const checks::Analysis analysis = analysed(test::full_plan());
    for (const SectionLine& line :
         {SectionLine{}, along_shot("3B"), between({1.0, 2.0}, {9.0, 2.0}),
          between({9.0, 7.0}, {2.0, 1.0})}) {
        SheetOptions options;
        options.section = line;
        const auto drawing = section_sheet({analysis, sheet_catalogue(), measure}, options);
        ASSERT_TRUE(drawing) << drawing.error().message;
        const LayoutFaults faults = layout_faults(*drawing, measure);
        EXPECT_TRUE(faults.overlapping.empty())
            << faults.overlapping.front().first << " and " << faults.overlapping.front().second;
        EXPECT_TRUE(faults.cut.empty()) << faults.cut.front();
    }
}

TEST(Section, SmallPlanIsAsItWas) {
    Cutting cutting{test::small_plan()};
    cutting.options.paper = "A4";
    const auto drawing = cutting.drawing();
    ASSERT_TRUE(drawing);
    test::expect_golden(*drawing, "section_small");
}

} // namespace
} // namespace throwline::sheet
