#include "plan/any_plan.h"
#include "plan/places.h"
#include "plan/reading_support.h"

#include "catalogue/json_document.h"
#include "support/number.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::plan {
namespace {

using testing::any_plan;
using testing::tables;

/// Places are kept to the nanometre.
constexpr double kSame = 1e-8;
/// Of areas, whose outlines are some metres long.
constexpr double kSameArea_m2 = 1e-6;

/// Angles are near when they are so over a full turn; other numbers when their difference is small.
bool same_number(double a, double b) {
    return std::abs(a - b) < kSame * std::max(1.0, std::abs(a));
}

/// "0.1rad" as degrees, so that it can be compared with an angle that was written in degrees.
std::optional<double> number_of(const catalogue::JsonNode& node) {
    if (node.kind == catalogue::JsonKind::number) {
        return node.number;
    }
    if (node.kind == catalogue::JsonKind::string && node.text.ends_with("rad")) {
        return support::number_at_start(node.text) * 180.0 / std::numbers::pi;
    }
    return std::nullopt;
}

bool same(const catalogue::JsonNode& a, const catalogue::JsonNode& b) {
    const auto first = number_of(a);
    const auto second = number_of(b);
    if (first && second) {
        return same_number(*first, *second);
    }
    if (a.kind != b.kind || a.text != b.text || a.items.size() != b.items.size()
        || a.members.size() != b.members.size()) {
        return false;
    }
    for (std::size_t i = 0; i < a.items.size(); ++i) {
        if (!same(a.items[i], b.items[i])) {
            return false;
        }
    }
    for (std::size_t i = 0; i < a.members.size(); ++i) {
        if (a.members[i].key != b.members[i].key || !same(a.members[i].value, b.members[i].value)) {
            return false;
        }
    }
    return true;
}

/// Whether two plans are equal but for the last bits of their numbers.
bool nearly_equal(const Plan& a, const Plan& b) {
    return same(*catalogue::parse_json(written(a)), *catalogue::parse_json(written(b)));
}

/// Angles that the writer leaves out when they are exactly 0 must not be, or near plans would
/// differ in their keys.
Plan plan_to_move() {
    Plan plan = any_plan();
    plan.site.north = Angle::degrees(12);
    if (plan.grid) {
        plan.grid->turn = Angle::degrees(7);
    }
    for (Scenery& scenery : plan.scenery) {
        std::visit(
            [](auto& shape) {
                if constexpr (requires { shape.turn; }) {
                    shape.turn = Angle::degrees(30);
                }
            },
            scenery.shape);
    }
    for (Beat& beat : plan.beats) {
        for (auto& [person, change] : beat.marks) {
            auto* mark = std::get_if<Mark>(&change);
            if (mark != nullptr && std::holds_alternative<Angle>(mark->faces)) {
                mark->faces = Angle::degrees(33);
            }
        }
    }
    return plan;
}

RC_GTEST_PROP(Moved, ThereAndBackIsTheSame, ()) {
    const Plan plan = plan_to_move();
    const Angle turn = Angle::degrees(*rc::gen::inRange(-180, 181) + 0.25);
    const Vec2 by{*rc::gen::inRange(-50, 50) * 0.37, *rc::gen::inRange(-50, 50) * 0.11};
    const Plan there = moved(plan, by, turn);
    const Plan back = moved(moved(there, -by, Angle{}), Vec2::Zero(), -turn);
    RC_ASSERT(nearly_equal(back, plan));
}

RC_GTEST_PROP(Mirrored, TwiceIsTheSame, ()) {
    const Plan plan = plan_to_move();
    RC_ASSERT(nearly_equal(mirrored(mirrored(plan)), plan));
}

RC_GTEST_PROP(Mirrored, EveryFootprintAndLampIsItsMirrorImage, ()) {
    const Plan plan = any_plan();
    const Plan seen = mirrored(plan);
    for (std::size_t i = 0; i < plan.scenery.size(); ++i) {
        const Polygon outline = footprint(plan.scenery[i], tables());
        const Polygon image = footprint(seen.scenery[i], tables());
        RC_ASSERT(std::abs(area(outline) - area(image))
                  < kSameArea_m2 * std::max(1.0, area(outline)));
        for (const Vec2& corner : outline) {
            RC_ASSERT(contains(image, Vec2{-corner.x(), corner.y()}, 1e-6));
        }
    }
    for (std::size_t i = 0; i < plan.lamps.size(); ++i) {
        const auto point = lamp_point(plan, plan.lamps[i]);
        const auto image = lamp_point(seen, seen.lamps[i]);
        RC_ASSERT(point.has_value() == image.has_value());
        RC_ASSERT((Vec3{-point->x(), point->y(), point->z()} - *image).norm() < kSame);
    }
}

/// How far corners may miss the moved outline: what is round is drawn with the same corners
/// whichever way it is turned, half a percent outside its circle.
double slack_m(const Scenery& scenery) {
    const auto* piece = std::get_if<StockPiece>(&scenery.shape);
    const bool round =
        std::holds_alternative<CylinderPiece>(scenery.shape)
        || (piece != nullptr
            && tables().stock_item(piece->item)->shape == catalogue::StockShape::round);
    return round ? 0.01 : 1e-6;
}

RC_GTEST_PROP(Moved, LampsAndFootprintsGoWithThePlan, ()) {
    const Plan plan = any_plan();
    const Angle turn = Angle::degrees(*rc::gen::inRange(-180, 181));
    const Vec2 by{3, -7};
    const Plan there = moved(plan, by, turn);
    for (std::size_t i = 0; i < plan.lamps.size(); ++i) {
        const auto point = lamp_point(plan, plan.lamps[i]);
        const auto image = lamp_point(there, there.lamps[i]);
        RC_ASSERT(point.has_value() && image.has_value());
        const Vec2 wanted = rotated(floor_of(*point), turn.rad()) + by;
        RC_ASSERT((floor_of(*image) - wanted).norm() < kSame);
    }
    for (std::size_t i = 0; i < plan.scenery.size(); ++i) {
        for (const Vec2& corner : footprint(plan.scenery[i], tables())) {
            const Vec2 wanted = rotated(corner, turn.rad()) + by;
            const Polygon image = footprint(there.scenery[i], tables());
            RC_ASSERT(contains(image, wanted, slack_m(plan.scenery[i])));
        }
    }
}

RC_GTEST_PROP(Mirrored, IsReadable, ()) {
    const Plan seen = mirrored(any_plan());
    const auto again = testing::read(written(seen));
    if (!again) {
        RC_FAIL(testing::errors_of(again));
    }
    RC_ASSERT(*again == seen);
}

TEST(Moved, TurnsDirectionsAndNorth) {
    Plan plan;
    plan.site.north = Angle::degrees(10);
    plan.room.outline = {{0, 0}, {4, 0}, {4, 3}};
    Mark mark;
    mark.faces = Angle::degrees(20);
    plan.beats = {{{"1"}, "", {{{"a"}, mark}}, {}}};
    const Plan there = moved(plan, {1, 0}, Angle::degrees(90));
    // North is a bearing, clockwise; the page turned anticlockwise leaves it to the left.
    EXPECT_NEAR(there.site.north.deg(), -80, 1e-9);
    const auto& faces = std::get<Mark>(there.beats[0].marks.at({"a"})).faces;
    EXPECT_NEAR(std::get<Angle>(faces).deg(), 110, 1e-9);
    EXPECT_LT((there.room.outline[1] - Vec2(1, 4)).norm(), 1e-12);
}

TEST(Mirrored, SwapsLeftAndRight) {
    Plan plan;
    plan.room.outline = {{0, 0}, {4, 0}, {4, 3}};
    plan.site.north = Angle::degrees(10);
    plan.lamps.resize(1);
    plan.lamps[0].mount = StandMount{{1, 2}, Length::metres(2), ""};
    plan.lamps[0].aim = Vec3{3, 1, 1.5};
    plan.lamps[0].cut = {0.1, 0.2, 0.3, 0.4};
    Mark mark;
    mark.faces = Angle::degrees(20);
    plan.beats = {{{"1"}, "", {{{"a"}, mark}}, {}}};
    const Plan seen = mirrored(plan);
    EXPECT_EQ(seen.lamps[0].cut, (BeamCut{0.1, 0.2, 0.4, 0.3}));
    EXPECT_EQ(std::get<Vec3>(seen.lamps[0].aim), Vec3(-3, 1, 1.5));
    EXPECT_NEAR(seen.site.north.deg(), -10, 1e-12);
    const auto& faces = std::get<Mark>(seen.beats[0].marks.at({"a"})).faces;
    EXPECT_NEAR(std::get<Angle>(faces).deg(), 160, 1e-9);
}

TEST(Mirrored, FlatsShowTheirFaceToTheMirroredSide) {
    Plan plan;
    const std::vector<Length> widths{Length::metres(1), Length::metres(2)};
    plan.scenery.resize(1);
    plan.scenery[0].shape =
        FlatRun{{5, 4}, Angle::degrees(180), widths, Length::metres(3), Length::millimetres(50)};
    const FlatRun run = std::get<FlatRun>(mirrored(plan).scenery[0].shape);
    EXPECT_LT((run.from - Vec2(-2, 4)).norm(), 1e-12);
    EXPECT_EQ(run.widths, (std::vector<Length>{Length::metres(2), Length::metres(1)}));
    const Vec2 heading = unit_at(run.heading.rad());
    EXPECT_LT((heading - Vec2(-1, 0)).norm(), 1e-12);
}

TEST(Mirrored, GridPositionsKeepTheirNames) {
    Plan plan;
    Grid grid;
    grid.origin = {1, 1};
    grid.pitch_x = Length::metres(1);
    grid.pitch_y = Length::metres(2);
    grid.columns = 4;
    grid.rows = 4;
    grid.height = Length::metres(4);
    grid.turn = Angle::degrees(25);
    plan.grid = grid;
    const Plan seen = mirrored(plan);
    for (const char* name : {"A1", "B1", "A2", "D3"}) {
        const Vec2 point = *grid_point(*plan.grid, name);
        EXPECT_LT((*grid_point(*seen.grid, name) - Vec2(-point.x(), point.y())).norm(), 1e-12);
    }
}

TEST(Mirrored, TapeReadingsStayAsTaken) {
    Survey survey;
    survey.corners = {"A", "B", "C"};
    survey.readings = {{"A", "B", Length::metres(3), ""}};
    Plan plan;
    plan.survey = survey;
    EXPECT_EQ(mirrored(plan).survey, plan.survey);
    EXPECT_EQ(moved(plan, {1, 1}, Angle::degrees(5)).survey, plan.survey);
}

} // namespace
} // namespace throwline::plan
