#include "survey/recce_text.h"
#include "survey/recce_words.h"

#include "base/text_file.h"

#include "base/text_file.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::survey {
namespace {

using plan::StretchKind;
using plan::Survey;

std::string errors_of(const Checked<RecceText>& recce) {
    std::string text;
    if (!recce) {
        for (const Error& error : recce.error()) {
            text += text_of(error) + "\n";
        }
    }
    return text;
}

/// The survey of some lines behind one that names corners A to D.
Survey read(const std::string& lines) {
    const auto recce = read_recce("corners A B C D\n" + lines);
    EXPECT_TRUE(recce) << errors_of(recce);
    return recce ? recce->survey : Survey{};
}

/// The only error of such lines.
std::string error(const std::string& lines) {
    const auto recce = read_recce("corners A B C D\n" + lines, "k.txt");
    EXPECT_FALSE(recce);
    return errors_of(recce);
}

TEST(RecceText, ReadsReadingsInAnyUnit) {
    const Survey survey = read("A-B 14ft 7in\nb – c: 5.32 m \"tape sagged\"\nA-C=23' 7 1/2\"\n"
                               "units cm\nC-D 350 # by eye\nunits in\nD-A 21 1/2");
    ASSERT_EQ(survey.readings.size(), 5U);
    EXPECT_EQ(survey.readings[0], (plan::TapeReading{"A", "B", Length::inches(175), ""}));
    EXPECT_EQ(survey.readings[1],
              (plan::TapeReading{"B", "C", Length::metres(5.32), "tape sagged"}));
    EXPECT_EQ(survey.readings[2].length, Length::inches(283.5));
    EXPECT_EQ(survey.readings[3].length, Length::metres(3.5));
    EXPECT_EQ(survey.readings[4].length, Length::inches(21.5));
}

TEST(RecceText, TakesWhatAPhoneMakesOfIt) {
    const auto recce = read_recce("\xEF\xBB\xBF"
                                  "Corners A, B, C, D clockwise\r\nA—B 14’ 7” “tape sagged”\r\n"
                                  "Note: Noise: fridge #2, “hums”\r\nHeight: 8ft 2in",
                                  "");
    ASSERT_TRUE(recce) << errors_of(recce);
    EXPECT_TRUE(recce->survey.clockwise);
    EXPECT_EQ(recce->survey.readings.at(0).length, Length::inches(175));
    EXPECT_EQ(recce->survey.readings.at(0).note, "tape sagged");
    EXPECT_EQ(recce->survey.notes.at(0),
              (plan::SiteNote{plan::SiteNoteKind::noise, "fridge #2, “hums”"}));
    EXPECT_EQ(recce->units, UnitSystem::imperial);
}

TEST(RecceText, ReadsAChainAlongAWall) {
    const Survey survey =
        read("along A-B from B: wall 1ft 7in, built-in dresser 4ft 2in deep 18in high 36in,\n"
             "   window north view 5ft 1in sill 3ft high 4ft 2in, door 80cm, wall cupboard 60cm up "
             "1.4m,\n"
             "\"shelf, 2nd\" 30cm, rest");
    ASSERT_EQ(survey.chains.size(), 1U);
    const plan::Chain& chain = survey.chains[0];
    EXPECT_EQ(chain.from, "B");
    EXPECT_EQ(chain.to, "A");
    EXPECT_FALSE(chain.to_the_end);
    const std::vector<plan::Stretch> expected{
        {"", StretchKind::wall, Length::inches(19), {}, {}, {}},
        {"built-in dresser",
         StretchKind::thing,
         Length::inches(50),
         Length::inches(18),
         Length::inches(36),
         {}},
        {"north view",
         StretchKind::window,
         Length::inches(61),
         {},
         Length::inches(50),
         Length::inches(36)},
        {"", StretchKind::door, Length::metres(0.8), {}, {}, {}},
        {"wall cupboard", StretchKind::thing, Length::metres(0.6), {}, {}, Length::metres(1.4)},
        {"shelf, 2nd", StretchKind::thing, Length::metres(0.3), {}, {}, {}}};
    EXPECT_EQ(chain.stretches, expected);
}

TEST(RecceText, ReadsThingsOnTheFloor) {
    const Survey survey = read("jar: A 2.31m, B 3.08m \"by eye\"\njar: C 4m\nporch: A 2m, outside\n"
                               "point p\nsolid kitchen island: jar p A high 90cm\n"
                               "round post: jar across 20cm");
    const std::vector<plan::FloorPoint> points{{"jar", false}, {"porch", true}, {"p", false}};
    EXPECT_EQ(survey.points, points);
    ASSERT_EQ(survey.readings.size(), 4U);
    EXPECT_EQ(survey.readings[1], (plan::TapeReading{"B", "jar", Length::metres(3.08), "by eye"}));
    const std::vector<plan::FloorThing> things{
        {"kitchen island", {"jar", "p", "A"}, {}, Length::metres(0.9)},
        {"post", {"jar"}, Length::metres(0.2), {}}};
    EXPECT_EQ(survey.things, things);
}

TEST(RecceText, ReadsAllTheRest) {
    const Survey survey = read(
        "square B c\nsquareness 1deg\ntape 3mm + 0.25 mm/m\nheight 8ft 2in\nheight at C 2.45m\n"
        "outlet \"K 2\" along B-C 1.8m up 14in\nbearing A-B 95deg\nnote key: at the porter's\n"
        "note power: 63 A single phase");
    EXPECT_EQ(survey.square_corners, (std::vector<std::string>{"B", "C"}));
    EXPECT_EQ(survey.squareness, Angle::degrees(1));
    EXPECT_EQ(survey.precision, Length::millimetres(3));
    EXPECT_EQ(survey.precision_per_metre_mm, 0.25);
    EXPECT_EQ(survey.heights, (std::vector<plan::HeightReading>{{"", Length::inches(98)},
                                                                {"C", Length::metres(2.45)}}));
    EXPECT_EQ(survey.outlets, (std::vector<plan::OutletReading>{
                                  {"K 2", "B", "C", Length::metres(1.8), Length::inches(14)}}));
    EXPECT_EQ(survey.first_wall_bearing, Angle::degrees(95));
    EXPECT_EQ(survey.notes,
              (std::vector<plan::SiteNote>{{plan::SiteNoteKind::other, "key: at the porter's"},
                                           {plan::SiteNoteKind::power, "63 A single phase"}}));
}

TEST(RecceText, TakesTheFirstWallsBearingFromEitherEnd) {
    EXPECT_EQ(read("bearing B-A 275deg").first_wall_bearing, Angle::degrees(95));
}

TEST(RecceText, MakesEveryCornerSquareOnRequest) {
    EXPECT_EQ(read("square all").square_corners, (std::vector<std::string>{"A", "B", "C", "D"}));
}

TEST(RecceText, MayNameCornersByNumbersAndBelowTheirReadings) {
    const auto recce = read_recce("1-2 3m\n2: 3 4m\ncorners 1 2 3");
    ASSERT_TRUE(recce) << errors_of(recce);
    EXPECT_TRUE(recce->survey.points.empty());
    EXPECT_EQ(recce->survey.readings.size(), 2U);
}

struct Faulty {
    const char* name;
    const char* lines;
    const char* message;
};

class RecceErrors : public ::testing::TestWithParam<Faulty> {};

TEST_P(RecceErrors, NameThePlaceAndWhatIsAllowed) {
    EXPECT_EQ(error(GetParam().lines), fmt::format("k.txt:2:{}\n", GetParam().message));
}

INSTANTIATE_TEST_SUITE_P(
    Lines, RecceErrors,
    ::testing::Values(
        Faulty{"NoSuchLine", "heigth 3m", "1: \"heigth\" begins no line; nearest is \"height\""},
        Faulty{"NoSuchCorner", "A-E 3m", "3: no corner or floor point is called \"E\""},

        Faulty{"NoUnit", "A-B 532",
               "5: \"532\" has no unit; give it one, or put a line such as \"units cm\" before it"},
        Faulty{"BadLength", "A-B 5'13",
               "7: cannot read \"5'13\" as a length: found \"13\", expected inches below 12 "
               "after feet"},
        Faulty{"NoLength", "A-B long",
               "5: expected a length such as 4ft 2in or 1.27m, found \"long\""},
        Faulty{"LengthOfNothing", "A-B 0m",
               "5: 0 m is out of range; allowed is more than 0 m to 1000 m"},
        Faulty{"MoreThanALength", "A-B 3m sagged",
               "8: expected the end of the line, found \"sagged\""},
        Faulty{"OpenQuote", "A-B 3m \"sagged",
               "8: the quote that begins here does not end on this line"},
        Faulty{"BadEscape", "A-B 3m \"a\\tb\"",
               "10: behind a backslash in quotes comes \", \\ or n"},
        Faulty{"CornersTwice", "corners A B", "9: the corners have been named already"},
        Faulty{"NotAWall", "along A-C: wall 3m",
               "9: a chain lies along one wall, and no wall goes from \"A\" to \"C\""},
        Faulty{"NoStretchWord", "along A-B: dresser 1m depp 3cm",
               "23: \"depp\" says nothing of a stretch; nearest is \"deep\""},
        Faulty{
            "NamelessStretch", "along A-B: 1m",
            "12: expected a stretch such as wall 3ft 2in or dresser 1.2m deep 45cm, found \"1m\""},
        Faulty{"BehindRest", "along A-B: wall 1m, rest, wall 2m",
               "27: expected nothing behind rest, which ends the chain, found \"wall 2m\""},
        Faulty{"OpenList", "along A-B: wall 1m,",
               "20: the list ends with a comma; expected more of it in the next line"},
        Faulty{"OtherEnd", "along A-B from C: wall 1m", "16: \"C\" is no end of this wall"},
        Faulty{"DeepWall", "along A-B: wall 1m deep 2m",
               "12: bare wall has a width and nothing else"},
        Faulty{"FlatAngle", "squareness 50",
               "12: 50deg is out of range; allowed is 0.01 to 20 degrees"},
        Faulty{"OtherBearing", "bearing B-C 3deg",
               "9: the bearing is taken along the first wall, A-B"},
        Faulty{"NoTape", "tape 2mm + some",
               "12: expected a part per metre such as 0.5mm/m, 0 to 100 of them, found \"some\""},
        Faulty{"NoUnitWord", "units feets",
               "7: \"feets\" is no unit of length; known are m, cm, mm, ft, in"},
        Faulty{"NoCircuit", "outlet along A-B 3m",
               "14: expected along and a wall, such as along A-B, found \"A-B 3m\""}),
    [](const auto& fault) { return std::string{fault.param.name}; });

TEST(RecceText, TellsAllErrorsAtOnceInTheirOrder) {
    const std::string errors = error("A-X 3m\nA-B wide\nalong A-B: wall long, dresser 1m depp 2m\n"
                                     "frobnicate\nheight 3000m");
    EXPECT_EQ(std::count(errors.begin(), errors.end(), '\n'), 6) << errors;
    EXPECT_LT(errors.find(":2:"), errors.find(":3:"));
    EXPECT_LT(errors.find(":5:"), errors.find(":6:"));
}

TEST(RecceText, NeedsItsCorners) {
    EXPECT_EQ(errors_of(read_recce("A-B 3m", "k.txt")),
              "k.txt: a recce names the corners of the room in walking order: corners A B C D\n");
    EXPECT_EQ(errors_of(read_recce("corners A B", "k.txt")),
              "k.txt:1:9: a room has 3 corners or more, this one 2\n");
    EXPECT_FALSE(read_recce(""));
}

TEST(RecceText, CountsErrorsBeyondTheLimit) {
    std::string lines;
    for (int i = 0; i < 500; ++i) {
        lines += "A-B x\n";
    }
    const auto recce = read_recce("corners A B C\n" + lines);
    ASSERT_FALSE(recce);
    ASSERT_EQ(recce.error().size(), 201U);
    EXPECT_EQ(recce.error().back().message, "and 300 more");
    EXPECT_FALSE(read_recce(std::string(kLargestRecceBytes + 1, '\n')));
}

TEST(RecceText, EscapesNothingThatATerminalWouldObey) {
    const std::string errors = error("A-B \x1b[31m");
    EXPECT_EQ(errors.find('\x1b'), std::string::npos) << errors;
}

TEST(RecceText, ReadsTheExampleOfItsPage) {
    const std::string page =
        *read_text_file(THROWLINE_SOURCE_DIR "/src/survey/recce-format.md", 1U << 20U);
    const std::string opening = "```recce\n";
    const std::size_t begin = page.find(opening) + opening.size();
    const auto recce = read_recce(page.substr(begin, page.find("```", begin) - begin));
    ASSERT_TRUE(recce) << errors_of(recce);
    EXPECT_EQ(recce->survey.readings.size(), 9U);
    EXPECT_EQ(recce->survey.chains.size(), 1U);
}

TEST(RecceText, ExplainsEveryWordOnItsPage) {
    const std::string page =
        *read_text_file(THROWLINE_SOURCE_DIR "/src/survey/recce-format.md", 1U << 20U);
    for (const std::string_view word : kLineWords) {
        EXPECT_NE(page.find(fmt::format("| `{} ", word)), std::string::npos) << word;
    }
    for (const std::string_view word : kInnerWords) {
        EXPECT_NE(page.find(word), std::string::npos) << word;
    }
}

// Any survey that is in order, made from random numbers.

int whole(int least, int most) {
    return *rc::gen::inRange(least, most + 1);
}

Length any_length(double least_m, double most_m) {
    const double share = whole(0, 1'000'000) / 1e6;
    switch (whole(0, 2)) {
    case 0:
        return Length::metres(least_m + (most_m - least_m) * share);
    case 1:
        return Length::inches(whole(static_cast<int>(least_m * 40) + 1, 300) / 8.0);
    default:
        return Length::millimetres(whole(static_cast<int>(least_m * 1000) + 1, 9000));
    }
}

std::string any_name(std::string_view last) {
    static const std::vector<std::string> kStarts{"",      "p",      "Küche ", "no.", "a-b",
                                                  "\"q\"", "back\\", "3",      "#",   "wall "};
    return *rc::gen::elementOf(kStarts) + std::string{last};
}

std::string any_text() {
    static const std::vector<std::string> kTexts{
        "plain",    "",           "two\nlines", "\"quoted\" \\ #5",
        " spaces ", "noise: hum", "Größe",      "“curly”"};
    return *rc::gen::elementOf(kTexts);
}

plan::Stretch any_stretch() {
    switch (whole(0, 2)) {
    case 0:
        return {"", StretchKind::wall, any_length(0.1, 2), {}, {}, {}};
    case 1:
        return {whole(0, 1) == 0 ? "" : any_name("view"),
                *rc::gen::element(StretchKind::door, StretchKind::window, StretchKind::opening),
                any_length(0.1, 2),
                {},
                any_length(0, 2),
                any_length(0, 1)};
    default:
        return {any_name("rest"),   StretchKind::thing,
                any_length(0.1, 2), any_length(0, 1),
                any_length(0, 1),   whole(0, 1) == 0 ? Length{} : any_length(0, 1)};
    }
}

Survey any_survey() {
    Survey survey;
    survey.corners = {any_name("1"), any_name("2"), any_name("3"), "deep"};
    survey.clockwise = whole(0, 1) == 1;
    const auto corner = [&] { return *rc::gen::elementOf(survey.corners); };
    survey.square_corners = {corner()};
    survey.squareness = Angle::degrees(whole(1, 20) / 4.0);
    survey.points = {{any_name("x"), true}, {"at", false}};
    for (int i = whole(0, 3); i > 0; --i) {
        survey.readings.push_back(
            {survey.corners[0], survey.points[0].name, any_length(0.1, 30), any_text()});
    }
    for (int i = whole(0, 2); i > 0; --i) {
        plan::Chain chain{survey.corners[1], survey.corners[0], {any_stretch()}, whole(0, 1) == 1};
        for (int j = whole(0, 3); j > 0; --j) {
            chain.stretches.push_back(any_stretch());
        }
        survey.chains.push_back(std::move(chain));
    }
    survey.things = {{any_name("post"), {corner()}, any_length(0.1, 1), any_length(0, 2)},
                     {"island", {"at", survey.corners[0], survey.corners[1]}, {}, {}}};
    survey.heights = {{"", any_length(2, 3)}, {"at", any_length(2, 3)}};
    survey.outlets = {{any_name("K"), survey.corners[2], survey.corners[1], any_length(0, 3), {}}};
    if (whole(0, 1) == 1) {
        survey.first_wall_bearing = Angle::radians(whole(-1000, 1000) / 300.0);
    }
    survey.precision = Length::millimetres(whole(1, 300) / 24.0);
    survey.precision_per_metre_mm = whole(0, 1000) / 300.0;
    survey.notes = {{plan::SiteNoteKind::other, any_text()}, {plan::SiteNoteKind::sun, any_text()}};
    return survey;
}

RC_GTEST_PROP(RecceText, ReadsBackAsItWasWritten, ()) {
    const Survey survey = any_survey();
    const std::string text = recce_text(survey);
    RC_LOG() << text;
    const auto again = read_recce(text);
    RC_LOG() << errors_of(again);
    RC_ASSERT(again.has_value());
    RC_ASSERT(again->survey == survey);
    RC_ASSERT(recce_text(again->survey) == text);
}

} // namespace
} // namespace throwline::survey
