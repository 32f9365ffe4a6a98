#include "optics/picture_area.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::optics {
namespace {

PictureArea area_mm(double width_mm, double height_mm, double squeeze = 1.0) {
    return {Length::millimetres(width_mm), Length::millimetres(height_mm), squeeze};
}

TEST(PictureArea, CropsToAnAspectInsideTheSensor) {
    const PictureArea chip = area_mm(9.59, 5.39);
    EXPECT_NEAR(cropped_to_aspect(chip, 1.85).height.mm(), 5.184, 0.0005);
    EXPECT_NEAR(cropped_to_aspect(chip, 2.39).height.mm(), 4.013, 0.0005);
    EXPECT_NEAR(cropped_to_aspect(chip, 4.0 / 3.0).width.mm(), 7.187, 0.0005);
    EXPECT_NEAR(cropped_to_aspect(chip, 9.0 / 16.0).width.mm(), 3.032, 0.0005);
}

TEST(PictureArea, TheLensDecidesTheSqueeze) {
    catalogue::SensorMode mode;
    mode.width = Length::millimetres(22);
    mode.height = Length::millimetres(18.6);
    mode.squeeze = 2.0;
    catalogue::Lens spherical;
    EXPECT_EQ(effective_sensor(mode).squeeze, 2.0);
    EXPECT_EQ(effective_sensor(mode, spherical).squeeze, 1.0);
}

TEST(PictureArea, AWindowKeepsTheAspect) {
    const PictureArea window = windowed(area_mm(36, 24), 1.5);
    EXPECT_NEAR(window.width.mm(), 24, 1e-12);
    EXPECT_NEAR(window.height.mm(), 16, 1e-12);
    EXPECT_NEAR(area_mm(3, 4).diagonal().mm(), 5, 1e-12);
}

RC_GTEST_PROP(PictureArea, ACropHasTheAspectAndFits, ()) {
    const double width_mm = *rc::gen::inRange(1, 60);
    const double height_mm = *rc::gen::inRange(1, 60);
    const double squeeze = *rc::gen::element(1.0, 1.33, 1.8, 2.0);
    const double aspect = *rc::gen::inRange(30, 400) / 100.0;
    const PictureArea chip = area_mm(width_mm, height_mm, squeeze);
    const PictureArea crop = cropped_to_aspect(chip, aspect);
    RC_ASSERT(std::abs(crop.aspect() - aspect) < 1e-9);
    RC_ASSERT(crop.width.mm() <= width_mm + 1e-9);
    RC_ASSERT(crop.height.mm() <= height_mm + 1e-9);
    RC_ASSERT(crop.width.mm() > width_mm - 1e-9 || crop.height.mm() > height_mm - 1e-9);
}

} // namespace
} // namespace throwline::optics
