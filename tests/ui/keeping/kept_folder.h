#pragma once

#include "support/demo_plan.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <unistd.h>

/// Folders to keep plans in, for tests of keeping.
namespace throwline::support {

/// An empty folder of this process; whoever asks removes it.
inline std::filesystem::path fresh_folder(const std::string& name) {
    const auto folder = std::filesystem::temp_directory_path()
                        / ("throwline-" + std::to_string(getpid()) + "-" + name);
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    return folder;
}

inline std::string bytes_of(const std::filesystem::path& path) {
    std::ifstream in{path, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

inline void put_bytes(const std::filesystem::path& path, const std::string& bytes) {
    std::ofstream{path, std::ios::binary} << bytes;
}

} // namespace throwline::support
