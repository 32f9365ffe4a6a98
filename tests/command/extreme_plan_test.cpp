#include "command/call.h"
#include "command/program_run.h"

#include <cmath>
#include <filesystem>
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <numbers>
#include <regex>

/// Plans that may be drawn and must be answered, however odd they are.
namespace throwline::command_test {
namespace {

using nlohmann::json;

json demo_plan() {
    return json::parse(read(THROWLINE_SOURCE_DIR "/demo/potters_bench.json"));
}

struct ExtremePlan {
    std::string name;
    void (*change)(json& plan);
};

std::ostream& operator<<(std::ostream& out, const ExtremePlan& plan) {
    return out << plan.name;
}

/// A room of these metres with the usual beat and shot, and nothing else.
json plain_room(double width_m, double depth_m, double height_m) {
    json plan = demo_plan();
    for (const char* const key : {"grid", "circuits", "scenery", "booms", "lamps"}) {
        plan.erase(key);
    }
    plan["room"] = {{"outline", {{0, 0}, {width_m, 0}, {width_m, depth_m}, {0, depth_m}}},
                    {"height", height_m}};
    return plan;
}

json lamp_on_stand(const std::string& id, double x_m, double y_m) {
    return {{"id", id},     {"instrument", "Fresnel 1 kW"},    {"stand", {x_m, y_m}},
            {"height", 2},  {"support", "medium light stand"}, {"aim", "potter"},
            {"role", "key"}};
}

void thousand_lamps(json& plan) {
    plan = plain_room(45, 30, 5);
    for (int i = 0; i < 1000; ++i) {
        const int row = i / 40;
        plan["lamps"].push_back(
            lamp_on_stand(fmt::format("L{}", i), 1.0 + 1.1 * (i % 40), 1.0 + 1.1 * row));
    }
}

/// Stands that all overlap: findings grow with the square of their number.
void crowded_stands(json& plan) {
    plan["lamps"] = json::array();
    for (int i = 0; i < 200; ++i) {
        const int row = i / 40;
        plan["lamps"].push_back(
            lamp_on_stand(fmt::format("L{}", i), 0.2 + 0.2 * (i % 40), 0.2 + 0.2 * row));
    }
}

void huge_room(json& plan) {
    plan = plain_room(900, 900, 100);
}

void tiny_room(json& plan) {
    plan = plain_room(0.5, 0.5, 0.5);
}

void many_corners(json& plan) {
    plan = plain_room(1, 1, 4);
    json outline = json::array();
    constexpr int kCorners = 1000; // The most that are read.
    for (int i = 0; i < kCorners; ++i) {
        const double angle_rad = 2.0 * std::numbers::pi * i / kCorners;
        const double radius_m = i % 2 == 0 ? 10.0 : 10.1;
        outline.push_back({5 + radius_m * std::cos(angle_rad), 5 + radius_m * std::sin(angle_rad)});
    }
    plan["room"]["outline"] = outline;
}

void person_outside(json& plan) {
    plan["beats"][0]["marks"]["potter"]["at"] = {-50, -50};
}

void camera_in_wall(json& plan) {
    plan["shots"][0]["at"] = {-0.05, 1.5};
}

void camera_in_scenery(json& plan) {
    plan["shots"][0]["at"] = {"15ft", "14ft"};
}

/// The same spot as the potter, at every height a face can have.
void lamp_in_face(json& plan) {
    plan["lamps"] = json::array();
    for (int i = 0; i < 10; ++i) {
        json lamp = lamp_on_stand(fmt::format("L{}", i), 0, 0);
        lamp["stand"] = {"15ft", "16ft"};
        lamp["height"] = 1.0 + 0.1 * i;
        plan["lamps"].push_back(lamp);
    }
}

void camera_at_eyes(json& plan) {
    plan["shots"][0]["at"] = {"15ft", "16ft"};
    plan["shots"][1]["at"] = {"19ft 6in", "14ft"};
    plan["shots"][1]["height"] = 1.83 * 0.936;
}

void straight_down(json& plan) {
    plan["shots"][0]["height"] = 4;
    plan["shots"][0]["aim"] = {"13ft", "5ft", 0};
    plan["lamps"][0]["aim"] = plan["lamps"][1]["aim"] = {"9ft", "8ft", 0};
}

void aims_at_itself(json& plan) {
    plan["shots"][0]["height"] = 2;
    plan["shots"][0]["aim"] = {"13ft", "5ft", 2};
    plan["lamps"][1]["aim"] = {"9ft", "8ft", "7ft"};
}

void no_lamps(json& plan) {
    plan["lamps"] = json::array();
}

void no_shots(json& plan) {
    plan["shots"] = json::array();
}

void no_marks(json& plan) {
    plan["beats"].push_back({{"id", "empty"}});
    plan["shots"][1]["beats"].push_back("empty");
    plan["shots"][1]["subjects"] = json::array();
    plan["shots"].push_back(
        {{"id", "0"}, {"beats", {"empty"}}, {"camera", "camera 1"}, {"at", {2, 2}}});
    plan["lamps"][0].erase("aim");
}

void nothing(json& plan) {
    plan = {{"format", 1}, {"title", ""}, {"room", plain_room(4, 3, 2.5)["room"]}};
}

void a_crowd_on_one_spot(json& plan) {
    for (int i = 0; i < 100; ++i) {
        const std::string id = fmt::format("extra {}", i);
        plan["people"].push_back({{"id", id}});
        plan["beats"][0]["marks"][id] = {{"at", {"15ft", "16ft"}}, {"faces", "potter"}};
    }
}

void faces_itself(json& plan) {
    plan["beats"][1]["marks"]["visitor"] = {{"at", {"15ft", "16ft"}}, {"faces", "potter"}};
}

void flat_and_thin(json& plan) {
    plan["scenery"].push_back({{"id", "film"},
                               {"kind", "box"},
                               {"at", {3, 3}},
                               {"width", 1e-6},
                               {"depth", 900},
                               {"height", 1e-6}});
    plan["scenery"].push_back(
        {{"id", "pin"}, {"kind", "cylinder"}, {"at", {3, 3}}, {"diameter", 1e-6}, {"height", 900}});
}

class Extreme : public testing::TestWithParam<ExtremePlan> {
  protected:
    void SetUp() override {
        json plan = demo_plan();
        GetParam().change(plan);
        write("plan.json", plan.dump());
    }
    ProgramEnd program(const std::vector<std::string>& arguments) {
        return run_program({.arguments = arguments}, folder_.path());
    }

  private:
    WorkingFolder folder_;
};

bool was_checked(const ProgramEnd& end) {
    return !end.hung && (end.code == 0 || end.code == 1) && end.err.empty();
}

/// "nan" or "inf" as words of their own, as a formatted number would be.
bool shows_no_number(const std::string& text) {
    return std::regex_search(text, std::regex{R"((^|[^A-Za-z])-?(nan|inf)([^A-Za-z]|$))"});
}

TEST_P(Extreme, IsCheckedWithFiniteNumbers) {
    const ProgramEnd as_json = program({"check", "plan.json", "--json", "--working"});
    ASSERT_TRUE(was_checked(as_json)) << as_json.code << ' ' << as_json.err.substr(0, 2000);
    // The library refuses NaN and the infinities.
    const json answer = json::parse(as_json.out, nullptr, false);
    ASSERT_FALSE(answer.is_discarded());
    EXPECT_TRUE(answer.at("findings").is_array());
    EXPECT_FALSE(shows_no_number(as_json.out));
    const ProgramEnd as_text = program({"check", "plan.json"});
    EXPECT_EQ(as_text.code, as_json.code);
    EXPECT_FALSE(shows_no_number(as_text.out));
}

TEST_P(Extreme, IsDrawnOrRefusedInASentence) {
    const std::string sheet = "sheet.svg";
    const ProgramEnd end = program({"sheet", "plan.json", "-o", sheet});
    ASSERT_FALSE(end.hung);
    if (end.code != 0) {
        EXPECT_EQ(end.code, 2) << end.err;
        EXPECT_TRUE(end.err.starts_with("throwline: ")) << end.err;
        EXPECT_FALSE(std::filesystem::exists(sheet));
        return;
    }
    const std::string svg = read(sheet);
    EXPECT_GT(svg.size(), 1000U);
    EXPECT_FALSE(shows_no_number(svg));
}

INSTANTIATE_TEST_SUITE_P(
    Plans, Extreme,
    testing::Values(
        ExtremePlan{"thousand_lamps", thousand_lamps},
        ExtremePlan{"crowded_stands", crowded_stands}, ExtremePlan{"huge_room", huge_room},
        ExtremePlan{"tiny_room", tiny_room}, ExtremePlan{"many_corners", many_corners},
        ExtremePlan{"person_outside", person_outside},
        ExtremePlan{"camera_in_wall", camera_in_wall},
        ExtremePlan{"camera_in_scenery", camera_in_scenery},
        ExtremePlan{"lamp_in_face", lamp_in_face}, ExtremePlan{"camera_at_eyes", camera_at_eyes},
        ExtremePlan{"straight_down", straight_down}, ExtremePlan{"aims_at_itself", aims_at_itself},
        ExtremePlan{"no_lamps", no_lamps}, ExtremePlan{"no_shots", no_shots},
        ExtremePlan{"no_marks", no_marks}, ExtremePlan{"nothing", nothing},
        ExtremePlan{"a_crowd_on_one_spot", a_crowd_on_one_spot},
        ExtremePlan{"faces_itself", faces_itself}, ExtremePlan{"flat_and_thin", flat_and_thin}),
    [](const auto& case_) { return case_.param.name; });

} // namespace
} // namespace throwline::command_test
