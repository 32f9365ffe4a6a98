#include "checks/shot_figures.h"
#include "support/light_case.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <memory>
#include <optional>
#include <stop_token>

namespace throwline::checks {

using namespace support;
using plan::LampRole;

namespace {

/// A key from the lens that gives ada 1000 / 4 x 0.25² = 16 lx, four stops under.
plan::Plan dim_room() {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, 2.0).level = 0.25;
    return plan;
}

Analysis analysed(const plan::Plan& plan) {
    return analyse(std::make_shared<const plan::Plan>(plan), lamp_catalogue()).value();
}

/// The reason with which the level on ada is accepted.
std::optional<std::string> accepted_level(const plan::Plan& plan) {
    const Analysis analysis = analysed(plan);
    const auto found =
        std::find_if(analysis.findings.begin(), analysis.findings.end(),
                     [](const Finding& finding) { return finding.check == "light-level"; });
    if (found == analysis.findings.end()) {
        ADD_FAILURE() << messages(analysis.findings);
        return std::nullopt;
    }
    return found->accepted;
}

} // namespace

TEST(Analyse, AnAcceptedFindingComesLastWithItsReason) {
    plan::Plan plan = dim_room();
    const Analysis before = analysed(plan);
    ASSERT_EQ(before.findings.front().check, "light-level") << messages(before.findings);
    plan.accepted.push_back({"light-level", shot_id("1A"), {"ada"}, "a night scene"});
    put_lamp(plan, "stray", LampRole::fill, Vec3{8.0, 2.0, 2.0}, Vec3{9.0, 1.0, 2.0});
    const Analysis after = analysed(plan);
    ASSERT_GE(after.findings.size(), 2U);
    EXPECT_EQ(after.findings.back().check, "light-level");
    EXPECT_EQ(after.findings.back().accepted, "a night scene");
    EXPECT_FALSE(after.findings.front().accepted.has_value());
}

TEST(Analyse, AnAcceptanceNeedsItsCheckShotAndThings) {
    plan::Plan plan = dim_room();
    const auto accepted_by = [&](const plan::Acceptance& acceptance) {
        plan.accepted = {acceptance};
        return accepted_level(plan).has_value();
    };
    EXPECT_TRUE(accepted_by({"light-level", {}, {}, "meant"}));
    EXPECT_TRUE(accepted_by({"light-level", shot_id("1A"), {"ada"}, "meant"}));
    EXPECT_FALSE(accepted_by({"lamp-angle", shot_id("1A"), {"ada"}, "meant"}));
    EXPECT_FALSE(accepted_by({"light-level", shot_id("1B"), {"ada"}, "meant"}));
    EXPECT_FALSE(accepted_by({"light-level", shot_id("1A"), {"bo"}, "meant"}));
    EXPECT_FALSE(accepted_by({"light-level", shot_id("1A"), {"ada", "key"}, "meant"}));
}

TEST(Analyse, TheFirstAcceptanceThatFitsGivesTheReason) {
    plan::Plan plan = dim_room();
    plan.accepted = {{"light-level", {}, {"ada"}, "first"}, {"light-level", {}, {}, "second"}};
    EXPECT_EQ(accepted_level(plan), "first");
}

TEST(Analyse, AStopThatWasAskedForGivesNothing) {
    std::stop_source source;
    const auto plan = std::make_shared<const plan::Plan>(dim_room());
    EXPECT_TRUE(analyse(plan, lamp_catalogue(), source.get_token()).has_value());
    source.request_stop();
    EXPECT_FALSE(analyse(plan, lamp_catalogue(), source.get_token()).has_value());
}

TEST(Analyse, AShotThatCannotBeResolvedLeavesTheRest) {
    plan::Plan plan = dim_room();
    plan::Shot& shot = put_shot(plan, "1B", Vec2{4.0, 1.0}, 40.0);
    shot.subjects = {person_id("nobody")};
    shot.aim = {};
    const Analysis analysis = analysed(plan);
    ASSERT_EQ(analysis.shots.size(), 2U);
    EXPECT_FALSE(figures_of(analysis.shots[1]).has_value());
    EXPECT_TRUE(says(messages(analysis.findings), "The face of ada gets"))
        << messages(analysis.findings);
}

} // namespace throwline::checks
