#pragma once

#include <algorithm>
#include <gtest/gtest.h>
#include <sstream>
#include <string>
#include <vector>

namespace throwline::command_test {

inline std::vector<std::string> lines_of(const std::string& text) {
    std::istringstream in{text};
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) {
        lines.push_back(line);
    }
    return lines;
}

/// What the user is owed when a command cannot be done: code 2, nothing on standard output, and on
/// standard error a line an error, which begins with the program's name, names the file, holds a
/// sentence and no control character.
inline testing::AssertionResult refuses(int code, const std::string& out, const std::string& err,
                                        const std::string& file) {
    if (code != 2) {
        return testing::AssertionFailure() << "exit code " << code << ", said: " << err;
    }
    if (!out.empty()) {
        return testing::AssertionFailure() << "printed a result: " << out.substr(0, 200);
    }
    const std::vector<std::string> lines = lines_of(err);
    if (lines.empty() || err.back() != '\n') {
        return testing::AssertionFailure() << "no whole line on standard error: " << err;
    }
    for (const std::string& line : lines) {
        const bool control = std::any_of(line.begin(), line.end(),
                                         [](unsigned char c) { return c < 0x20 || c == 0x7f; });
        constexpr std::size_t kShortestSentence = 12;
        if (!line.starts_with("throwline: ") || line.find(file) == std::string::npos || control
            || line.size() < kShortestSentence + file.size()) {
            return testing::AssertionFailure()
                   << "not a clear error about " << file << ": " << line.substr(0, 300);
        }
    }
    return testing::AssertionSuccess();
}

} // namespace throwline::command_test
