/// One thing more in the room never shows more of anybody and never lights anybody more.

#include "checks/framing.h"
#include "checks/mark_light.h"
#include "checks/sight.h"
#include "support/demo_plan.h"

#include <gtest/gtest.h>
#include <random>

namespace throwline {
namespace {

using support::analysis_of;

/// A box somewhere on the floor, from ankle high to taller than anybody, perhaps hung in the air.
plan::Scenery random_box(const plan::Plan& plan, std::mt19937& random) {
    std::uniform_real_distribution<double> share{0.05, 0.95};
    std::uniform_real_distribution<double> size{0.1, 1.2};
    std::uniform_real_distribution<double> height{0.2, 2.6};
    std::uniform_real_distribution<double> turn{0.0, 180.0};
    Vec2 least = plan.room.outline.front();
    Vec2 most = least;
    for (const Vec2& corner : plan.room.outline) {
        least = least.cwiseMin(corner);
        most = most.cwiseMax(corner);
    }
    plan::BoxPiece box;
    const double x = share(random);
    const double y = share(random);
    box.at = least + Vec2(x * (most - least).x(), y * (most - least).y());
    box.width = Length::metres(size(random));
    box.depth = Length::metres(size(random));
    box.height = Length::metres(height(random));
    box.turn = Angle::degrees(turn(random));
    plan::Scenery scenery;
    scenery.id.name = "something in the way";
    scenery.shape = box;
    scenery.elevation = Length::metres(share(random) < 0.5 ? 0.0 : 1.0);
    return scenery;
}

double seen_share(const checks::ShotScene& scene, const stage::Figure& figure) {
    const auto sight = checks::sight_of(scene, *scene.view, figure);
    return sight ? sight->body.share : 0.0;
}

void expect_no_more_seen(const checks::Analysis& before, const checks::Analysis& after) {
    for (std::size_t i = 0; i < before.shots.size(); ++i) {
        const checks::ShotScene& open = before.shots[i];
        const checks::ShotScene& crowded = after.shots[i];
        ASSERT_EQ(open.view.has_value(), crowded.view.has_value());
        if (!open.view) {
            continue;
        }
        const auto figures = checks::subjects_on_floor(open);
        const auto again = checks::subjects_on_floor(crowded);
        for (std::size_t j = 0; j < figures.size(); ++j) {
            EXPECT_LE(seen_share(crowded, *again[j]), seen_share(open, *figures[j]) + 1e-12)
                << open.shot->id.name << " " << figures[j]->person.name;
        }
    }
}

void expect_no_more_light(const checks::Analysis& before, const checks::Analysis& after) {
    for (std::size_t i = 0; i < before.shots.size(); ++i) {
        const checks::CheckInput open_input{*before.plan, support::shipped_catalogue(),
                                            before.shots, before.beats};
        const checks::CheckInput crowded_input{*after.plan, support::shipped_catalogue(),
                                               after.shots, after.beats};
        const auto open = checks::light_at_marks(open_input, before.shots[i]);
        const auto crowded = checks::light_at_marks(crowded_input, after.shots[i]);
        ASSERT_EQ(open.size(), crowded.size());
        for (std::size_t j = 0; j < open.size(); ++j) {
            EXPECT_LE(crowded[j].facing_lx, open[j].facing_lx * (1.0 + 1e-9));
            EXPECT_LE(crowded[j].horizontal_lx, open[j].horizontal_lx * (1.0 + 1e-9));
        }
    }
}

TEST(OneThingMore, NeverShowsOrLightsAnybodyMore) {
    std::mt19937 random{7};
    for (const char* name : {"cookery_set_right.json", "workshop_interview.json"}) {
        plan::Plan plan = support::demo_plan(name);
        const checks::Analysis before = analysis_of(plan);
        for (int i = 0; i < 12; ++i) {
            plan::Plan crowded = plan;
            crowded.scenery.push_back(random_box(plan, random));
            const checks::Analysis after = analysis_of(crowded);
            expect_no_more_seen(before, after);
            expect_no_more_light(before, after);
        }
    }
}

} // namespace
} // namespace throwline
