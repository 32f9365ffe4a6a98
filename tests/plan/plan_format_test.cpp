#include "plan/reading_support.h"

#include "base/text_file.h"

#include <gtest/gtest.h>

namespace throwline::plan {
namespace {

/// What stands in the blocks of JSON of the format's page, in order.
std::vector<std::string> examples() {
    const std::string page =
        *read_text_file(THROWLINE_SOURCE_DIR "/src/plan/plan-format.md", 1U << 20U);
    constexpr std::string_view kOpening = "```json\n";
    std::vector<std::string> blocks;
    for (std::size_t at = page.find(kOpening); at != std::string::npos;) {
        const std::size_t begin = at + kOpening.size();
        const std::size_t end = page.find("```", begin);
        blocks.push_back(page.substr(begin, end - begin));
        at = page.find(kOpening, end);
    }
    return blocks;
}

TEST(PlanFormatPage, SmallestPlanIsRead) {
    const auto blocks = examples();
    ASSERT_FALSE(blocks.empty());
    EXPECT_EQ(testing::errors_of(testing::read(blocks.front())), "");
}

TEST(PlanFormatPage, AllPartsTogetherAreAPlan) {
    const auto blocks = examples();
    ASSERT_GE(blocks.size(), 9U);
    std::string plan = R"({"format": 1, "title": "all parts")";
    for (std::size_t i = 1; i < blocks.size(); ++i) {
        plan += ",\n" + blocks[i];
    }
    EXPECT_EQ(testing::errors_of(testing::read(plan + "}")), "");
}

} // namespace
} // namespace throwline::plan
