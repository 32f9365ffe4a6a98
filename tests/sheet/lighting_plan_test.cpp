#include "sheet/lighting_plan.h"

#include "checks/circuit_sum.h"
#include "sheet/drawn_words.h"
#include "sheet/golden.h"
#include "sheet/lamp_key.h"
#include "sheet/sheet_support.h"

#include <gtest/gtest.h>
#include <map>

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

Drawing lighting_plan_of(const checks::Analysis& analysis, const SheetOptions& options = {}) {
    return pages_of({analysis, sheet_catalogue(), session().measure()}, options, "lighting-plan")
        .front();
}

TEST(LightingPlan, EveryLampIsLetteredOnce) {
    const checks::Analysis analysis = analysed(full_plan());
    SheetOptions options;
    options.paper = "A1";
    const Drawing drawing = lighting_plan_of(analysis, options);
    for (const plan::Lamp& lamp : analysis.plan->lamps) {
        EXPECT_EQ(count_of(drawing, lamp.id.name), 1U) << lamp.id.name;
        EXPECT_EQ(
            count_of(drawing, "ch " + std::to_string(lamp.channel) + ", " + lamp.circuit.name), 1U)
            << lamp.id.name;
    }
}

TEST(LightingPlan, ALampSaysWhereItHangsAndWhatItIs) {
    const checks::Analysis analysis = analysed(small_plan());
    const Drawing drawing = lighting_plan_of(analysis);
    EXPECT_EQ(count_of(drawing, "LED panel 60x30 soft at 100 %"), 1U);
    EXPECT_EQ(count_of(drawing, "stand, 2.20 m up"), 2U);
}

TEST(LightingPlan, EveryLampOfACrowdedRigKeepsAllItsWords) {
    const checks::Analysis analysis = analysed(full_plan());
    const Drawing drawing = lighting_plan_of(analysis);
    std::map<std::string, std::size_t> wanted;
    for (const plan::Lamp& lamp : analysis.plan->lamps) {
        ++wanted[lamp.instrument + " at 100 %"];
    }
    for (const auto& [words, count] : wanted) {
        EXPECT_EQ(count_of(drawing, words), count) << words;
    }
}

TEST(LightingPlan, CircuitsCarryWhatTheCheckSums) {
    plan::Plan plan = small_plan();
    const checks::CircuitSum sum = checks::sum_of(plan.circuits.front(), plan, sheet_catalogue());
    EXPECT_EQ(circuit_words(plan.circuits.front(), plan, sheet_catalogue()),
              std::to_string(static_cast<int>(sum.power_w)) + " W, 0.7 A; plan to 12.8 A of 16 A");
    plan.circuits.front().breaker_amps = 0.8;
    const std::string over = circuit_words(plan.circuits.front(), plan, sheet_catalogue());
    EXPECT_EQ(over.rfind("OVER: ", 0), 0U) << over;
    EXPECT_NE(all_words(lighting_plan_of(analysed(plan))).find("OVER: "), std::string::npos);
}

TEST(LightingPlan, FindingsOfOtherFamiliesAreLeftOut) {
    checks::Analysis analysis = analysed(small_plan());
    checks::Finding light;
    light.check = "circuit-load";
    light.message = "The circuit is full.";
    checks::Finding camera;
    camera.check = "shot-size";
    camera.message = "The shot is too wide.";
    analysis.findings = {light, camera};
    const std::string words = all_words(lighting_plan_of(analysis));
    EXPECT_NE(words.find("The circuit is full."), std::string::npos);
    EXPECT_EQ(words.find("The shot is too wide."), std::string::npos);
}

TEST(LightingPlan, CautionsSpeakOfLampsAndMains) {
    const std::string words = all_words(lighting_plan_of(analysed(full_plan())));
    for (const char* caution : {"Overhead:", "Lamps:", "Mains:"}) {
        EXPECT_NE(words.find(caution), std::string::npos) << caution;
    }
}

TEST(LightingPlan, WithoutLampsThereIsNoPage) {
    plan::Plan plan = small_plan();
    plan.lamps.clear();
    const checks::Analysis analysis = analysed(plan);
    const SheetInput input{analysis, sheet_catalogue(), session().measure()};
    const auto jobs = lighting_plan_jobs(input, {});
    ASSERT_TRUE(jobs);
    EXPECT_TRUE(jobs->empty());
    EXPECT_FALSE(lighting_plan_sheet(input, {}));
}

TEST(LightingPlan, SmallPlanIsAsItWas) {
    const checks::Analysis analysis = analysed(small_plan());
    SheetOptions options;
    options.paper = "A4";
    options.file_hash = "0123abcd";
    options.findings = false;
    const EvenMeasure measure;
    test::expect_golden(
        pages_of({analysis, sheet_catalogue(), measure}, options, "lighting-plan").front(),
        "lighting_plan_small");
}

} // namespace
} // namespace throwline::sheet
