#include "plan/reading_support.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

/// What a survey within a plan is refused for.
namespace throwline::plan {
namespace {

using testing::errors_of;
using testing::plan_with;
using testing::read;

struct SurveyFaultCase {
    const char* name;
    /// Members beside the corners A to D.
    const char* members;
    const char* pointer;
    const char* message;
};

class SurveyErrors : public ::testing::TestWithParam<SurveyFaultCase> {};

TEST_P(SurveyErrors, NameThePlaceAndWhatIsAllowed) {
    const auto plan = read(plan_with(
        fmt::format(R"("survey": {{"corners": ["A", "B", "C", "D"], {}}})", GetParam().members)));
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 1U) << errors_of(plan);
    EXPECT_EQ(plan.error().front().message, GetParam().message);
    EXPECT_EQ(plan.error().front().place.pointer, GetParam().pointer);
}

INSTANTIATE_TEST_SUITE_P(
    Survey, SurveyErrors,
    ::testing::Values(
        SurveyFaultCase{"CornerTwice", R"("square_corners": ["B", "B"])",
                        "/survey/square_corners/1", "\"B\" is listed twice"},
        SurveyFaultCase{"NoSquareCorner", R"("square_corners": ["b"])", "/survey/square_corners/0",
                        "no corner is called \"b\"; nearest is \"B\""},
        SurveyFaultCase{
            "OldFeatures", R"("features": [])", "/survey/features",
            "\"features\" is no key of survey; allowed are corners, clockwise, square_corners, "
            "squareness, readings, chains, points, things, heights, outlets, "
            "first_wall_bearing, precision, precision_per_metre_mm, notes, extra"},
        SurveyFaultCase{"PointLikeACorner", R"("points": [{"name": "C"}])", "/survey/points/0/name",
                        "\"C\" is listed twice"},
        SurveyFaultCase{"NothingMeasured", R"("readings": [{"from": "A", "to": "A", "length": 1}])",
                        "/survey/readings/0/to", "a measure goes between two different points"},
        SurveyFaultCase{"NoLength", R"("readings": [{"from": "A", "to": "B", "length": 0}])",
                        "/survey/readings/0/length",
                        "0 m is out of range; allowed is more than 0 m to 1000 m"},
        SurveyFaultCase{"ChainAcross",
                        R"("chains": [{"from": "A", "to": "C", "stretches": [{"width": 1}]}])",
                        "/survey/chains/0/to",
                        "a chain lies along one wall, and no wall goes from \"A\" to \"C\""},
        SurveyFaultCase{"EmptyChain", R"("chains": [{"from": "A", "to": "B", "stretches": []}])",
                        "/survey/chains/0/stretches", "a chain has at least one stretch"},
        SurveyFaultCase{
            "NamedWall",
            R"("chains": [{"from": "A", "to": "B", "stretches": [{"width": 1, "name": "x"}]}])",
            "/survey/chains/0/stretches/0", "bare wall has a width and nothing else"},
        SurveyFaultCase{
            "DeepDoor",
            R"("chains": [{"from": "D", "to": "A", "stretches": [{"width": 1, "kind": "door", "depth": 1}]}])",
            "/survey/chains/0/stretches/0/depth", "only a thing has a depth"},
        SurveyFaultCase{
            "NamelessThing",
            R"("chains": [{"from": "A", "to": "B", "stretches": [{"width": 1, "kind": "thing"}]}])",
            "/survey/chains/0/stretches/0", "a thing along a wall has a name"},
        SurveyFaultCase{
            "NoStretchKind",
            R"("chains": [{"from": "A", "to": "B", "stretches": [{"width": 1, "kind": "dor"}]}])",
            "/survey/chains/0/stretches/0/kind",
            "\"dor\" is no stretch kind; nearest is \"door\"; allowed are wall, door, window, "
            "opening, thing"},
        SurveyFaultCase{"ThingOfTwo", R"("things": [{"name": "post", "points": ["A", "B"]}])",
                        "/survey/things/0",
                        "a thing on the floor has three points or more, its corners, or one point, "
                        "its middle, and a diameter"},
        SurveyFaultCase{"OutletAcross",
                        R"("outlets": [{"circuit": "K", "from": "D", "to": "B", "along": 1}])",
                        "/survey/outlets/0/to",
                        "an outlet lies along one wall, and no wall goes from \"D\" to \"B\""},
        SurveyFaultCase{"NoHeightThere", R"("heights": [{"at": "E", "height": 2}])",
                        "/survey/heights/0/at", "no corner or floor point is called \"E\""},
        SurveyFaultCase{"NotSquareAtAll", R"("squareness": 45)", "/survey/squareness",
                        "45 is out of range; allowed is 0.01 to 20 degrees"},
        SurveyFaultCase{"NoNoteKind", R"("notes": [{"kind": "nois", "text": "hum"}])",
                        "/survey/notes/0/kind",
                        "\"nois\" is no site note kind; nearest is \"noise\"; allowed are power, "
                        "breaker, noise, sun, light, access, other"}),
    [](const auto& fault) { return std::string{fault.param.name}; });

TEST(SurveyErrors, CountTooManyCorners) {
    std::string corners;
    for (int i = 0; i < 41; ++i) {
        corners += fmt::format("{}\"c{}\"", i == 0 ? "" : ", ", i);
    }
    const auto plan = read(plan_with("\"survey\": {\"corners\": [" + corners + "]}"));
    ASSERT_FALSE(plan);
    EXPECT_EQ(plan.error().front().message, "a survey has at most 40 corners, this one 41");
    EXPECT_FALSE(read(plan_with(R"("survey": {"corners": ["A", "B"]})")));
}

TEST(SurveyErrors, StayFewWhenEveryNameIsUnknown) {
    std::string readings;
    for (int i = 0; i < 500; ++i) {
        readings += fmt::format("{}{{\"from\": \"x{}\", \"to\": \"y{}\", \"length\": 1}}",
                                i == 0 ? "" : ",", i, i);
    }
    const auto plan = read(
        plan_with(R"("survey": {"corners": ["A", "B", "C"], "readings": [)" + readings + "]}"));
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 201U);
    EXPECT_EQ(plan.error().back().message, "and 800 more");
}

TEST(SurveyNotes, MayBePlainTexts) {
    const auto plan = read(plan_with(
        R"("survey": {"corners": ["A", "B", "C"], "notes": ["x", {"kind": "sun", "text": "y"}]})"));
    ASSERT_TRUE(plan) << errors_of(plan);
    EXPECT_EQ(plan->survey->notes,
              (std::vector<SiteNote>{{SiteNoteKind::other, "x"}, {SiteNoteKind::sun, "y"}}));
}

} // namespace
} // namespace throwline::plan
