#include "command/call.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace throwline::command_test {
namespace {

/// One person 4 m in front of a level 36x24 camera with a 50 mm lens, lit by one hard lamp.
std::string one_shot() {
    return R"({
        "format": 1, "title": "One shot",
        "room": {"outline": [[0, 0], [8, 0], [8, 8], [0, 8]], "height": 5, "dressed": true},
        "people": [{"id": "Ida", "stature": 1.7}],
        "beats": [{"id": "1", "marks": {"Ida": {"at": [4, 6], "faces": "90deg"}}}],
        "cameras": [{"id": "camera 1", "sensor": "36x24", "lens": "prime 50 T1.5"}],
        "shots": [{"id": "1A", "beats": ["1"], "camera": "camera 1", "at": [4, 2], "height": 1.5,
                   "aim": [4, 6, 1.5], "focal": "50mm", "stop": 2.8, "size": "medium",
                   "subjects": ["Ida"]}],
        "pipes": [{"id": "bar", "from": [0, 3], "to": [8, 3], "height": 4}],
        "lamps": [{"id": "1", "instrument": "Fresnel 1 kW", "pipe": "bar", "along": 2, "drop": 0.3,
                   "aim": "Ida", "role": "key", "focus": 0.5}]})";
}

TEST(FiguresCommand, GivesTheFrameAndItsEdgesAtTheSubject) {
    const Called answer = call({"figures", "-", "--json"}, one_shot());
    ASSERT_EQ(answer.code, 0) << answer.err;
    ASSERT_EQ(size_at(answer, "/shots"), 1U);
    // 2 atan(36 / 100), 2 atan(24 / 100): plain trigonometry.
    EXPECT_NEAR(number_at(answer, "/shots/0/horizontal_angle_deg"),
                2.0 * std::atan(0.36) * 180.0 / std::numbers::pi, 1e-9);
    const double distance_m = number_at(answer, "/shots/0/subjects/0/distance_m");
    EXPECT_NEAR(distance_m, 4.0, 0.2);
    EXPECT_NEAR(number_at(answer, "/shots/0/subjects/0/width_m"), distance_m * 36 / 50, 1e-9);
    EXPECT_NEAR(number_at(answer, "/shots/0/subjects/0/height_m"), distance_m * 24 / 50, 1e-9);
    // A level camera at 1.5 m takes in as much above as below.
    const double bottom_m = number_at(answer, "/shots/0/subjects/0/frame_bottom_m");
    const double top_m = number_at(answer, "/shots/0/subjects/0/frame_top_m");
    EXPECT_NEAR((bottom_m + top_m) / 2.0, 1.5, 1e-6);
    EXPECT_EQ(number_at(answer, "/shots/0/subjects/0/body_seen_share"), 1.0);
}

TEST(FiguresCommand, GivesTheLightOfEachLampAtTheMark) {
    const Called answer = call({"figures", "-", "--json"}, one_shot());
    const std::string light = "/shots/0/subjects/0/light";
    ASSERT_EQ(size_at(answer, light + "/lamps"), 1U);
    const std::string lamp = light + "/lamps/0";
    EXPECT_EQ(number_at(answer, light + "/facing_lux"), number_at(answer, lamp + "/facing_lux"));
    // Across 2 m, along 3 m or so, up about 2.2 m from the face to the lamp.
    EXPECT_NEAR(number_at(answer, lamp + "/throw_m"), std::sqrt(4.0 + 9.0 + 4.84), 0.4);
    EXPECT_NEAR(number_at(answer, lamp + "/off_axis_deg"), 0.0, 0.5);
    EXPECT_GT(number_at(answer, lamp + "/beam_on_floor/length_m"),
              number_at(answer, lamp + "/beam_on_floor/width_m"));
    EXPECT_TRUE(is_null_at(answer, light + "/lighting_ratio"));
}

TEST(FiguresCommand, SaysItInWords) {
    const Called answer = call({"figures", "-"}, one_shot());
    EXPECT_EQ(answer.code, 0);
    EXPECT_TRUE(answer.out.starts_with("1A, beat 1, camera 1: 50 mm T2.8, takes in 39.6° by 27.0°"))
        << answer.out;
    EXPECT_NE(answer.out.find("lamp 1 (key): throw "), std::string::npos) << answer.out;
}

TEST(FiguresCommand, NamesTheNearestShot) {
    const Called answer = call({"figures", "-", "--shot", "1a"}, one_shot());
    EXPECT_EQ(answer.code, 2);
    EXPECT_NE(answer.err.find("1A"), std::string::npos) << answer.err;
}

} // namespace
} // namespace throwline::command_test
