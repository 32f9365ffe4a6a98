/// The completion for bash offers what the program takes, no more and no less.

#include "catalogue/catalogue.h"
#include "command/call.h"
#include "command/command.h"
#include "lists/lists.h"
#include "sheet/sheet_kinds.h"
#include "support/demo_plan.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <memory>
#include <set>
#include <sstream>

namespace throwline::command_test {
namespace {

using Words = std::multiset<std::string>;

/// Lines that bash prints when it runs the commands behind the completion.
Words printed(const std::string& commands) {
    const WorkingFolder folder;
    write("commands.sh", fmt::format("source '{}/packaging/throwline.bash'\n{}\n",
                                     THROWLINE_SOURCE_DIR, commands));
    std::filesystem::create_directory("plans");
    write("plans/a.json", "");
    write("plans/b.txt", "");
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe{
        popen("bash --norc --noprofile commands.sh 2>&1", "r"), pclose};
    std::string text;
    for (int c = std::fgetc(pipe.get()); c != EOF; c = std::fgetc(pipe.get())) {
        text += static_cast<char>(c);
    }
    Words words;
    std::istringstream lines{text};
    for (std::string line; std::getline(lines, line);) {
        words.insert(line);
    }
    return words;
}

/// What is offered for the last of the words of a command line.
Words offered(const std::string& words) {
    return printed(fmt::format("COMP_WORDS=({}); COMP_CWORD=$((${{#COMP_WORDS[@]}} - 1))\n"
                               "_throwline; ((${{#COMPREPLY[@]}} == 0)) || "
                               "printf '%s\\n' \"${{COMPREPLY[@]}}\"",
                               words));
}

template <class Rows>
Words names(const Rows& rows) {
    Words all;
    for (const auto& row : rows) {
        all.emplace(row.name);
    }
    return all;
}

Words and_all(Words words) {
    words.insert("all");
    return words;
}

TEST(BashCompletion, OffersEveryCommand) {
    Words expected = names(command::all_commands());
    expected.insert({"--help", "--version"});
    EXPECT_EQ(offered("throwline ''"), expected);
    EXPECT_EQ(offered("throwline che"), Words{"check"});
}

TEST(BashCompletion, OffersEveryOptionOfEachCommand) {
    for (const command::Command& command : command::all_commands()) {
        Words expected{"--help", "-h"};
        for (const command::Option& option : command.options) {
            expected.emplace(option.name);
            if (!option.short_name.empty()) {
                expected.emplace(option.short_name);
            }
        }
        EXPECT_EQ(offered(fmt::format("throwline {} -", command.name)), expected) << command.name;
    }
}

/// Behind --json the next operand is offered, behind --paper a paper.
TEST(BashCompletion, KnowsWhichOptionsTakeAValue) {
    std::string asked;
    Words expected;
    for (const command::Command& command : command::all_commands()) {
        for (const command::Option& option : command.options) {
            asked += fmt::format("_throwline_takes_value {0} && echo {0}\n", option.name);
            if (!option.value.empty()) {
                expected.emplace(option.name);
            }
        }
    }
    EXPECT_EQ(printed(asked), expected);
}

TEST(BashCompletion, OffersTheNamesThatTheTablesHold) {
    const catalogue::Catalogue catalogue = support::shipped_catalogue();
    EXPECT_EQ(printed("_throwline_words --paper"), names(catalogue.papers));
    EXPECT_EQ(printed("_throwline_words --which"), and_all(names(sheet::all_sheets())));
    EXPECT_EQ(printed("_throwline_words list"), and_all(names(lists::all_lists())));
    Words tables;
    for (const std::string& table : keys_at(call({"catalogue", "--json"}), "")) {
        tables.insert(table);
    }
    EXPECT_EQ(printed("_throwline_words catalogue"), tables);
}

TEST(BashCompletion, OffersWordsThatTheProgramTakes) {
    const std::string plan = std::string{THROWLINE_SOURCE_DIR} + "/demo/workshop_interview.json";
    const WorkingFolder folder;
    for (const char* option : {"--orientation", "--without"}) {
        const Words words = offered(fmt::format("throwline sheet {} ''", option));
        EXPECT_GE(words.size(), 2U) << option;
        for (const std::string& word : words) {
            const Called made = call({"sheet", plan, "-o", "a.svg", option, word});
            EXPECT_EQ(made.code, 0) << option << ' ' << word << made.err;
        }
    }
    for (const std::string& word : offered("throwline length --bare ''")) {
        EXPECT_EQ(call({"length", "3", "--bare", word}).code, 0) << word;
    }
}

TEST(BashCompletion, EscapesSpacesAndTakesAnEqualsSign) {
    EXPECT_EQ(offered("throwline sheet --paper arch"),
              (Words{"arch\\ A", "arch\\ B", "arch\\ C", "arch\\ D", "arch\\ E"}));
    EXPECT_EQ(offered("throwline sheet --paper = A3"), Words{"A3"});
    EXPECT_EQ(offered("throwline lens --system = ''"), (Words{"imperial", "metric"}));
    EXPECT_EQ(offered("throwline lens --system ="), (Words{"imperial", "metric"}));
}

TEST(BashCompletion, OffersPlansWhereAPlanStands) {
    EXPECT_EQ(offered("throwline check plans/"), Words{"plans/a.json"});
    EXPECT_EQ(offered("throwline check --json pl"), Words{"plans"});
    EXPECT_EQ(offered("throwline survey plans/"), (Words{"plans/a.json", "plans/b.txt"}));
    EXPECT_EQ(offered("throwline list plans/a.json fl"), Words{"flats"});
    EXPECT_EQ(offered("throwline length pl"), Words{});
}

} // namespace
} // namespace throwline::command_test
