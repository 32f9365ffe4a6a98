#include "plan/any_plan.h"
#include "plan/reading_support.h"

#include <filesystem>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::plan {
namespace {

using testing::errors_of;
using testing::plan_with;
using testing::read;
using testing::tables;

RC_GTEST_PROP(WrittenPlan, AnyPlanReadsBackEqual, ()) {
    const Plan plan = testing::any_plan();
    const std::string text = written(plan);
    const auto again = read(text);
    if (!again) {
        RC_FAIL(errors_of(again) + text);
    }
    RC_ASSERT(*again == plan);
    RC_ASSERT(written(*again) == text);
}

TEST(WrittenPlan, EveryDemoReadsBackEqual) {
    for (const auto& entry : std::filesystem::directory_iterator{THROWLINE_SOURCE_DIR "/demo"}) {
        if (entry.path().extension() != ".json") {
            continue;
        }
        const auto plan = read_plan_file(entry.path(), tables());
        ASSERT_TRUE(plan) << errors_of(plan);
        const auto again = read(written(*plan));
        ASSERT_TRUE(again) << errors_of(again);
        EXPECT_EQ(*again, *plan) << entry.path();
    }
}

TEST(WrittenPlan, SmallestPlanHoldsOnlyWhatIsGiven) {
    const auto plan = read(R"({"format":1,"title":"x","room":{"outline":[[0,0],[6,0],[6,4]],
        "height":"10ft"}})");
    ASSERT_TRUE(plan) << errors_of(plan);
    EXPECT_EQ(written(*plan), R"({
  "format": 1,
  "title": "x",
  "units": "metric",
  "room": { "outline": [[0, 0], [6, 0], [6, 4]], "height": 3.048 }
}
)");
}

TEST(WrittenPlan, ExtraSurvivesAsItCame) {
    const std::string kept =
        R"({"b": 1.50, "a": [1e3, null, "\u00e4\n"], "big": 12345678901234567890})";
    const auto plan =
        read(plan_with("\"extra\": " + kept + R"(, "people": [{"id": "a", "extra": 0}],
        "site": {"extra": {"x": {}}})"));
    ASSERT_TRUE(plan) << errors_of(plan);
    const std::string text = written(*plan);
    EXPECT_NE(text.find(R"({"b": 1.50, "a": [1e3, null, "ä\n"], "big": 12345678901234567890})"),
              std::string::npos)
        << text;
    EXPECT_NE(text.find(R"({ "id": "a", "extra": 0 })"), std::string::npos) << text;
    EXPECT_NE(text.find(R"("extra": {"x": {}})"), std::string::npos) << text;
    EXPECT_EQ(*read(text), *plan);
}

TEST(WrittenPlan, HasNoNegativeZero) {
    auto plan = read(plan_with(R"("circuits": [{"id": "C1", "outlets": [[0, 1]]}])"));
    ASSERT_TRUE(plan) << errors_of(plan);
    plan->circuits[0].outlets[0].x() = -0.0;
    EXPECT_EQ(written(*plan).find("-0"), std::string::npos) << written(*plan);
}

TEST(WrittenPlan, AnglesKeepTheirLastBit) {
    auto plan = read(plan_with(R"("site": {"north": 0})"));
    ASSERT_TRUE(plan) << errors_of(plan);
    for (const double angle_rad : {1e-17, 0.1, 1.0 / 3.0, 2.0943951023931957, -3.0, 1.2246e-16}) {
        plan->site.north = Angle::radians(angle_rad);
        const auto again = read(written(*plan));
        ASSERT_TRUE(again) << errors_of(again);
        EXPECT_EQ(again->site.north.rad(), angle_rad);
    }
}

TEST(WrittenPlan, LongListsAreBrokenAndShortOnesAreNot) {
    auto plan = read(plan_with(R"("people": [{"id": "a"}, {"id": "b"}],
        "site": {"notes": ["one note that is quite long and goes on for a while, as notes do",
                           "another one that is as long as the first, so that both do not fit"]})"));
    ASSERT_TRUE(plan) << errors_of(plan);
    const std::string text = written(*plan);
    EXPECT_NE(text.find("  \"people\": [\n    { \"id\": \"a\" },\n    { \"id\": \"b\" }\n  ]"),
              std::string::npos)
        << text;
    EXPECT_NE(text.find("    \"notes\": [\n      \"one note"), std::string::npos) << text;
}

} // namespace
} // namespace throwline::plan
