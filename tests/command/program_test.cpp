#include "command/call.h"

#include <cstdlib>
#include <gtest/gtest.h>
#include <sys/wait.h>

namespace throwline::command_test {
namespace {

/// The program itself, run by a shell; the return code of the shell.
int shell(const std::string& script) {
    setenv("THROWLINE", THROWLINE_PROGRAM, 1);
    setenv("THROWLINE_LENSDATA", THROWLINE_SOURCE_DIR "/lensdata", 1);
    const int status = std::system(script.c_str());
    return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

const std::string kLens = "\"$THROWLINE\" lens --sensor 36x24 --focal 50mm ";

TEST(Program, SucceedsWhenTheResultIsWritten) {
    EXPECT_EQ(shell(kLens + ">/dev/null"), 0);
}

TEST(Program, FailsWhenTheResultCannotBeWritten) {
    EXPECT_EQ(shell(kLens + ">/dev/full 2>/dev/null"), 2);
    EXPECT_EQ(shell(kLens + ">&- 2>/dev/null"), 2);
    EXPECT_EQ(shell("\"$THROWLINE\" --help >&- 2>/dev/null"), 2);
}

TEST(Program, IsNotKilledWhenItsReaderGoesAway) {
    const WorkingFolder folder;
    // The pipe has no reader by the time the program writes.
    EXPECT_EQ(shell("{ sleep 0.2; " + kLens + "2>message; echo $? >code; } | true"), 0);
    EXPECT_EQ(read("code"), "2\n");
    EXPECT_NE(read("message").find("cannot be written"), std::string::npos);
}

TEST(Program, SaysNothingWithoutAPlaceToSayIt) {
    EXPECT_EQ(shell("\"$THROWLINE\" bogus 2>&-"), 2);
    EXPECT_EQ(shell("\"$THROWLINE\" bogus 2>/dev/full"), 2);
}

TEST(Program, PrintsTheSameWhereTheDecimalPointIsAComma) {
    const WorkingFolder folder;
    EXPECT_EQ(shell(kLens + ">plain"), 0);
    EXPECT_EQ(shell("LC_ALL=de_DE.UTF-8 " + kLens + ">comma"), 0);
    EXPECT_EQ(read("plain"), read("comma"));
}

} // namespace
} // namespace throwline::command_test
