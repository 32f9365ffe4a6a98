/// The page of the manual says what the help says.

#include "command/call.h"
#include "command/command.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <map>
#include <set>
#include <sstream>

namespace throwline::command_test {
namespace {

const std::string kPage = std::string{THROWLINE_SOURCE_DIR} + "/packaging/throwline.1";

/// A line as it is read: without requests, fonts and escapes.
std::string plain(std::string line) {
    for (const auto& [mark, letter] : std::map<std::string, std::string>{{"\\fB", ""},
                                                                         {"\\fI", ""},
                                                                         {"\\fR", ""},
                                                                         {"\\-", "-"},
                                                                         {"\\(dq", "\""},
                                                                         {"\\(aq", "'"},
                                                                         {"\\&", ""},
                                                                         {"\\~", " "}}) {
        for (auto at = line.find(mark); at != std::string::npos; at = line.find(mark, at)) {
            line.replace(at, mark.size(), letter);
        }
    }
    return line;
}

/// What stands under each command: the lines from its ".SS throwline NAME" on.
std::map<std::string, std::vector<std::string>> commands_of_page() {
    std::map<std::string, std::vector<std::string>> commands;
    std::istringstream lines{read(kPage)};
    const std::string kHead = ".SS throwline ";
    std::string name;
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with(kHead)) {
            name = line.substr(kHead.size(), line.find(' ', kHead.size()) - kHead.size());
            commands[name].push_back(plain(line));
        } else if (line.starts_with(".S")) {
            name.clear();
        } else if (!name.empty()) {
            commands[name].push_back(plain(line));
        }
    }
    return commands;
}

/// "-o, --output FILE", as in the help.
std::string typed_form(const command::Option& option) {
    const std::string short_name =
        option.short_name.empty() ? std::string{} : fmt::format("{}, ", option.short_name);
    const std::string value =
        option.value.empty() ? std::string{} : fmt::format(" {}", option.value);
    return fmt::format("{}{}{}", short_name, option.name, value);
}

TEST(ManPage, TellsEveryCommandAsTheHelpDoes) {
    const auto page = commands_of_page();
    std::set<std::string> names;
    for (const command::Command& command : command::all_commands()) {
        const std::string name{command.name};
        names.insert(name);
        ASSERT_TRUE(page.contains(name)) << name;
        const std::string head = fmt::format(".SS throwline {}{}{}", name,
                                             command.operands.empty() ? "" : " ", command.operands);
        EXPECT_EQ(page.at(name).front(), head);
        EXPECT_EQ(page.at(name).at(1), std::string{command.summary});
    }
    for (const auto& [name, lines] : page) {
        EXPECT_TRUE(names.contains(name)) << "there is no command " << name;
    }
}

/// An option is a ".TP" with its form on one line and its help on the next.
TEST(ManPage, TellsEveryOptionAsTheHelpDoes) {
    const auto page = commands_of_page();
    for (const command::Command& command : command::all_commands()) {
        std::map<std::string, std::string> expected;
        for (const command::Option& option : command.options) {
            expected[typed_form(option)] = option.help;
        }
        std::map<std::string, std::string> told;
        const std::vector<std::string>& lines = page.at(std::string{command.name});
        for (std::size_t i = 0; i + 2 < lines.size(); ++i) {
            if (lines[i] == ".TP") {
                told[lines[i + 1]] = lines[i + 2];
            }
        }
        EXPECT_EQ(told, expected) << command.name;
    }
}

TEST(ManPage, TellsTheVersionAndWhatIsReturned) {
    const std::string page = plain(read(kPage));
    std::string version = call({"--version"}).out;
    version.pop_back();
    version.front() = 'T';
    EXPECT_NE(page.find(fmt::format("\"{}\"", version)), std::string::npos) << version;
    for (const command::ExitCode code :
         {command::ExitCode::clean, command::ExitCode::findings, command::ExitCode::bad_input,
          command::ExitCode::internal}) {
        EXPECT_NE(page.find(fmt::format(".TP\n{}\n", static_cast<int>(code))), std::string::npos)
            << static_cast<int>(code);
    }
    for (const char* option : {"--help", "--version"}) {
        EXPECT_NE(page.find(option), std::string::npos) << option;
    }
}

} // namespace
} // namespace throwline::command_test
