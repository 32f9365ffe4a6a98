#include "checks/shot_figures.h"
#include "optics/coverage.h"
#include "support/light_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

// Width = 9.59 mm x depth / 40 mm, height likewise from 5.39 mm.
TEST(ShotFigures, CoverageIsThatOfTheLensCalculator) {
    const plan::Plan plan = lit_room();
    const RaisedPlan raised = raised_plan(plan, lamp_catalogue());
    const auto figures = figures_of(raised.shots.at(0));
    ASSERT_TRUE(figures.has_value());
    ASSERT_EQ(figures->subjects.size(), 1U);
    const SubjectFigures& subject = figures->subjects[0];
    const double depth_m = ada_face().y() - 1.0;
    EXPECT_NEAR(subject.depth_m, depth_m, 1e-9);
    EXPECT_NEAR(subject.coverage.width.m(), 9.59 * depth_m / 40.0, 1e-9);
    EXPECT_NEAR(subject.coverage.height.m(), 5.39 * depth_m / 40.0, 1e-9);
    const optics::Coverage calculated =
        optics::coverage(optics::effective_sensor(*figures->view.sensor), Length::millimetres(40.0),
                         Length::metres(subject.depth_m));
    EXPECT_DOUBLE_EQ(subject.coverage.width.m(), calculated.width.m());
    EXPECT_DOUBLE_EQ(subject.coverage.height.m(), calculated.height.m());
    EXPECT_TRUE(subject.sharp);
    EXPECT_EQ(figures->close_focus, Length::metres(0.6));
}

} // namespace throwline::checks
