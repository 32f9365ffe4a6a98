#include "stage/level_map.h"

#include "stage/light_at.h"
#include "support/shipped_catalogue.h"
#include "support/small_plan.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <numeric>

namespace throwline::stage {
namespace {

using namespace testing_support;

const catalogue::Catalogue& shared_catalogue() {
    static const catalogue::Catalogue catalogue = shipped_catalogue();
    return catalogue;
}

Stage raised_stage(const plan::Plan& plan) {
    return raise(plan, shared_catalogue(), {"1"});
}

/// Three lamps of different kinds over a room with something in it.
plan::Plan lit_room() {
    plan::Plan plan = bare_room(8.0, 6.0, 4.0);
    hang_lamp(plan, "spot", "Fresnel 1 kW", {2, 1, 3.5}, Vec3{4, 3, 1.0}).focus = 1.0;
    hang_lamp(plan, "panel", "LED panel 60x60 soft", {6, 2, 3.2}, Vec3{4, 4, 0.8});
    hang_lamp(plan, "lantern", "paper lantern 50 LED 60 W", {4, 5, 2.8}, {});
    add_scenery(plan, "crate", box_piece({4.4, 3.3}, 0.8, 0.6, 1.4));
    add_scenery(plan, "shelf", box_piece({2.5, 4.4}, 1.6, 0.3, 2.0));
    add_person(plan, "ada", {5.5, 3.5}, Angle::degrees(-90));
    return plan;
}

LevelMap mapped(const plan::Plan& plan, const LevelQuestion& question = {},
                const LevelMap* previous = nullptr) {
    return *level_map(raised_stage(plan), plan.room.outline, question, previous);
}

TEST(LevelMap, AgreesWithSinglePointsFullySeen) {
    const plan::Plan plan = lit_room();
    const Stage stage = raised_stage(plan);
    const Vec3 lens{1.0, 0.5, 1.5};
    for (const std::optional<Vec3>& towards : {std::optional<Vec3>{}, std::optional{lens}}) {
        const LevelMap map = mapped(plan, {1.2, 0.25, towards});
        int compared = 0;
        for (int i = 0; i < map.columns * map.rows; i += 7) {
            const Vec3 point = raised(map.at(i % map.columns, i / map.columns), 1.2);
            const Vec3 normal = towards ? Vec3{(lens - point).normalized()} : Vec3{Vec3::UnitZ()};
            const std::vector<LampLight> lights = light_at(stage, point);
            // Both patterns over a face agree where a lamp's face is seen whole or not at all.
            if (!contains(plan.room.outline, floor_of(point), -0.01)
                || std::any_of(lights.begin(), lights.end(), [](const LampLight& light) {
                       return light.seen_share > 0.0 && light.seen_share < 1.0;
                   })) {
                continue;
            }
            const double level = sum_level_lx(lights, normal);
            EXPECT_NEAR(map.levels_lx[static_cast<std::size_t>(i)], level,
                        0.002 * level + 3.0 * kDarkest_lx);
            ++compared;
        }
        EXPECT_GT(compared, 50);
    }
}

TEST(LevelMap, IsTheSumOfItsLayers) {
    const LevelMap map = mapped(lit_room());
    ASSERT_EQ(map.layers.size(), 3U);
    double layers = 0.0;
    for (const LampLayer& layer : map.layers) {
        EXPECT_EQ(layer.levels_lx.size(), map.layers.front().levels_lx.size());
        layers = std::accumulate(layer.levels_lx.begin(), layer.levels_lx.end(), layers);
    }
    EXPECT_NEAR(std::accumulate(map.levels_lx.begin(), map.levels_lx.end(), 0.0), layers,
                1e-9 * layers);
}

TEST(LevelMap, OutsideTheRoomIsDark) {
    plan::Plan plan = lit_room();
    plan.room.outline = {{0, 0}, {8, 0}, {8, 3}, {4, 3}, {4, 6}, {0, 6}};
    plan.room.walls.assign(6, plan.room.walls.front());
    const LevelMap map = mapped(plan);
    for (int row = 0; row < map.rows; ++row) {
        for (int column = 0; column < map.columns; ++column) {
            if (!contains(plan.room.outline, map.at(column, row))) {
                EXPECT_EQ(map.levels_lx[static_cast<std::size_t>(row * map.columns + column)], 0.0);
            }
        }
    }
}

TEST(LevelMap, LargeRoomsTakeNoMorePoints) {
    plan::Plan plan = bare_room(90.0, 60.0);
    const LevelMap map = mapped(plan, {0.0, 0.05, {}});
    EXPECT_LE(map.columns, kMostColumns);
    EXPECT_LE(map.rows, kMostRows);
    EXPECT_GT(map.columns, kMostColumns / 2);
}

TEST(LevelMap, OnlyWhatALampDidIsMadeAnew) {
    plan::Plan plan = lit_room();
    const LevelMap before = mapped(plan);
    plan.lamps[0].level = 0.5;
    const LevelMap after = mapped(plan, {}, &before);
    EXPECT_NE(after.layers[0].levels_lx, before.layers[0].levels_lx);
    EXPECT_EQ(after.layers[1].levels_lx, before.layers[1].levels_lx);
    EXPECT_EQ(after.levels_lx, mapped(plan).levels_lx);
}

TEST(LevelMap, OnAnotherPlaneEverythingIsMadeAnew) {
    const plan::Plan plan = lit_room();
    const LevelMap floor = mapped(plan);
    const LevelQuestion faces{1.5, 0.1, {}};
    EXPECT_EQ(mapped(plan, faces, &floor).levels_lx, mapped(plan, faces).levels_lx);
}

TEST(LevelMap, WithoutARoomOrWhenStoppedThereIsNone) {
    plan::Plan plan = lit_room();
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(level_map(raised_stage(plan), plan.room.outline, {}, nullptr, stop.get_token()));
    EXPECT_FALSE(level_map(raised_stage(plan), {}, {}));
}

TEST(LevelMap, TellsHowFarItIs) {
    const plan::Plan plan = lit_room();
    const Stage stage = raised_stage(plan);
    std::vector<double> told;
    const LevelMap map = *level_map(stage, plan.room.outline, {}, nullptr, {},
                                    [&](double share) { told.push_back(share); });
    EXPECT_GT(told.size(), 3U);
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
    EXPECT_DOUBLE_EQ(told.back(), 1.0);
    told.clear();
    level_map(stage, plan.room.outline, {}, &map, {}, [&](double share) { told.push_back(share); });
    EXPECT_TRUE(told.empty()) << "nothing changed, so nothing is worked out";
}

/// Part of the light is worked out by then.
TEST(LevelMap, StoppedHalfWayThereIsNone) {
    const plan::Plan plan = lit_room();
    std::stop_source stop;
    EXPECT_FALSE(level_map(raised_stage(plan), plan.room.outline, {}, nullptr, stop.get_token(),
                           [&](double) { stop.request_stop(); }));
}

/// One thing done to the plan, whichever a number says.
void change(plan::Plan& plan, int which, const Vec2& by) {
    switch (which) {
    case 0:
        std::get<plan::BoxPiece>(plan.scenery[0].shape).at += by;
        return;
    case 1:
        plan.scenery.pop_back();
        return;
    case 2:
        std::get<plan::Mark>(plan.beats.front().marks[{"ada"}]).at += by;
        return;
    case 3:
        plan.lamps[0].aim = plan::Aim{Vec3{4 + by.x(), 3 + by.y(), 0.0}};
        return;
    case 4:
        plan.pipes[1].from += by;
        plan.pipes[1].to += by;
        return;
    case 5:
        plan.lamps.erase(plan.lamps.begin() + 1);
        return;
    case 6:
        add_scenery(plan, "trunk", box_piece(Vec2{Vec2{3, 2} + by}, 0.7, 0.5, 0.9));
        return;
    default:
        plan.lamps[2].beats = {{"another"}};
    }
}

/// Round figures put a lamp, a row of points and a side of the crate into one plane; whether rays
/// in it pass must not hang on which others are asked with them.
TEST(LevelMap, FromAnEarlierOneIsTheSameInThePlaneOfAFace) {
    plan::Plan plan = lit_room();
    const LevelQuestion question{0.0, 0.2, {}};
    change(plan, 0, {-0.7, -0.9});
    const LevelMap before = mapped(plan, question);
    change(plan, 0, {-0.1, 0.1});
    EXPECT_EQ(mapped(plan, question, &before).levels_lx, mapped(plan, question).levels_lx);
}

RC_GTEST_PROP(LevelMap, FromAnEarlierOneIsTheSameToTheLastBit, ()) {
    const auto offset = [] { return *rc::gen::inRange(-10, 11) / 10.0; };
    plan::Plan plan = lit_room();
    const double height_m = *rc::gen::element(0.0, 1.5);
    const LevelQuestion question{height_m, 0.2, {}};
    LevelMap map = mapped(plan, question);
    const int changes = *rc::gen::inRange(1, 4);
    for (int i = 0; i < changes; ++i) {
        plan::Plan next = plan;
        const double x = offset();
        const double y = offset();
        change(next, *rc::gen::inRange(0, 8), {x, y});
        map = mapped(next, question, &map);
        RC_ASSERT(map.levels_lx == mapped(next, question).levels_lx);
        if (next.lamps.size() == plan.lamps.size() && next.scenery.size() == plan.scenery.size()) {
            plan = next;
        }
    }
}

} // namespace
} // namespace throwline::stage
