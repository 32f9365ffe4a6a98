#include "command/call.h"

#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

TEST(LengthCommand, ShowsALengthBothWays) {
    const Called answer = call({"length", "6' 2 7/16\"", "--round", "1/32in", "--json"});
    EXPECT_EQ(answer.code, 0);
    EXPECT_EQ(number_at(answer, "/metres"), 1.8907125);
    EXPECT_EQ(text_at(answer, "/imperial"), "6'-2 7/16\"");
    EXPECT_EQ(text_at(answer, "/metric"), "1.891 m");
}

TEST(LengthCommand, RoundsToTheAskedFraction) {
    const auto shown = [](const std::string& round) {
        return text_at(call({"length", "11.97 in", "--round", round, "--json"}), "/imperial");
    };
    EXPECT_EQ(shown("1/16in"), "1'-0\"");
    EXPECT_EQ(shown("1/32 in"), "0'-11 31/32\"");
    EXPECT_EQ(shown("1/2\""), "1'-0\"");
}

TEST(LengthCommand, RoundsToAMetricStep) {
    const Called answer = call(split("length 1.8907m --round 5mm --json"));
    EXPECT_EQ(text_at(answer, "/metric"), "1.890 m");
    EXPECT_EQ(number_at(answer, "/metres"), 1.8907);
}

TEST(LengthCommand, TakesNegativeLengths) {
    for (const char* typed : {"-0'-3\"", "-3in", "-3\"", "-76.2mm", "-.0762m"}) {
        EXPECT_DOUBLE_EQ(number_at(call({"length", typed, "--json"}), "/metres"), -0.0762) << typed;
        EXPECT_DOUBLE_EQ(number_at(call({"length", "--json", "--", typed}), "/metres"), -0.0762)
            << typed;
    }
    EXPECT_DOUBLE_EQ(number_at(call({"length", "-½ in", "--json"}), "/metres"), -0.0127);
}

TEST(LengthCommand, TakesABareNumberOnlyWhenItsUnitIsSaid) {
    EXPECT_EQ(call(split("length -3")).code, 2);
    EXPECT_EQ(number_at(call(split("length -3 --bare metric --json")), "/metres"), -3.0);
    EXPECT_DOUBLE_EQ(number_at(call(split("length 10 --bare imperial --json")), "/metres"), 3.048);
}

TEST(LengthCommand, JoinsWordsThatTheShellSplit) {
    EXPECT_DOUBLE_EQ(number_at(call(split("length 6 ft 2 in --json")), "/metres"), 1.8796);
}

TEST(LengthCommand, PointsAtWhatItCannotRead) {
    for (const char* typed : {"5'13", "5.5' 3\"", "12", "1/0 in", "", "3.5 m m"}) {
        const Called answer = call({"length", typed});
        EXPECT_EQ(answer.code, 2) << typed;
        EXPECT_TRUE(answer.out.empty()) << typed;
        EXPECT_NE(answer.err.find("at character"), std::string::npos) << answer.err;
    }
}

TEST(LengthCommand, RefusesOddSteps) {
    for (const char* step : {"0mm", "-1/16in", "0.01mm", "sixteenth"}) {
        EXPECT_EQ(call({"length", "3m", "--round", step}).code, 2) << step;
    }
}

} // namespace
} // namespace throwline::command_test
