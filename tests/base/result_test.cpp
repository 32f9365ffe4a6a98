#include "base/result.h"

#include "base/working.h"

#include <gtest/gtest.h>

namespace throwline {
namespace {

TEST(TextOfError, LeavesOutWhatThePlaceDoesNotKnow) {
    EXPECT_EQ(text_of(Error{"message", {}}), "message");
    EXPECT_EQ(text_of(Error{"message", {"plan.json", "", 0, 0}}), "plan.json: message");
    EXPECT_EQ(text_of(Error{"message", {"plan.json", "/lamps/3", 12, 8}}),
              "plan.json:12:8: /lamps/3: message");
    EXPECT_EQ(text_of(Error{"message", {"", "", 12, 0}}), "line 12: message");
    EXPECT_EQ(text_of(Error{"message", {"", "/lamps", 0, 0}}), "/lamps: message");
}

TEST(TextOfError, IsOneLineThatCannotUpsetATerminal) {
    EXPECT_EQ(text_of(Error{"no \x1b[2J here\n", {"a\nb.json", "/k\xC2\x9B", 1, 2}}),
              "a\uFFFDb.json:1:2: /k\uFFFD: no \uFFFD[2J here\uFFFD");
    EXPECT_EQ(text_of(Error{"broken \xFF byte, ½ kept", {}}), "broken \uFFFD byte, ½ kept");
}

TEST(TextOfWorking, IsOneLine) {
    EXPECT_EQ(text_of(Working{"a = b + c",
                              {{"b", "first part", "1 m"}, {"", "second part", "2 m"}},
                              "3 m",
                              "plain geometry"}),
              "a = b + c; b first part = 1 m; second part = 2 m; result: 3 m; source: plain "
              "geometry");
}

} // namespace
} // namespace throwline
