#include "sheet/set_plan.h"

#include "sheet/golden.h"
#include "sheet/layout_check.h"
#include "sheet/room_sizes.h"
#include "sheet/set_pieces.h"
#include "sheet/sheet_support.h"
#include "support/small_plan.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::analysed;
using test::EvenMeasure;
using test::sheet_catalogue;

plan::Plan room_of(Polygon outline) {
    plan::Plan plan = testing_support::bare_room();
    plan.room.walls.assign(outline.size(), plan.room.walls.front());
    plan.room.outline = std::move(outline);
    return plan;
}

/// The upper right quarter is missing.
plan::Plan corner_room() {
    return room_of({{0, 0}, {7.2, 0}, {7.2, 3}, {4.5, 3}, {4.5, 5.4}, {0, 5.4}});
}

/// A court cuts in from above.
plan::Plan court_room() {
    return room_of({{0, 0}, {9, 0}, {9, 6}, {6, 6}, {6, 2.5}, {3.5, 2.5}, {3.5, 6}, {0, 6}});
}

plan::Plan splayed_room() {
    return room_of({{0, 0}, {5.2, 0}, {5.2, 4.1}, {4.1, 4.6}, {0, 4.6}});
}

Drawing set_plan_of(const plan::Plan& plan, const TextMeasure& measure,
                    const std::string& paper = "A3") {
    const checks::Analysis analysis = analysed(plan);
    SheetOptions options;
    options.paper = paper;
    options.file_hash = "0123abcd";
    options.sheet_name = "Set plan";
    auto drawing = set_plan_sheet({analysis, sheet_catalogue(), measure}, options);
    EXPECT_TRUE(drawing) << drawing.error().message;
    return *std::move(drawing);
}

std::vector<Text> sizes_on(const Drawing& drawing) {
    std::vector<Text> sizes;
    for (const Layer& layer : drawing.layers) {
        for (const Mark& mark : layer.marks) {
            const auto* text = std::get_if<Text>(&mark);
            if (text != nullptr && text->ink == Ink::dimension && layer.name == "lettering") {
                sizes.push_back(*text);
            }
        }
    }
    return sizes;
}

std::size_t count_of(const Drawing& drawing, const std::string& words) {
    const auto sizes = sizes_on(drawing);
    return static_cast<std::size_t>(std::count_if(
        sizes.begin(), sizes.end(), [&](const Text& text) { return text.text == words; }));
}

TEST(WallRows, WallsThatLookTheSameWayShareARow) {
    const auto rows = wall_rows(corner_room().room);
    ASSERT_EQ(rows.size(), 4U);
    EXPECT_EQ(rows[1].walls, (std::vector<std::size_t>{1, 3}));
    EXPECT_EQ(rows[2].walls, (std::vector<std::size_t>{2, 4}));
}

TEST(WallRows, WallsOfACourtStandAlone) {
    const auto rows = wall_rows(court_room().room);
    const auto hemmed =
        std::count_if(rows.begin(), rows.end(), [](const WallRow& row) { return row.hemmed_in; });
    EXPECT_EQ(hemmed, 2);
}

TEST(RoomDatum, IsTheSquareCornerAtTheLowerLeft) {
    const RoomDatum datum = datum_of(room_of({{0, 0.5}, {6, 0}, {6, 4}, {0, 4}}).room);
    // The lower left corner is not square here.
    EXPECT_EQ(datum.corner, 3U);
    EXPECT_NEAR(datum.of({2.0, 3.0}).x(), 2.0, 1e-12);
    EXPECT_NEAR(datum.of({2.0, 3.0}).y(), 1.0, 1e-12);
}

TEST(WallPart, KnowsARadiatorFromATable) {
    const plan::Plan plan = testing_support::bare_room();
    plan::Scenery radiator;
    radiator.shape = testing_support::box_piece({3.0, 0.06}, 1.4, 0.12, 0.6);
    const auto part = wall_part_of(plan.room, radiator);
    ASSERT_TRUE(part);
    EXPECT_EQ(part->wall, 0U);
    EXPECT_NEAR(part->from_m, 2.3, 1e-12);
    EXPECT_NEAR(part->to_m, 3.7, 1e-12);
    radiator.shape = testing_support::box_piece({3.0, 0.5}, 1.4, 0.12, 0.6);
    EXPECT_FALSE(wall_part_of(plan.room, radiator));
}

TEST(SizeText, FlatsAddUp) {
    plan::FlatRun run;
    run.widths = {Length::feet(2), Length::feet(4), Length::feet(4)};
    plan::Scenery piece;
    piece.shape = run;
    EXPECT_EQ(size_text(piece, sheet_catalogue(), UnitSystem::imperial),
              "2'-0\" + 2 x 4'-0\" = 10'-0\"");
}

TEST(PlaceText, TellsFacesNearSidesAndMiddles) {
    const plan::Plan plan = testing_support::bare_room();
    const RoomDatum datum = datum_of(plan.room);
    const auto text_of = [&](const plan::SceneryShape& shape) {
        plan::Scenery piece;
        piece.shape = shape;
        return place_text(place_of_piece(datum, piece, sheet_catalogue()), UnitSystem::metric);
    };
    plan::FlatRun run;
    run.from = {6.0, 5.0};
    run.heading = Angle::degrees(180);
    run.widths.assign(2, Length::metres(1.2));
    EXPECT_EQ(text_of(run), "x 3.60 to 6.00, y 5.00");
    plan::BoxPiece box = testing_support::box_piece({3.0, 2.0}, 1.0, 0.5, 1.0);
    EXPECT_EQ(text_of(box), "x 2.50, y 1.75");
    box.turn = Angle::degrees(20);
    EXPECT_EQ(text_of(box), "middle x 3.00, y 2.00");
}

TEST(SetPlan, ChainsOfACornerRoomAddUpToItsWalls) {
    const Drawing drawing = set_plan_of(corner_room(), EvenMeasure{});
    for (const char* words : {"4.50", "2.70", "2.40", "3.00"}) {
        EXPECT_EQ(count_of(drawing, words), 1U) << words;
    }
    EXPECT_EQ(count_of(drawing, "7.20"), 1U);
    EXPECT_EQ(count_of(drawing, "5.40"), 1U);
}

TEST(SetPlan, SplayedWallsAreMeasuredAlongThemselves) {
    const Drawing drawing = set_plan_of(splayed_room(), EvenMeasure{});
    const auto sizes = sizes_on(drawing);
    const auto splay = std::find_if(sizes.begin(), sizes.end(),
                                    [](const Text& text) { return text.text == "1.21"; });
    ASSERT_NE(splay, sizes.end());
    EXPECT_NEAR(splay->turn_rad, std::atan2(-0.5, 1.1), 1e-9);
}

TEST(SetPlan, ShowsNoLampsPeopleOrCameras) {
    const Drawing drawing = set_plan_of(test::full_plan(), EvenMeasure{});
    for (const Layer& layer : drawing.layers) {
        if (layer.name == "lamps" || layer.name == "people" || layer.name == "cameras"
            || layer.name == "coverage" || layer.name == "pools") {
            EXPECT_TRUE(layer.marks.empty()) << layer.name;
        }
    }
}

TEST(SetPlan, DimensionLinesAreTrueToScale) {
    const Drawing drawing = set_plan_of(corner_room(), EvenMeasure{});
    ASSERT_EQ(drawing.scale, "1:50");
    std::size_t overalls = 0;
    for (const Layer& layer : drawing.layers) {
        for (const Mark& mark : layer.marks) {
            const auto* path = std::get_if<Path>(&mark);
            if (path != nullptr && path->pen.ink == Ink::dimension && path->points.size() == 2
                && layer.name == "lettering") {
                const double length_mm = (path->points[1] - path->points[0]).norm();
                overalls += std::abs(length_mm - 144.0) < 1e-6 ? 1U : 0U;
            }
        }
    }
    EXPECT_GE(overalls, 1U);
}

TEST(SetPlan, LetteringIsSoundInOddRooms) {
    const TextMeasure& measure = test::session().measure();
    std::vector<plan::Plan> plans{corner_room(), court_room(), splayed_room(),
                                  testing_support::bare_room(1.2, 1.6, 2.4),
                                  testing_support::bare_room(92.0, 61.0, 16.0)};
    plan::Plan& first = plans.front();
    plan::Opening window;
    window.id = {"window"};
    window.kind = plan::OpeningKind::window;
    window.wall = 2;
    window.from_start = Length::metres(0.9);
    window.width = Length::metres(1.2);
    first.room.openings.push_back(window);
    testing_support::add_scenery(first, "pier",
                                 testing_support::box_piece({1.5, 3.6}, 0.4, 0.4, 2.7));
    for (const plan::Plan& plan : plans) {
        const LayoutFaults faults = layout_faults(set_plan_of(plan, measure), measure);
        EXPECT_TRUE(faults.overlapping.empty())
            << faults.overlapping.front().first << " and " << faults.overlapping.front().second;
        EXPECT_TRUE(faults.cut.empty()) << faults.cut.front();
        EXPECT_TRUE(faults.over_built.empty()) << faults.over_built.front();
    }
}

TEST(SetPlan, ManyPiecesGetPagesOfTheirOwn) {
    const EvenMeasure measure;
    plan::Plan plan = testing_support::bare_room();
    for (int i = 0; i < 60; ++i) {
        testing_support::add_scenery(plan, "box " + std::to_string(i),
                                     testing_support::box_piece({1.0 + 0.1 * i, 3.0}, 1, 1, 1));
    }
    const checks::Analysis analysis = analysed(plan);
    const auto jobs = set_plan_jobs({analysis, sheet_catalogue(), measure}, {});
    ASSERT_TRUE(jobs);
    ASSERT_GE(jobs->size(), 2U);
    const auto table = set_pieces_table(plan, sheet_catalogue(), datum_of(plan.room));
    std::size_t rows = 0;
    for (const lists::Section& section : table.sections) {
        rows += section.rows.size();
    }
    EXPECT_EQ(rows, 60U);
}

TEST(SetPlan, ALongRunOnASmallScaleIsToldInOneLine) {
    plan::Plan plan = testing_support::bare_room(92.0, 61.0, 16.0);
    plan::FlatRun run;
    run.from = {40.0, 40.0};
    run.widths.assign(10, Length::metres(1.2));
    run.height = Length::metres(4.0);
    testing_support::add_scenery(plan, "flats", run);
    EXPECT_EQ(count_of(set_plan_of(plan, EvenMeasure{}), "10 x 1.20 = 12.00"), 1U);
}

TEST(SetPlan, SmallPlanIsAsItWas) {
    test::expect_golden(set_plan_of(test::small_plan(), EvenMeasure{}, "A4"), "set_plan_small");
}

} // namespace
} // namespace throwline::sheet
