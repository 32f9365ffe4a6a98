#include "command/call.h"

#include "command/run.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <sstream>

namespace throwline::command_test {

namespace fs = std::filesystem;

namespace {

/// Looks something up in the answer; a failed test and null where it is not there.
nlohmann::ordered_json at(const Called& called, const std::string& pointer) {
    const auto json = nlohmann::ordered_json::parse(called.out, nullptr, false);
    const nlohmann::ordered_json::json_pointer place{pointer};
    if (json.is_discarded() || !json.contains(place)) {
        ADD_FAILURE() << pointer << " is not in " << called.out << called.err;
        return nullptr;
    }
    return json.at(place);
}

} // namespace

Called call(const std::vector<std::string>& arguments, const std::string& in) {
    setenv("THROWLINE_LENSDATA", THROWLINE_SOURCE_DIR "/lensdata", 1);
    std::istringstream input{in};
    std::ostringstream out;
    std::ostringstream err;
    const int code = command::run(arguments, {input, out, err});
    return {code, out.str(), err.str()};
}

std::vector<std::string> split(const std::string& line) {
    std::vector<std::string> words;
    bool quoted = false;
    bool open = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char c = line[i];
        if (c == ' ' && !quoted) {
            open = false;
            continue;
        }
        if (!open) {
            words.emplace_back();
            open = true;
        }
        if (c == '\\' && i + 1 < line.size()) {
            words.back() += line[++i];
        } else if (c == '"') {
            quoted = !quoted;
        } else {
            words.back() += c;
        }
    }
    return words;
}

double number_at(const Called& called, const std::string& pointer) {
    const auto value = at(called, pointer);
    EXPECT_TRUE(value.is_number()) << pointer;
    return value.is_number() ? value.get<double>() : 0.0;
}

std::string text_at(const Called& called, const std::string& pointer) {
    const auto value = at(called, pointer);
    EXPECT_TRUE(value.is_string()) << pointer;
    return value.is_string() ? value.get<std::string>() : std::string{};
}

bool is_null_at(const Called& called, const std::string& pointer) {
    return at(called, pointer).is_null();
}

std::size_t size_at(const Called& called, const std::string& pointer) {
    const auto value = at(called, pointer);
    EXPECT_TRUE(value.is_structured()) << pointer;
    return value.size();
}

std::vector<std::string> keys_at(const Called& called, const std::string& pointer) {
    std::vector<std::string> keys;
    const auto value = at(called, pointer);
    for (const auto& [key, member] : value.items()) {
        keys.push_back(key);
    }
    return keys;
}

WorkingFolder::WorkingFolder() : before_{fs::current_path().string()} {
    std::string name = (fs::temp_directory_path() / "throwline-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) {
        throw std::runtime_error{"no temporary folder"};
    }
    path_ = name;
    fs::current_path(path_);
}

WorkingFolder::~WorkingFolder() {
    std::error_code ignored;
    fs::current_path(before_, ignored);
    fs::remove_all(path_, ignored);
}

std::vector<std::string> WorkingFolder::files() const {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator{path_}) {
        names.push_back(entry.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

void write(const std::string& path, const std::string& text) {
    std::ofstream{path, std::ios::binary} << text;
}

std::string read(const std::string& path) {
    std::ostringstream text;
    text << std::ifstream{path, std::ios::binary}.rdbuf();
    return text.str();
}

} // namespace throwline::command_test
