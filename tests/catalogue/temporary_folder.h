#pragma once

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <string>
#include <string_view>
#include <unistd.h>

namespace throwline::catalogue {

/// A folder for one test case, gone when it ends.
class TemporaryFolder {
  public:
    TemporaryFolder() {
        const testing::TestInfo* const test = testing::UnitTest::GetInstance()->current_test_info();
        path_ = std::filesystem::path{testing::TempDir()}
                / ("throwline-" + std::to_string(getpid()) + "-" + test->name());
        std::filesystem::create_directories(path_);
    }
    ~TemporaryFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }
    std::filesystem::path write(const std::string& name, std::string_view text) const {
        std::ofstream{path_ / name, std::ios::binary} << text;
        return path_ / name;
    }

  private:
    std::filesystem::path path_;
};

} // namespace throwline::catalogue
