/// A frame that shows no edge of the set at all is told which run of flats would back it.

#include "support/demo_plan.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::checks {
namespace {

/// The cookery demo without the floor manager in front of shot 4B, and its right return, which ends
/// at 21 ft, carried on towards the camera.
plan::Plan with_return_longer_by(Length more) {
    plan::Plan plan = support::demo_plan("cookery.json");
    for (plan::Beat& beat : plan.beats) {
        beat.marks.erase({"Jo"});
    }
    for (plan::Scenery& scenery : plan.scenery) {
        if (scenery.id.name == "right return") {
            auto& run = std::get<plan::FlatRun>(scenery.shape);
            run.from.y() -= more.m();
            run.widths.front() += more;
        }
    }
    return plan;
}

const Finding* off_the_set_in_4b(const Analysis& analysis) {
    const auto found = std::find_if(
        analysis.findings.begin(), analysis.findings.end(), [](const Finding& finding) {
            return finding.check == "off-the-set" && finding.shot.name == "4B";
        });
    return found == analysis.findings.end() ? nullptr : &*found;
}

// From camera 1 at (13, 9) ft Ines at (30.25, 18) ft stands 27.55° up the page; a 61 mm lens on a
// 9.59 mm wide sensor takes in 4.52° on each side of her, so the frame's right side meets x = 32 ft
// at y = 9 + 19 tan 23.03° = 17.08 ft: 3 ft 11 in below the end of the return.
TEST(RunOn, TellsHowMuchLongerTheRunWouldHaveToBe) {
    const Analysis analysis = support::analysis_of(with_return_longer_by({}));
    const Finding* finding = off_the_set_in_4b(analysis);
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->things.front(), "right return");
    EXPECT_NE(finding->message.find("right return would have to be 3'-11\" longer"),
              std::string::npos)
        << finding->message;
}

TEST(RunOn, ThatMuchMoreOfTheRunBacksTheFrame) {
    const Analysis enough = support::analysis_of(with_return_longer_by(Length::feet(4)));
    EXPECT_EQ(off_the_set_in_4b(enough), nullptr);
    const Analysis short_by_an_inch =
        support::analysis_of(with_return_longer_by(Length::feet(3.75)));
    EXPECT_NE(off_the_set_in_4b(short_by_an_inch), nullptr);
}

} // namespace
} // namespace throwline::checks
