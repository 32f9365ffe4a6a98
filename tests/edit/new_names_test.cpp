#include "edit/new_names.h"

#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

std::string named(std::set<std::string> taken, const std::string& wanted) {
    return new_name(taken, wanted);
}

TEST(NewNames, AFreeOneIsKept) {
    EXPECT_EQ(named({"stool"}, "chair"), "chair");
    EXPECT_EQ(named({}, "17"), "17");
}

TEST(NewNames, ATakenOneIsCountedOn) {
    EXPECT_EQ(named({"chair"}, "chair"), "chair 2");
    EXPECT_EQ(named({"chair", "chair 2", "chair 3"}, "chair"), "chair 4");
    EXPECT_EQ(named({"chair 2"}, "chair 2"), "chair 3");
}

/// Lamps mostly have a number alone.
TEST(NewNames, ANumberAloneIsCountedOn) {
    EXPECT_EQ(named({"17"}, "17"), "18");
    EXPECT_EQ(named({"16", "17", "18"}, "16"), "19");
}

TEST(NewNames, WhatIsNoNumberToCountOnIsAWord) {
    EXPECT_EQ(named({"1A"}, "1A"), "1A 2");
    EXPECT_EQ(named({"0"}, "0"), "0 2");
    EXPECT_EQ(named({"-3"}, "-3"), "-3 2");
    EXPECT_EQ(named({"9999999"}, "9999999"), "9999999 2");
    EXPECT_EQ(named({"key 0"}, "key 0"), "key 0 2");
}

} // namespace
} // namespace throwline::edit
