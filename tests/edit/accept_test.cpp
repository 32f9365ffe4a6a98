#include "edit/accept.h"

#include "support/demo_plan.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

using support::analysis_of;
using support::demo_plan;
using support::shipped_catalogue;

struct Checked {
    plan::Plan plan = demo_plan("cookery.json");
    checks::Analysis analysis = analysis_of(plan);
    Context context{plan, shipped_catalogue(), {}};

    /// The first open finding about a shot.
    const checks::Finding& open() const {
        return *std::find_if(analysis.findings.begin(), analysis.findings.end(),
                             [](const checks::Finding& finding) {
                                 return !finding.accepted && !finding.shot.empty();
                             });
    }
};

TEST(Accept, MarksTheFindingAndNoOther) {
    const Checked checked;
    const checks::Finding& finding = checked.open();
    const auto step = accepted(checked.context, std::span{&finding, 1}, "  rehearsed so ");
    ASSERT_TRUE(step);
    EXPECT_EQ(step->name.rfind("Accept finding \"", 0), 0U) << step->name;
    const checks::Analysis after = analysis_of(step->plan);
    const auto is_accepted = [](const checks::Finding& one) { return one.accepted.has_value(); };
    const auto it = std::find_if(after.findings.begin(), after.findings.end(), is_accepted);
    ASSERT_NE(it, after.findings.end());
    EXPECT_EQ(it->message, finding.message);
    EXPECT_EQ(it->accepted, "rehearsed so");
    for (const checks::Finding& one : after.findings) {
        EXPECT_EQ(one.accepted.has_value(), checks::covers(step->plan.accepted.front(), one));
    }
}

TEST(Accept, NeedsAReason) {
    const Checked checked;
    EXPECT_FALSE(accepted(checked.context, std::span{&checked.open(), 1}, " \t"));
    EXPECT_FALSE(accepted(checked.context, {}, "because"));
}

TEST(Accept, IsTakenBackWhole) {
    const Checked checked;
    const checks::Finding finding = checked.open();
    const auto step = accepted(checked.context, std::span{&finding, 1}, "rehearsed so");
    ASSERT_TRUE(step);
    const Context then{step->plan, shipped_catalogue(), {}};
    const auto back = acceptance_taken_back(then, std::span{&finding, 1});
    ASSERT_TRUE(back);
    EXPECT_EQ(back->plan, checked.plan);
    EXPECT_FALSE(acceptance_taken_back(checked.context, std::span{&finding, 1}));
}

TEST(ThingsNamed, AreThoseOnTheFloorInTheirOrder) {
    const plan::Plan plan = demo_plan("cookery.json");
    const std::vector<std::string> names{"wall 2", "3", "C1", "Mara", "nobody", "Mara"};
    EXPECT_EQ(
        things_named(plan, names),
        (std::vector<Thing>{{Kind::wall, {}, 1}, {Kind::lamp, "3", 0}, {Kind::person, "Mara", 0}}));
}

} // namespace
} // namespace throwline::edit
