#include "checks/power_checks.h"
#include "support/rig_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

std::vector<Finding> counts(const plan::Plan& plan) {
    return rig_findings(kit_count, plan);
}

} // namespace

TEST(KitCount, AsManyAsThereAreIsEnough) {
    plan::Plan plan = small_room();
    plug_in(plan, "1", "");
    plug_in(plan, "2", "");
    plan.kit = {{"one kilowatt", 2}, {"medium light stand", 2}};
    EXPECT_TRUE(counts(plan).empty());
}

TEST(KitCount, OneTooManyNamesAllThatUseIt) {
    plan::Plan plan = small_room();
    plug_in(plan, "1", "");
    plug_in(plan, "2", "");
    plug_in(plan, "3", "", "led lamp");
    plan.kit = {{"one kilowatt", 1}, {"led lamp", 1}};
    const auto findings = counts(plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"1", "2"}));
    EXPECT_EQ(findings[0].working.result, "1 too many");
    EXPECT_TRUE(says(findings[0].message, "2 of \"one kilowatt\"")) << findings[0].message;
}

TEST(KitCount, StandsLensesSupportsAndFurnitureAreCounted) {
    plan::Plan plan = small_room();
    put_camera(plan, "camera 2", {1.0, 1.0});
    plug_in(plan, "1", "");
    put_box(plan, "chair", {2.0, 2.0}, {1.0, 1.0, 1.0}).shape =
        plan::StockPiece{"dining chair", {2.0, 2.0}, {}};
    plan.kit = {
        {"medium light stand", 0}, {"test zoom", 1}, {"test stand", 1}, {"dining chair", 0}};
    EXPECT_EQ(counts(plan).size(), 4U) << messages(counts(plan));
}

TEST(KitCount, WhatIsNotOnTheListIsNotCounted) {
    plan::Plan plan = small_room();
    plug_in(plan, "1", "");
    EXPECT_TRUE(counts(plan).empty());
}

TEST(KitCount, WhatIsOwnedNeedNotBeUsed) {
    plan::Plan plan = small_room();
    plan.kit = {{"one kilowatt", 0}, {"led lamp", 4}};
    EXPECT_TRUE(counts(plan).empty());
}

} // namespace throwline::checks
