#include "sheet/floor_plan.h"

#include "plan/read_plan.h"
#include "sheet/golden.h"
#include "sheet/marks.h"
#include "sheet/plan_frame.h"
#include "sheet/sheet_support.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::analysed;
using test::EvenMeasure;
using test::floor_plan_of;
using test::full_plan;
using test::session;
using test::sheet_catalogue;
using test::small_plan;

std::vector<Text> texts_of(const Drawing& drawing) {
    std::vector<Text> texts;
    for (const Layer& layer : drawing.layers) {
        for (const Mark& mark : layer.marks) {
            if (const auto* text = std::get_if<Text>(&mark)) {
                texts.push_back(*text);
            }
        }
    }
    return texts;
}

/// What a text takes up, from the top of its capitals to the foot of its descenders.
Box box_of(const Text& text, const TextMeasure& measure) {
    const double width_mm = measure.width_mm(text.text, text.height_mm, text.bold);
    const double share = text.anchor == TextAnchor::start    ? 0.0
                         : text.anchor == TextAnchor::middle ? 0.5
                                                             : 1.0;
    if (text.turn_rad != 0.0) { // Sheets turn lettering by a quarter only.
        return {text.at.x() - text.height_mm, text.at.y() - (1.0 - share) * width_mm,
                text.height_mm, width_mm};
    }
    return {text.at.x() - share * width_mm, text.at.y() - text.height_mm, width_mm,
            text.height_mm * (1.0 + kDescent)};
}

std::size_t count_of(const Drawing& drawing, const std::string& words) {
    const std::vector<Text> texts = texts_of(drawing);
    return static_cast<std::size_t>(std::count_if(
        texts.begin(), texts.end(), [&](const Text& text) { return text.text == words; }));
}

const Layer& layer_of(const Drawing& drawing, const std::string& name) {
    return *std::find_if(drawing.layers.begin(), drawing.layers.end(),
                         [&](const Layer& layer) { return layer.name == name; });
}

struct SheetCase {
    std::string name;
    plan::Plan plan;
    SheetOptions options;
};

plan::Plan demo_plan(const std::string& name) {
    auto read = plan::read_plan_file(std::filesystem::path{THROWLINE_SOURCE_DIR} / "demo" / name,
                                     sheet_catalogue());
    EXPECT_TRUE(read) << text_of(read.error().front());
    return read.value();
}

std::vector<SheetCase> sheet_cases() {
    const auto on = [](const std::string& paper, std::optional<Orientation> orientation = {}) {
        SheetOptions options;
        options.paper = paper;
        options.orientation = orientation;
        options.file_hash = "0123abcd";
        return options;
    };
    return {{"small", small_plan(), on("A4")},
            {"small portrait", small_plan(), on("A4", Orientation::portrait)},
            {"full", full_plan(), on("A3")},
            {"full portrait", full_plan(), on("A3", Orientation::portrait)},
            {"full on A4", full_plan(), on("A4")},
            {"imperial", full_plan(UnitSystem::imperial), on("tabloid")},
            {"large", full_plan(), on("A1")},
            {"studio demo", demo_plan("cookery.json"), on("A3")},
            {"location demo", demo_plan("workshop_interview.json"), on("letter")}};
}

class FloorPlanSheets : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        drawings_ = new std::vector<std::pair<std::string, Drawing>>;
        for (const SheetCase& made : sheet_cases()) {
            auto drawing = floor_plan_of(analysed(made.plan), made.options, session().measure());
            ASSERT_TRUE(drawing) << made.name << ": " << drawing.error().message;
            drawings_->emplace_back(made.name, *std::move(drawing));
        }
    }
    static void TearDownTestSuite() { delete drawings_; }
    static const std::vector<std::pair<std::string, Drawing>>& drawings() { return *drawings_; }

  private:
    static inline std::vector<std::pair<std::string, Drawing>>* drawings_ = nullptr;
};

TEST_F(FloorPlanSheets, NoLetteringOverlaps) {
    const TextMeasure& measure = session().measure();
    for (const auto& [name, drawing] : drawings()) {
        const std::vector<Text> texts = texts_of(drawing);
        ASSERT_GT(texts.size(), 20U) << name;
        for (std::size_t i = 0; i < texts.size(); ++i) {
            for (std::size_t j = i + 1; j < texts.size(); ++j) {
                EXPECT_FALSE(box_of(texts[i], measure).overlaps(box_of(texts[j], measure)))
                    << name << ": \"" << texts[i].text << "\" and \"" << texts[j].text << "\"";
            }
        }
    }
}

TEST_F(FloorPlanSheets, CapitalsAreAtLeastTwoAndAHalfMillimetres) {
    for (const auto& [name, drawing] : drawings()) {
        for (const Text& text : texts_of(drawing)) {
            EXPECT_GE(text.height_mm, 2.5) << name << ": " << text.text;
        }
    }
}

TEST_F(FloorPlanSheets, EverythingLettersInsideTheFrame) {
    for (const auto& [name, drawing] : drawings()) {
        const Box frame = Box{0.0, 0.0, drawing.width_mm, drawing.height_mm}.inset(10.0);
        for (const Text& text : texts_of(drawing)) {
            EXPECT_TRUE(frame.holds(box_of(text, session().measure())))
                << name << ": " << text.text;
        }
    }
}

TEST_F(FloorPlanSheets, EveryLampCameraAndPersonIsNamed) {
    for (const SheetCase& made : sheet_cases()) {
        const auto found =
            std::find_if(drawings().begin(), drawings().end(),
                         [&](const auto& entry) { return entry.first == made.name; });
        for (const plan::Lamp& lamp : made.plan.lamps) {
            EXPECT_GE(count_of(found->second, lamp.id.name), 1U) << made.name << lamp.id.name;
        }
        for (const plan::Camera& camera : made.plan.cameras) {
            EXPECT_GE(count_of(found->second, camera.id.name), 1U) << made.name << camera.id.name;
        }
        for (const plan::Person& person : made.plan.people) {
            EXPECT_GE(count_of(found->second, person.id.name), 1U) << made.name << person.id.name;
        }
    }
}

TEST_F(FloorPlanSheets, CautionsAndCheckLengthsAreOnEverySheet) {
    for (const auto& [name, drawing] : drawings()) {
        EXPECT_EQ(count_of(drawing, "must measure 100 mm, else print at 100 %"), 1U) << name;
        EXPECT_EQ(count_of(drawing, "must measure 4 in"), 1U) << name;
        std::string all;
        for (const Text& text : texts_of(drawing)) {
            all += text.text + " ";
        }
        EXPECT_NE(all.find("Planning aid only"), std::string::npos) << name;
        EXPECT_NE(all.find("Not to scale if reduced"), std::string::npos) << name;
        EXPECT_NE(all.find("ile 0123abcd"), std::string::npos) << name;
    }
}

TEST(FloorPlanSheet, CamerasThatDoNotMoveAreDrawnOnce) {
    SheetOptions options;
    const auto drawing = floor_plan_of(analysed(full_plan()), options, session().measure());
    ASSERT_TRUE(drawing);
    EXPECT_EQ(count_of(*drawing, "camera 1"), 1U);
    EXPECT_EQ(count_of(*drawing, "1A, 24 mm"), 1U);
    EXPECT_EQ(count_of(*drawing, "3A, 12 mm"), 1U);
    // From two places each.
    EXPECT_EQ(count_of(*drawing, "camera 2"), 2U);
    EXPECT_EQ(count_of(*drawing, "camera 3"), 2U);
}

TEST(FloorPlanSheet, DrawsTheRoomTrueToScale) {
    SheetOptions options;
    options.paper = "A4";
    const auto drawing = floor_plan_of(analysed(small_plan()), options, session().measure());
    ASSERT_TRUE(drawing);
    EXPECT_NE(drawing->subject.find("1:50"), std::string::npos);
    // The room is 5 m by 4 m, so 100 mm by 80 mm; one wall has no opening and is one line.
    int across = 0;
    int down = 0;
    for (const Mark& mark : layer_of(*drawing, "built").marks) {
        const auto* path = std::get_if<Path>(&mark);
        if (path == nullptr || path->closed || path->points.size() != 2) {
            continue;
        }
        const double length_mm = (path->points[1] - path->points[0]).norm();
        across += std::abs(length_mm - 100.0) < 1e-9 ? 1 : 0;
        down += std::abs(length_mm - 80.0) < 1e-9 ? 1 : 0;
    }
    EXPECT_EQ(across, 1);
    EXPECT_EQ(down, 2);
}

TEST(FloorPlanSheet, SameInputGivesTheSameText) {
    const checks::Analysis analysis = analysed(full_plan());
    const auto first = floor_plan_of(analysis, {}, session().measure());
    const auto second = floor_plan_of(analysed(full_plan()), {}, session().measure());
    ASSERT_TRUE(first && second);
    EXPECT_EQ(as_text(*first), as_text(*second));
    EXPECT_EQ(paint::rendered_pdf(session(), *first), paint::rendered_pdf(session(), *second));
}

TEST(FloorPlanSheet, OneBeatShowsWhoIsThere) {
    SheetOptions options;
    options.beat = {"1"};
    const auto drawing = floor_plan_of(analysed(full_plan()), options, session().measure());
    ASSERT_TRUE(drawing);
    EXPECT_EQ(count_of(*drawing, "Ines"), 1U);
    EXPECT_EQ(count_of(*drawing, "Kofi"), 0U);
    EXPECT_EQ(count_of(*drawing, "3A, 12 mm"), 0U);
}

TEST(FloorPlanSheet, ChosenShotsBringTheirBeats) {
    SheetOptions options;
    options.shots = {{"2B"}};
    const auto drawing = floor_plan_of(analysed(full_plan()), options, session().measure());
    ASSERT_TRUE(drawing);
    EXPECT_EQ(count_of(*drawing, "2B, 36 mm"), 1U);
    EXPECT_EQ(count_of(*drawing, "Bea"), 1U);
    EXPECT_EQ(count_of(*drawing, "Kofi"), 0U);
}

TEST(FloorPlanSheet, LayersCanBeLeftOut) {
    SheetOptions options;
    options.ground = options.coverage = options.pools = options.findings = false;
    const auto drawing = floor_plan_of(analysed(full_plan()), options, session().measure());
    ASSERT_TRUE(drawing);
    for (const std::string name : {"ground", "coverage", "findings"}) {
        EXPECT_TRUE(layer_of(*drawing, name).marks.empty()) << name;
    }
    // Axes to the aims belong to the lamps.
    for (const Mark& mark : layer_of(*drawing, "pools").marks) {
        EXPECT_FALSE(std::get<Path>(mark).closed);
    }
    EXPECT_EQ(count_of(*drawing, "No findings"), 1U);
}

TEST(FloorPlanSheet, MistakesAreToldWithTheNearestName) {
    const checks::Analysis analysis = analysed(small_plan());
    const auto told = [&](const SheetOptions& options) {
        const auto drawing = floor_plan_of(analysis, options, session().measure());
        return drawing ? std::string{} : drawing.error().message;
    };
    SheetOptions options;
    options.paper = "A33";
    EXPECT_NE(told(options).find("\"A3\""), std::string::npos) << told(options);
    options = {};
    options.shots = {{"1a"}};
    EXPECT_NE(told(options).find("\"1A\""), std::string::npos) << told(options);
    options = {};
    options.scale = "1:5";
    EXPECT_NE(told(options).find("the largest scale that fits is 1:50"), std::string::npos)
        << told(options);
    options = {};
    options.margin = Length::millimetres(140);
    EXPECT_FALSE(told(options).empty());
}

TEST(FloorPlanSheet, AcceptedFindingsCarryTheirReason) {
    checks::Analysis analysis = analysed(small_plan());
    checks::Finding finding;
    finding.check = "made-up";
    finding.severity = checks::Severity::note;
    finding.at = {2.0, 2.0};
    finding.message = "Something stands there.";
    finding.accepted = "seen at the recce";
    analysis.findings = {finding};
    const auto drawing = floor_plan_of(analysis, {}, session().measure());
    ASSERT_TRUE(drawing);
    std::string all;
    for (const Text& text : texts_of(*drawing)) {
        all += text.text + " ";
    }
    EXPECT_NE(all.find("Accepted: seen at the recce"), std::string::npos);
}

TEST(FloorPlanSheet, SameMatterInSeveralShotsIsToldOnce) {
    checks::Analysis analysis = analysed(full_plan());
    checks::Finding finding;
    finding.check = "made-up";
    finding.things = {"boom"};
    finding.message = "The boom is in shot 1A.";
    finding.shot = {"1A"};
    checks::Finding other = finding;
    other.shot = {"2A"};
    analysis.findings = {finding, other};
    const auto drawing = floor_plan_of(analysis, {}, session().measure());
    ASSERT_TRUE(drawing);
    EXPECT_EQ(count_of(*drawing, "The boom is in shot 1A. Also shot 2A."), 1U);
}

TEST(FloorPlanSheet, SmallPlanIsAsItWas) {
    SheetOptions options;
    options.paper = "A4";
    options.file_hash = "0123abcd";
    // The words of findings belong to their checks.
    options.findings = false;
    const auto drawing = floor_plan_of(analysed(small_plan()), options, EvenMeasure{});
    ASSERT_TRUE(drawing);
    test::expect_golden(*drawing, "floor_plan_small");
}

} // namespace
} // namespace throwline::sheet
