#include "base/utf8.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline {
namespace {

TEST(Utf8, CountsCharacters) {
    EXPECT_EQ(characters_of("a½″😀"), (std::vector<char32_t>{U'a', U'½', U'″', U'😀'}));
    EXPECT_TRUE(characters_of("").empty());
}

TEST(Utf8, TurnsEachBrokenByteIntoOneReplacement) {
    const auto count_broken = [](std::string_view text) {
        const std::vector<char32_t> found = characters_of(text);
        return std::count(found.begin(), found.end(), U'\uFFFD');
    };
    EXPECT_EQ(count_broken("\xFF"), 1);
    EXPECT_EQ(count_broken("\xC0\x80"), 2);         // overlong
    EXPECT_EQ(count_broken("\xE0\x80\x80"), 3);     // overlong
    EXPECT_EQ(count_broken("\xED\xA0\x80"), 3);     // surrogate
    EXPECT_EQ(count_broken("\xF4\x90\x80\x80"), 4); // beyond Unicode
    EXPECT_EQ(count_broken("\xE2\x80"), 2);         // cut off
    EXPECT_EQ(characters_of("\xE2\x80"
                            "a")
                  .back(),
              U'a');
}

RC_GTEST_PROP(Utf8, WritesBackWhatItRead, ()) {
    const auto characters = *rc::gen::container<std::vector<std::uint32_t>>(
        rc::gen::oneOf(rc::gen::inRange<std::uint32_t>(0, 0xD800),
                       rc::gen::inRange<std::uint32_t>(0xE000, 0x110000)));
    const std::vector<char32_t> text(characters.begin(), characters.end());
    RC_ASSERT(characters_of(utf8_of(text)) == text);
}

TEST(InQuotes, KeepsMessagesShortAndOnOneLine) {
    EXPECT_EQ(in_quotes("10'6"), "\"10'6\"");
    EXPECT_EQ(in_quotes("a\nb"), "\"a\uFFFDb\"");
    EXPECT_EQ(in_quotes("½½½½", 3), "\"½½½...\"");
    EXPECT_EQ(in_quotes(std::string(1000, 'x')).size(), 45U);
}

} // namespace
} // namespace throwline
