#include "command/call.h"
#include "command/command.h"

#include <filesystem>
#include <gtest/gtest.h>
#include <sstream>

namespace throwline::command_test {
namespace {

const std::string kTree = THROWLINE_SOURCE_DIR;

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream{text};
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    return lines;
}

struct Example {
    std::string command;
    std::string output;
};

/// What stands in the fenced blocks marked console: "$ throwline ..." and what it prints.
std::vector<Example> examples_of(const std::string& document) {
    std::vector<Example> examples;
    bool inside = false;
    for (const std::string& line : lines_of(document)) {
        if (line.starts_with("```")) {
            inside = line == "```console";
        } else if (inside && line.starts_with("$ throwline ")) {
            examples.push_back({line.substr(std::string{"$ throwline "}.size()), {}});
        } else if (inside && !examples.empty()) {
            examples.back().output += line + "\n";
        }
    }
    return examples;
}

/// Whether a document shows what was printed; "..." alone on a line of it stands for any lines.
testing::AssertionResult shows(const std::string& printed, const std::string& shown) {
    const std::string kGap = "...\n";
    std::size_t reached = 0;
    std::size_t from = 0;
    bool same = true;
    for (auto gap = shown.find(kGap); same && gap != std::string::npos;
         gap = shown.find(kGap, from)) {
        const std::string piece = shown.substr(from, gap - from);
        const auto found = printed.find(piece, reached);
        same = found != std::string::npos && (from > 0 || found == 0);
        reached = found + piece.size();
        from = gap + kGap.size();
    }
    const std::string rest = shown.substr(from);
    same = same && (from == 0 ? printed == rest : printed.substr(reached).ends_with(rest));
    return same ? testing::AssertionSuccess()
                : testing::AssertionFailure() << "printed:\n"
                                              << printed << "shown:\n"
                                              << shown;
}

TEST(Readme, ShowsWhatTheProgramPrints) {
    const auto examples = examples_of(read(kTree + "/README.md"));
    ASSERT_GE(examples.size(), 5U);
    const WorkingFolder folder;
    std::filesystem::create_directory_symlink(kTree + "/demo", "demo");
    std::filesystem::create_directory("out");
    for (const Example& example : examples) {
        const Called answer = call(split(example.command));
        EXPECT_LE(answer.code, 1) << example.command << '\n' << answer.err;
        EXPECT_TRUE(shows(answer.out, example.output)) << example.command;
    }
}

TEST(Readme, ListsEveryCommandAndStaysShort) {
    const std::string readme = read(kTree + "/README.md");
    for (const command::Command& command : command::all_commands()) {
        EXPECT_NE(readme.find("| `" + std::string{command.name}), std::string::npos)
            << command.name;
    }
    EXPECT_LE(lines_of(readme).size(), 260U);
}

/// Texts between back-quotes that look like paths of the tree.
std::vector<std::string> paths_in(const std::string& document) {
    std::vector<std::string> paths;
    for (auto open = document.find('`'); open != std::string::npos;) {
        const auto close = document.find('`', open + 1);
        if (close == std::string::npos) {
            break;
        }
        const std::string text = document.substr(open + 1, close - open - 1);
        const bool path = text.find('/') != std::string::npos
                          && text.find_first_of(" <>*$=\n") == std::string::npos
                          && !text.starts_with("build") && !text.starts_with("out/");
        if (path) {
            paths.push_back(text);
        }
        open = document.find('`', close + 1);
    }
    return paths;
}

TEST(Documents, NameOnlyPathsThatExist) {
    for (const char* name : {"/README.md", "/DEVELOPERS.md"}) {
        const auto paths = paths_in(read(kTree + name));
        EXPECT_FALSE(paths.empty()) << name;
        for (const std::string& path : paths) {
            EXPECT_TRUE(std::filesystem::exists(std::filesystem::path{kTree} / path))
                << name << ": " << path;
        }
    }
}

} // namespace
} // namespace throwline::command_test
