#include "edit/flat_widths.h"
#include "edit/make.h"
#include "support/demo_plan.h"
#include "support/small_plan.h"
#include "support/taken_step.h"

#include <gtest/gtest.h>
#include <numbers>

namespace throwline::edit {
namespace {

using support::shipped_catalogue;
using support::taken;
using testing_support::bare_room;

Context context_of(const plan::Plan& plan,
                   const catalogue::Catalogue& catalogue = shipped_catalogue()) {
    return {plan, catalogue, {{"1"}, {}}};
}

std::vector<double> feet_of(const std::vector<Length>& widths) {
    std::vector<double> feet;
    for (const Length width : widths) {
        feet.push_back(std::round(width.ft() * 1000.0) / 1000.0);
    }
    return feet;
}

std::vector<double> metres_of(const std::vector<Length>& widths) {
    std::vector<double> metres;
    for (const Length width : widths) {
        metres.push_back(std::round(width.m() * 1000.0) / 1000.0);
    }
    return metres;
}

using Widths = std::vector<double>;

plan::FlatRun run_of(const plan::Plan& plan, std::size_t piece = 0) {
    return std::get<plan::FlatRun>(plan.scenery.at(piece).shape);
}

TEST(FlatSizes, AreThoseOfTheStores) {
    const FlatSizes imperial = flat_sizes(shipped_catalogue(), UnitSystem::imperial);
    EXPECT_EQ(feet_of(imperial.widths), (Widths{4, 3, 2, 1}));
    EXPECT_DOUBLE_EQ(imperial.height.ft(), 8.0);
    EXPECT_DOUBLE_EQ(imperial.thickness.in(), 3.5);
    const FlatSizes metric = flat_sizes(shipped_catalogue(), UnitSystem::metric);
    EXPECT_EQ(metres_of(metric.widths), (Widths{1.2, 0.6}));
    EXPECT_DOUBLE_EQ(metric.thickness.mm(), 90.0);
}

TEST(FlatSizes, AreTheCommonOnesWhereTheStoresHaveNone) {
    const catalogue::Catalogue empty;
    EXPECT_EQ(feet_of(flat_sizes(empty, UnitSystem::imperial).widths), (Widths{4, 2}));
    EXPECT_EQ(metres_of(flat_sizes(empty, UnitSystem::metric).widths), (Widths{1.2, 0.6}));
}

TEST(WidthsFor, ComeNearestTheLength) {
    const FlatSizes sizes = flat_sizes({}, UnitSystem::metric);
    EXPECT_EQ(metres_of(widths_for(3.0, sizes)), (Widths{1.2, 1.2, 0.6}));
    EXPECT_EQ(metres_of(widths_for(2.65, sizes)), (Widths{1.2, 1.2}));
    EXPECT_EQ(metres_of(widths_for(2.2, sizes)), (Widths{1.2, 1.2}));
    EXPECT_EQ(metres_of(widths_for(1.6, sizes)), (Widths{1.2, 0.6}));
    EXPECT_EQ(metres_of(widths_for(3.6, sizes)), (Widths{1.2, 1.2, 1.2}));
    EXPECT_EQ(metres_of(widths_for(0.05, sizes)), (Widths{0.6}));
    const FlatSizes feet = flat_sizes(shipped_catalogue(), UnitSystem::imperial);
    EXPECT_EQ(feet_of(widths_for(Length::feet(11).m(), feet)), (Widths{4, 4, 3}));
    EXPECT_EQ(feet_of(widths_for(Length::feet(8.4).m(), feet)), (Widths{4, 4}));
}

TEST(Refitted, KeepsTheFlatsThatStay) {
    const FlatSizes sizes = flat_sizes({}, UnitSystem::metric);
    const std::vector<Length> own{Length::metres(1.0), Length::metres(0.8)};
    EXPECT_EQ(metres_of(refitted(own, 1.75, sizes)), (Widths{1.0, 0.8}));
    EXPECT_EQ(metres_of(refitted(own, 3.1, sizes)), (Widths{1.0, 0.8, 1.2}));
    EXPECT_EQ(metres_of(refitted(own, 1.1, sizes)), (Widths{1.0}));
    EXPECT_EQ(metres_of(refitted(own, 0.1, sizes)), (Widths{1.0}));
}

TEST(FlatsDrawn, FaceLeftOfTheWayTheyAreDrawn) {
    const auto step = flats_drawn(context_of(bare_room()), {2, 2}, {2, 5.05});
    const plan::FlatRun run = run_of(taken(step));
    EXPECT_EQ(run.from, (Vec2{2, 2}));
    EXPECT_NEAR(run.heading.deg(), 90.0, 1e-9);
    EXPECT_EQ(metres_of(run.widths), (Widths{1.2, 1.2, 0.6}));
    EXPECT_DOUBLE_EQ(run.height.m(), 2.4);
    EXPECT_EQ(step->made, (std::vector<Thing>{{Kind::scenery, "flats", 0}}));
}

TEST(FlatsDrawn, GoOnFromARunInLineWithIt) {
    const plan::Plan first = taken(flats_drawn(context_of(bare_room()), {1, 2}, {3.4, 2}));
    // 1.5 cm beside its end at (3.4, 2), 0.6 degrees off its line.
    const auto step = flats_drawn(context_of(first), {3.41, 2.011}, {5.8, 2.025});
    const plan::Plan longer = taken(step);
    EXPECT_EQ(step->name, "Add flats to flats");
    EXPECT_EQ(longer.scenery.size(), 1U);
    EXPECT_EQ(metres_of(run_of(longer).widths), (Widths{1.2, 1.2, 1.2, 1.2}));
    EXPECT_EQ(run_of(longer).heading, run_of(first).heading);
}

TEST(FlatsDrawn, AtAnAngleBeginExactlyAtTheEnd) {
    const plan::Plan first = taken(flats_drawn(context_of(bare_room()), {1, 2}, {3.4, 2}));
    const plan::Plan corner = taken(flats_drawn(context_of(first), {3.41, 2.01}, {3.41, 4.4}));
    ASSERT_EQ(corner.scenery.size(), 2U);
    EXPECT_EQ(corner.scenery[1].id.name, "flats 2");
    EXPECT_NEAR((run_of(corner, 1).from - Vec2{3.4, 2.0}).norm(), 0.0, 1e-12);
    EXPECT_EQ(metres_of(run_of(corner).widths), (Widths{1.2, 1.2}));
}

TEST(FlatsDrawn, StandApartFromAFartherOrLockedRun) {
    plan::Plan first = taken(flats_drawn(context_of(bare_room()), {1, 2}, {3.4, 2}));
    EXPECT_EQ(taken(flats_drawn(context_of(first), {3.43, 2}, {5.8, 2})).scenery.size(), 2U);
    first.arrangement.locked = {"flats"};
    EXPECT_EQ(taken(flats_drawn(context_of(first), {3.4, 2}, {5.8, 2})).scenery.size(), 2U);
}

TEST(FlatsDrawn, RefuseTooMany) {
    const plan::Plan plan = bare_room();
    EXPECT_FALSE(flats_drawn(context_of(plan), {0, 0}, {900, 0}));
    EXPECT_FALSE(flats_drawn(context_of(plan), {2, 2}, {2, 2.01}));
    EXPECT_FALSE(flats_drawn(context_of(plan), {999, 2}, {1001, 2}));
}

TEST(DrapeDrawn, HangsAlongThePoints) {
    const std::vector<Vec2> points{{1, 1}, {1, 1}, {4, 1}, {4, 3}};
    const plan::Plan plan = taken(drape_drawn(context_of(bare_room()), points));
    const auto drape = std::get<plan::Drape>(plan.scenery.at(0).shape);
    EXPECT_EQ(drape.along, (std::vector<Vec2>{{1, 1}, {4, 1}, {4, 3}}));
    EXPECT_DOUBLE_EQ(drape.height.m(), 3.6);
    EXPECT_FALSE(drape_drawn(context_of(plan), std::vector<Vec2>{{1, 1}, {1, 1}}));
    EXPECT_FALSE(drape_drawn(context_of(plan), std::vector<Vec2>{{1, 1}, {1, 1e6}}));
}

TEST(PipeDrawn, HangsBelowTheCeiling) {
    const plan::Plan plan = taken(pipe_drawn(context_of(bare_room(10, 8, 2.5)), {1, 1}, {5, 1}));
    EXPECT_EQ(plan.pipes.at(0).id.name, "pipe");
    EXPECT_DOUBLE_EQ(plan.pipes.at(0).height.m(), 2.5);
    EXPECT_FALSE(pipe_drawn(context_of(plan), {1, 1}, {1, 1}));
    EXPECT_FALSE(pipe_drawn(context_of(plan), {1, 1}, {1, 1e4}));
}

TEST(BoxDrawn, SpansItsCorners) {
    const plan::Plan plan = taken(box_drawn(context_of(bare_room()), {4, 3}, {2, 4.5}, false));
    const auto box = std::get<plan::BoxPiece>(plan.scenery.at(0).shape);
    EXPECT_EQ(box.at, (Vec2{3, 3.75}));
    EXPECT_DOUBLE_EQ(box.width.m(), 2.0);
    EXPECT_DOUBLE_EQ(box.depth.m(), 1.5);
    const plan::Plan riser = taken(box_drawn(context_of(plan), {4, 3}, {2, 4.5}, true));
    EXPECT_EQ(riser.scenery.at(1).id.name, "platform");
    EXPECT_DOUBLE_EQ(std::get<plan::Riser>(riser.scenery.at(1).shape).height.m(), 0.2);
    EXPECT_FALSE(box_drawn(context_of(plan), {1, 1}, {1, 3}, false));
    EXPECT_FALSE(box_drawn(context_of(plan), {-900, 1}, {900, 3}, false));
}

TEST(CylinderDrawn, ReachesTheCeiling) {
    const plan::Plan plan =
        taken(cylinder_drawn(context_of(bare_room()), {4, 3}, Length::metres(0.2)));
    const auto column = std::get<plan::CylinderPiece>(plan.scenery.at(0).shape);
    EXPECT_DOUBLE_EQ(column.diameter.m(), 0.4);
    EXPECT_DOUBLE_EQ(column.height.m(), 4.0);
    EXPECT_FALSE(cylinder_drawn(context_of(plan), {4, 3}, {}));
    EXPECT_FALSE(cylinder_drawn(context_of(plan), {4, 3}, Length::metres(600)));
}

} // namespace
} // namespace throwline::edit
