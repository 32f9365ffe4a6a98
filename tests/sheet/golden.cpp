#include "sheet/golden.h"

#include "base/text_file.h"

#include <cstdlib>
#include <filesystem>
#include <gtest/gtest.h>
#include <sstream>

namespace throwline::test {

void expect_golden(const sheet::Drawing& drawing, const std::string& name) {
    const std::filesystem::path file =
        std::filesystem::path{THROWLINE_SOURCE_DIR} / "tests/golden" / (name + ".txt");
    const std::string text = sheet::as_text(drawing);
    if (std::getenv("THROWLINE_UPDATE_GOLDEN") != nullptr) {
        ASSERT_TRUE(write_file_whole(file, text));
    }
    const auto expected = read_text_file(file, 1U << 22U);
    ASSERT_TRUE(expected) << expected.error().message;
    EXPECT_EQ(text.size(), expected->size());
    // The first line that differs tells more than two whole sheets.
    std::istringstream drawn{text};
    std::istringstream golden{*expected};
    std::string line;
    std::string golden_line;
    for (int number = 1; std::getline(drawn, line); ++number) {
        ASSERT_TRUE(std::getline(golden, golden_line)) << file << " ends before " << line;
        ASSERT_EQ(line, golden_line) << file << " line " << number;
    }
}

} // namespace throwline::test
