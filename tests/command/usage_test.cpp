#include "command/call.h"
#include "command/command.h"

#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

TEST(CommandLine, NamesTheNearestCommand) {
    const Called answer = call({"sclae"});
    EXPECT_EQ(answer.code, 2);
    EXPECT_EQ(answer.err, "throwline: there is no command sclae; did you mean scale?\n");
}

TEST(CommandLine, NamesTheNearestOption) {
    const Called answer = call(split("lens --sensr 36x24 --focal 50mm"));
    EXPECT_EQ(answer.code, 2);
    EXPECT_TRUE(says(answer.err, "lens has no option --sensr; did you mean --sensor?"))
        << answer.err;
    EXPECT_TRUE(says(call({"--verson"}).err, "did you mean --version?"));
}

TEST(CommandLine, KeepsResultsAndMessagesApart) {
    const Called good = call(split("lens --sensor 36x24 --focal 50mm"));
    EXPECT_TRUE(good.err.empty());
    EXPECT_FALSE(good.out.empty());
    const Called bad = call(split("lens --sensor 36x24 --focal 50mm --json --bogus"));
    EXPECT_TRUE(bad.out.empty());
    EXPECT_TRUE(bad.err.starts_with("throwline: "));
}

TEST(CommandLine, RefusesWhatItCannotUse) {
    for (const char* line :
         {"lens --focal", "lens --sensor 36x24 --focal 50mm --focal 35mm", "sun extra words",
          "scale --system roman --width 1m --depth 1m", "catalogue lense", "length",
          "lens --sensor 36x24 --focal 50mm stray", "check a b"}) {
        const Called answer = call(split(line));
        EXPECT_EQ(answer.code, 2) << line;
        EXPECT_TRUE(answer.out.empty()) << line;
        EXPECT_TRUE(says(answer.err, "throwline: ")) << line;
    }
    EXPECT_EQ(call({}).code, 2);
}

TEST(CommandLine, TakesOptionsWithAnEqualsSign) {
    EXPECT_EQ(call(split("lens --sensor=36x24 --focal=50mm")).code, 0);
}

TEST(CommandLine, ExplainsEveryCommandAndOption) {
    const Called all = call({"--help"});
    EXPECT_EQ(all.code, 0);
    for (const command::Command& command : command::all_commands()) {
        EXPECT_TRUE(says(all.out, "  " + std::string{command.name})) << command.name;
        const Called one = call({std::string{command.name}, "--help"});
        EXPECT_EQ(one.code, 0) << command.name;
        for (const command::Option& option : command.options) {
            EXPECT_TRUE(says(one.out, std::string{option.name})) << command.name << option.name;
        }
    }
}

TEST(CommandLine, OffersJsonEverywhere) {
    for (const command::Command& command : command::all_commands()) {
        bool json = false;
        for (const command::Option& option : command.options) {
            json = json || option.name == "--json";
        }
        EXPECT_TRUE(json) << command.name;
    }
}

TEST(CommandLine, TellsItsVersion) {
    const Called answer = call({"--version"});
    EXPECT_EQ(answer.code, 0);
    EXPECT_TRUE(answer.out.starts_with("throwline "));
}

TEST(CommandLine, ShowsTheWorkingInBothForms) {
    for (const char* line : {"lens --sensor 36x24 --focal 50mm --distance 3m --stop 2.8",
                             "throw --peak 9 --beam 20deg --field 40deg --height 4m --run 3m",
                             "sun --latitude 0 --longitude 0 --time 2003-10-17T12:30:30Z",
                             "scale --width 12m --depth 9m", "length 3.5m"}) {
        const std::string typed = line;
        EXPECT_FALSE(says(call(split(typed)).out, "source: ")) << line;
        EXPECT_TRUE(says(call(split(typed + " --working")).out, "source: ")) << line;
        const Called json = call(split(typed + " --working --json"));
        EXPECT_GE(size_at(json, "/working"), 1U) << line;
        EXPECT_FALSE(text_at(json, "/working/0/formula").empty()) << line;
    }
}

TEST(CommandLine, WritesBytesThatAreNoTextAsJson) {
    const Called answer = call({"catalogue", "--search", "\xff\xfe", "--json"});
    EXPECT_EQ(answer.code, 0);
    EXPECT_EQ(keys_at(answer, "").size(), 0U);
}

TEST(CatalogueCommand, ListsNamesWithTheirSources) {
    const Called answer = call(split("catalogue papers --json"));
    EXPECT_EQ(keys_at(answer, ""), std::vector<std::string>{"papers"});
    EXPECT_FALSE(text_at(answer, "/papers/0/source").empty());
    EXPECT_TRUE(says(call(split("catalogue instruments --search FRESNEL")).out, "Fresnel 1 kW"));
}

TEST(CatalogueCommand, AddsTheUsersOwnItems) {
    const WorkingFolder folder;
    write("own.json", R"({"papers": [{"name": "wall roll", "family": "iso",)"
                      R"( "width_mm": 500, "height_mm": 900}]})");
    const Called answer = call(split("catalogue papers --lensdata own.json"));
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_TRUE(says(answer.out, "wall roll"));
}

TEST(CatalogueCommand, PointsIntoAFaultyTable) {
    const WorkingFolder folder;
    write("own.json", "{\"papers\":\n [{\"name\": \"roll\", \"familly\": \"iso\"}]}");
    const Called answer = call(split("catalogue --lensdata own.json"));
    EXPECT_EQ(answer.code, 2);
    EXPECT_TRUE(says(answer.err, "throwline: own.json:2:")) << answer.err;
    EXPECT_TRUE(says(answer.err, "/papers/0")) << answer.err;
}

} // namespace
} // namespace throwline::command_test
