#include "plan/reading_support.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

/// Nothing that a file holds may crash or hang the reader.
namespace throwline::plan {
namespace {

using testing::errors_of;
using testing::plan_with;
using testing::read;

TEST(HostilePlan, EmptyAndBinaryTextIsRefused) {
    EXPECT_FALSE(read(""));
    EXPECT_FALSE(read("   \n"));
    EXPECT_FALSE(read(std::string("\x00\x01\x02\xff\xfe", 5)));
    EXPECT_FALSE(read("null"));
    EXPECT_FALSE(read("[]"));
    EXPECT_FALSE(read("{}"));
}

TEST(HostilePlan, DeepNestingIsRefused) {
    const std::string open(10'000, '[');
    const std::string close(10'000, ']');
    EXPECT_FALSE(read(open));
    EXPECT_FALSE(read(plan_with("\"extra\": " + open + close)));
}

TEST(HostilePlan, EveryTruncationOfAPlanIsRefused) {
    const auto whole =
        read_plan_file(THROWLINE_SOURCE_DIR "/demo/potters_bench.json", testing::tables());
    ASSERT_TRUE(whole) << errors_of(whole);
    const std::string text = written(*whole);
    for (std::size_t length = 0; length + 2 < text.size(); length += 7) {
        EXPECT_FALSE(read(std::string_view{text}.substr(0, length))) << length;
    }
}

TEST(HostilePlan, NumbersWithoutMeaningAreRefused) {
    for (const char* height : {"NaN", "Infinity", "1e999", "1e308", "-1", "0", "-0.0", "1e-400",
                               "\"1e308m\"", "\"nan\"", "\"-3 m\"", "\"\"", "1001"}) {
        const auto plan = read(fmt::format(R"({{"format": 1, "title": "t", "room": {{
            "outline": [[0, 0], [6, 0], [6, 4]], "height": {}}}}})",
                                           height));
        EXPECT_FALSE(plan) << height;
    }
}

TEST(HostilePlan, WrongTypesEverywhereAreRefused) {
    for (const char* value : {"null", "true", "7", "\"x\"", "[]", "{}", "[[[]]]", "[null]"}) {
        for (const char* key :
             {"site", "survey", "grid", "pipes", "circuits", "scenery", "people", "beats",
              "cameras", "shots", "booms", "lamps", "underlay", "kit", "targets", "accepted"}) {
            const auto plan = read(plan_with(fmt::format("\"{}\": {}", key, value)));
            if (plan) {
                const bool empty =
                    std::string_view{value} == "[]" || std::string_view{value} == "{}";
                EXPECT_TRUE(empty) << key << value;
            }
        }
    }
}

TEST(HostilePlan, EndlessListsAreRefused) {
    std::string points;
    for (int i = 0; i < 20'000; ++i) {
        points += fmt::format("{}[{}, {}]", i == 0 ? "" : ",", i % 100, i / 100);
    }
    const auto plan =
        read(R"({"format": 1, "title": "t", "room": {"height": 3, "outline": [)" + points + "]}}");
    ASSERT_FALSE(plan);
    EXPECT_EQ(plan.error().front().message, "20000 items are too many; allowed are 10000");
}

TEST(HostilePlan, HugeKeysAndNamesStayOutOfMessages) {
    const std::string key(900, 'k');
    const std::string huge(1'000'000, 'x');
    const auto plan =
        read(plan_with("\"" + key + "\": 1, \"people\": [{\"id\": \"" + huge + "\"}]"));
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 2U);
    for (const Error& error : plan.error()) {
        EXPECT_LT(error.message.size(), 500U);
    }
}

RC_GTEST_PROP(HostilePlan, AnyChangedByteIsReadOrRefused, ()) {
    static const std::string kText = written(
        *read_plan_file(THROWLINE_SOURCE_DIR "/demo/potters_bench.json", testing::tables()));
    std::string text = kText;
    const auto changes = *rc::gen::inRange(1, 6);
    for (int i = 0; i < changes; ++i) {
        const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
        text[at] = static_cast<char>(*rc::gen::inRange(0, 256));
    }
    const auto plan = read(text);
    if (plan) {
        RC_ASSERT(written(*read(written(*plan))) == written(*plan));
    } else {
        RC_ASSERT(!plan.error().empty());
        RC_ASSERT(!plan.error().front().message.empty());
    }
}

} // namespace
} // namespace throwline::plan
