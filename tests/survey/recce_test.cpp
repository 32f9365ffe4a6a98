#include "survey/recce.h"

#include "base/text_file.h"
#include "survey/recce_sentences.h"
#include "survey/recce_text.h"
#include "survey/recce_working.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::survey {
namespace {

plan::Survey read(const std::string& text) {
    const auto recce = read_recce(text);
    EXPECT_TRUE(recce) << (recce ? "" : text_of(recce.error().front()));
    return recce ? recce->survey : plan::Survey{};
}

/// Those of an oblong of 5 by 4 m, read without error.
const std::string kDiagonals = "A-C 6.403124m\nB-D 6.403124m\n";

RecceResult result_of(const std::string& text) {
    auto result = surveyed(read(text));
    EXPECT_TRUE(result) << unsettled_text(result.error(), read(text));
    return result ? *std::move(result) : RecceResult{};
}

const SurveyedReading& reading_of(const RecceResult& result, const std::string& label) {
    for (const SurveyedReading& reading : result.readings) {
        if (label_of(reading) == label) {
            return reading;
        }
    }
    ADD_FAILURE() << "no reading " << label;
    return result.readings.front();
}

TEST(Surveyed, GivesTheRoomThatTheReadingsAreOf) {
    const RecceResult result =
        result_of("corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\n" + kDiagonals);
    ASSERT_EQ(result.points.size(), 4U);
    EXPECT_NEAR((result.points[2].at - Vec2{5, 4}).norm(), 0.0, 1e-5);
    EXPECT_GT(result.points[2].error.semi_major, 0.0);
    EXPECT_EQ(result.degrees_of_freedom, 1);
    EXPECT_EQ(result.test, GlobalTest::passes);
    EXPECT_FALSE(result.needs_another_look());
}

TEST(Surveyed, TurnsTheRoomOverWhenItWasWalkedClockwise) {
    const RecceResult result =
        result_of("corners A B C D clockwise\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\n" + kDiagonals);
    EXPECT_NEAR((result.points[2].at - Vec2{5, -4}).norm(), 0.0, 1e-5);
}

TEST(Surveyed, NamesTheReadingThatIsWrong) {
    // The floor point p is at (2, 1.5): 2.5, 3.354, 3.905 and 3.202 m from the corners.
    const RecceResult result =
        result_of("corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\nA-C 6.503m\nB-D 6.403m\n"
                  "p: A 2.5m, B 3.3541m, C 3.9051m, D 3.2016m\n");
    ASSERT_EQ(result.suspects.size(), 1U);
    const SurveyedReading& wrong = reading_of(result, "A-C");
    EXPECT_EQ(wrong.verdict, Verdict::wrong);
    ASSERT_TRUE(wrong.suspect);
    EXPECT_NEAR(wrong.suspect->probable, 6.4031, 0.005);
    EXPECT_EQ(verdict_text(result, wrong, UnitSystem::metric), "wrong: probably should be 6.403 m");
    EXPECT_EQ(verdict_text(result, wrong, UnitSystem::imperial),
              "wrong: probably should be 21'-0 1/8\"");
    EXPECT_TRUE(result.needs_another_look());
    EXPECT_EQ(agreement_text(result),
              "Without 1 wrong reading the readings agree as well as the tape can (2 to spare).");
}

TEST(Surveyed, SaysWhenItCannotTellOneReadingFromAnother) {
    const RecceResult result =
        result_of("corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\nA-C 6.503m\nB-D 6.403m\n");
    ASSERT_FALSE(result.suspects.empty());
    const SurveyedReading& named =
        result.readings[static_cast<std::size_t>(result.suspects.front())];
    EXPECT_FALSE(named.suspect->or_else.empty());
    EXPECT_NE(verdict_text(result, named, UnitSystem::metric).find("cannot be told apart"),
              std::string::npos);
}

TEST(Surveyed, ShowsSquareCornersAsBelieved) {
    const RecceResult result =
        result_of("corners A B C D\nsquare A B\nA-B 5m\nB-C 4m\nC-D 5.003m\nD-A 4m\n");
    EXPECT_EQ(reading_of(result, "corner A").kind, ReadingKind::square_corner);
    const auto sentences = assumptions(result, UnitSystem::metric);
    ASSERT_EQ(sentences.size(), 3U);
    EXPECT_TRUE(sentences[0].starts_with("Corner A was believed square to 0.50°: came out "))
        << sentences[0];
    EXPECT_NE(sentences[0].find(" off square."), std::string::npos);
}

TEST(Surveyed, SaysWhatIsMissingInsteadOfGuessing) {
    const plan::Survey survey = read("corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\n");
    const auto result = surveyed(survey);
    ASSERT_FALSE(result);
    const std::string sentence = unsettled_text(result.error(), survey);
    EXPECT_NE(sentence.find("can still move: one more distance, "), std::string::npos) << sentence;
    EXPECT_NE(sentence.find("A-C"), std::string::npos) << sentence;
    EXPECT_NE(sentence.find("B-D"), std::string::npos) << sentence;
}

TEST(Surveyed, SaysWhenNoShapeFits) {
    const plan::Survey survey = read("corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\n");
    EXPECT_EQ(unsettled_text({.loose = {"A", "C"}, .wanted = {}}, survey),
              "No shape fits these readings: read the walls and two diagonals again.");
    EXPECT_EQ(unsettled_text({.loose = {"jar"}, .wanted = {}}, survey),
              "Point jar cannot be placed: the distances to it contradict each other; read them "
              "again.");
    EXPECT_EQ(
        unsettled_text({.loose = {"jar"}, .wanted = {{"C", "jar"}}, .two_shapes = true}, survey),
        "Two shapes fit these readings, which differ in point jar: one more distance, C-jar, "
        "tells which.");
}

TEST(Surveyed, NamesWhatIsCheckedByNothing) {
    const RecceResult result =
        result_of("corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\nA-C 6.403m\n");
    EXPECT_EQ(result.test, GlobalTest::nothing_checked);
    EXPECT_EQ(reading_of(result, "A-B").verdict, Verdict::hardly_checked);
    EXPECT_TRUE(agreement_text(result).starts_with("Nothing is checked"));
}

TEST(Surveyed, LeavesOutAFloorPointThatCannotBePlaced) {
    const RecceResult result =
        result_of("corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\n" + kDiagonals + "jar: A 2m\n");
    EXPECT_EQ(result.points.size(), 4U);
    ASSERT_EQ(result.unplaced.size(), 1U);
    EXPECT_EQ(result.find("jar"), nullptr);
    EXPECT_EQ(reading_of(result, "A-jar").verdict, Verdict::not_used);
    EXPECT_TRUE(unsettled_text(result.unplaced[0], result.survey).starts_with("Point jar can "))
        << unsettled_text(result.unplaced[0], result.survey);
}

TEST(Surveyed, CountsAWholeChainAsAReadingOfItsWall) {
    const RecceResult result = result_of("corners A B C D\nB-C 4m\nC-D 5m\nD-A 4m\n" + kDiagonals
                                         + "along A-B: wall 2m, door 90cm, wall 2.1m\n"
                                           "along B-C: wall 1m, rest\n");
    EXPECT_EQ(reading_of(result, "chain A-B").kind, ReadingKind::chain);
    ASSERT_EQ(result.chains.size(), 2U);
    EXPECT_TRUE(result.chains[0].closes);
    EXPECT_NEAR(result.chains[1].misclosure.m(), 3.0, 0.01);
    EXPECT_EQ(chain_text(result, 1, UnitSystem::metric),
              "Chain B-C: stops 3.000 m before the end of the wall.");
}

TEST(Surveyed, FlagsAChainThatDoesNotClose) {
    const RecceResult result = result_of("corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\n"
                                         + kDiagonals + "along A-B: wall 2m, door 90cm, wall 2m\n");
    EXPECT_FALSE(result.chains[0].closes);
    EXPECT_TRUE(result.needs_another_look());
    EXPECT_NE(chain_text(result, 0, UnitSystem::metric).find("Chain A-B: 100 mm short of the wall"),
              std::string::npos)
        << chain_text(result, 0, UnitSystem::metric);
}

TEST(Surveyed, TakesTheMeanOfCeilingHeightsAndSaysWhenTheyDiffer) {
    const std::string room = "corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\n" + kDiagonals;
    EXPECT_FALSE(result_of(room).ceiling);
    const RecceResult level = result_of(room + "height 2.45m\nheight at C 2.452m\n");
    EXPECT_NEAR(level.ceiling->height.m(), 2.451, 1e-5);
    EXPECT_FALSE(level.ceiling->differs);
    const RecceResult sloped = result_of(room + "height at A 2.4m\nheight at C 2.9m\n");
    EXPECT_TRUE(sloped.ceiling->differs);
    EXPECT_NE(ceiling_text(sloped, UnitSystem::metric).find("2.400 m to 2.900 m"),
              std::string::npos);
}

TEST(RecceWorking, ComesToTheFiguresShown) {
    const RecceResult result = result_of("corners A B C D\nA-B 5m\nB-C 4.005m\nC-D 5m\nD-A 4m\n"
                                         + kDiagonals + "along A-B: wall 5.001m\n");
    const SurveyedReading& reading = reading_of(result, "B-C");
    const ObservationResult& outcome = reading.outcome;
    EXPECT_NEAR(*outcome.standardised,
                outcome.residual / (reading.sigma * std::sqrt(outcome.redundancy)), 1e-6);
    const Working working = reading_working(result, reading);
    EXPECT_TRUE(working.result.starts_with("w = "));
    EXPECT_EQ(working.inputs.size(), 5U);
    EXPECT_NEAR(*outcome.detectable, 4.132 * reading.sigma / std::sqrt(outcome.redundancy), 1e-5);
    const std::vector<Working> all = recce_workings(result);
    EXPECT_GT(all.size(), 10U);
    for (const Working& one : all) {
        EXPECT_FALSE(one.formula.empty());
        EXPECT_FALSE(one.result.empty());
        EXPECT_FALSE(one.source.empty());
    }
}

TEST(RecceWorking, ShowsHowFarAWrongReadingIsFromTheOthers) {
    const RecceResult result =
        result_of("corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\nA-C 6.503m\nB-D 6.403m\n"
                  "p: A 2.5m, B 3.3541m, C 3.9051m, D 3.2016m\n");
    const SurveyedReading& wrong = reading_of(result, "A-C");
    ASSERT_TRUE(wrong.suspect);
    const Suspect& suspect = *wrong.suspect;
    EXPECT_NEAR(suspect.strength,
                std::abs(suspect.probable - wrong.read)
                    / std::hypot(wrong.sigma, suspect.probable_sigma),
                0.01);
    EXPECT_TRUE(reading_working(result, wrong).result.starts_with("|w| = "));
}

TEST(HarbourKitchen, HasOneWrongReadingWhichIsNamed) {
    const std::string text =
        *read_text_file(THROWLINE_SOURCE_DIR "/demo/harbour_kitchen.recce.txt", 1U << 20U);
    const RecceResult result = result_of(text);
    ASSERT_EQ(result.suspects.size(), 1U);
    const SurveyedReading& wrong = reading_of(result, "B-G");
    EXPECT_EQ(wrong.verdict, Verdict::wrong);
    EXPECT_TRUE(wrong.suspect->or_else.empty());
    // One foot too long.
    EXPECT_NEAR(wrong.read - wrong.suspect->probable, 0.3048, 0.01);
    EXPECT_EQ(result.unplaced.size(), 0U);
    for (const ChainFit& chain : result.chains) {
        EXPECT_TRUE(chain.closes);
    }
}

} // namespace
} // namespace throwline::survey
