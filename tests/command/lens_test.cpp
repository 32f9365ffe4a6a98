#include "command/call.h"

#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

Called lens(const std::string& options) {
    return call(split("lens " + options));
}

// 36x24, 50 mm: published table of angles of view for common focal lengths (2006).
TEST(LensCommand, GivesThePublishedAngles) {
    const Called answer = lens("--sensor 36x24 --focal 50mm --json");
    EXPECT_EQ(answer.code, 0);
    EXPECT_NEAR(number_at(answer, "/horizontal_angle_deg"), 39.598, 0.001);
    EXPECT_NEAR(number_at(answer, "/vertical_angle_deg"), 26.991, 0.001);
    EXPECT_NEAR(number_at(answer, "/diagonal_angle_deg"), 46.793, 0.001);
}

// By hand: 36 * 3 / 50 = 2.16, 24 * 3 / 50 = 1.44; H = 50^2 / (2.8 * 0.03) + 50 = 29811.905 mm;
// near = 3000 (H - 50) / (H + 3000 - 100) = 2729.46, far = 3000 (H - 50) / (H - 3000) = 3330.08.
TEST(LensCommand, GivesFrameAndDepthOfField) {
    const Called answer =
        lens("--sensor 36x24 --focal 50mm --distance 3m --stop 2.8 --coc 0.03mm --json");
    EXPECT_NEAR(number_at(answer, "/width_m"), 2.16, 1e-12);
    EXPECT_NEAR(number_at(answer, "/height_m"), 1.44, 1e-12);
    EXPECT_NEAR(number_at(answer, "/hyperfocal_m"), 29.811905, 1e-6);
    EXPECT_NEAR(number_at(answer, "/near_m"), 2.72946, 1e-5);
    EXPECT_NEAR(number_at(answer, "/far_m"), 3.33008, 1e-5);
}

TEST(LensCommand, HasNoFarLimitBeyondTheHyperfocalDistance) {
    const Called answer =
        lens("--sensor 36x24 --focal 50mm --distance 30m --stop 2.8 --coc 0.03mm --json");
    EXPECT_TRUE(is_null_at(answer, "/far_m"));
    EXPECT_GT(number_at(answer, "/near_m"), 14.9);
    const Called text = lens("--sensor 36x24 --focal 50mm --distance 30m --stop 2.8 --coc 0.03mm");
    EXPECT_NE(text.out.find("to infinity"), std::string::npos) << text.out;
}

TEST(LensCommand, LeavesOpenWhatWasNotAsked) {
    const Called answer = lens("--sensor 36x24 --focal 50mm --json");
    for (const char* key : {"/width_m", "/height_m", "/near_m", "/far_m", "/hyperfocal_m"}) {
        EXPECT_TRUE(is_null_at(answer, key)) << key;
    }
}

TEST(LensCommand, TakesASensorByName) {
    const Called by_name = lens("--sensor \"2/3-TYPE  16:9\" --focal 20mm --json");
    EXPECT_NEAR(number_at(by_name, "/horizontal_angle_deg"), 26.964, 0.001);
    EXPECT_NEAR(number_at(by_name, "/vertical_angle_deg"), 15.349, 0.001);
}

TEST(LensCommand, NamesTheNearestSensor) {
    const Called answer = lens("--sensor \"2/3-type 16:8\" --focal 20mm");
    EXPECT_EQ(answer.code, 2);
    EXPECT_NE(answer.err.find("did you mean 2/3-type 16:9?"), std::string::npos) << answer.err;
}

// Squeeze 2, 22.00x18.60, 50 mm: 2 atan(44 / 100) = 47.499 deg, vertical unchanged.
TEST(LensCommand, WidensASqueezedPicture) {
    const Called answer = lens("--sensor 22.00x18.60 --focal 50mm --squeeze 2 --json");
    EXPECT_NEAR(number_at(answer, "/horizontal_angle_deg"), 47.499, 0.001);
    EXPECT_NEAR(number_at(answer, "/vertical_angle_deg"), 21.073, 0.001);
}

// Frame heights that each size usually asks for on a stature of 1.70 m.
TEST(LensCommand, NamesTheShot) {
    const auto size = [](const std::string& distance) {
        return text_at(
            lens("--sensor 24.89x14.00 --focal 35mm --person 1.70m --json --distance " + distance),
            "/shot_size");
    };
    EXPECT_EQ(size("0.992m"), "close-up");
    EXPECT_EQ(size("1.382m"), "medium close-up");
    EXPECT_EQ(size("1.933m"), "medium");
    EXPECT_EQ(size("2.839m"), "medium long");
    EXPECT_EQ(size("4.722m"), "full");
    EXPECT_EQ(size("30m"), "very wide");
}

TEST(LensCommand, TellsEverythingThatIsWrongAtOnce) {
    const Called answer = lens("--focal 5x --stop deep");
    EXPECT_EQ(answer.code, 2);
    EXPECT_TRUE(answer.out.empty());
    for (const char* part :
         {"--sensor is missing", "--focal: cannot read \"5x\"", "--stop \"deep\""}) {
        EXPECT_NE(answer.err.find(part), std::string::npos) << part << '\n' << answer.err;
    }
}

TEST(LensCommand, RefusesASubjectInsideTheFocalLength) {
    EXPECT_EQ(lens("--sensor 36x24 --focal 50mm --distance 40mm").code, 2);
    EXPECT_EQ(lens("--sensor 36x24 --focal 0mm").code, 2);
    EXPECT_EQ(lens("--sensor 36x24 --focal -50mm").code, 2);
    EXPECT_EQ(lens("--sensor 36x0 --focal 50mm").code, 2);
}

TEST(LensCommand, PrintsInTheAskedUnits) {
    const Called answer = lens("--sensor 36x24 --focal 50mm --distance 10ft --system imperial");
    EXPECT_EQ(answer.out, "sees 39.6° by 27.0°, 46.8° across the diagonal\n"
                          "at 10'-0\" the frame is 7'-2 1/2\" wide and 4'-9 1/2\" high\n");
}

} // namespace
} // namespace throwline::command_test
