#include "base/file_mark.h"
#include "command/bare_studio.h"
#include "command/call.h"
#include "command/refusal.h"

#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

const std::string kDemo = THROWLINE_SOURCE_DIR "/demo/cookery.json";
const std::string kSetRight = THROWLINE_SOURCE_DIR "/demo/cookery_set_right.json";

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

TEST(CompareCommand, IsSilentAboutOneAndTheSamePlan) {
    const Called answer = call({"compare", kDemo, kDemo});
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(answer.out, "no differences\n");
    const Called json = call({"compare", kDemo, kDemo, "--json"});
    EXPECT_EQ(size_at(json, "/differences"), 0U);
    EXPECT_EQ(number_at(json, "/count"), 0.0);
    EXPECT_EQ(size_at(json, "/mind"), 0U);
}

TEST(CompareCommand, GroupsWhatDiffersByKind) {
    const Called answer = call({"compare", kDemo, kSetRight});
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_TRUE(says(answer.out, "\nSet\n  Pot rack removed.\n")) << answer.out;
    EXPECT_TRUE(says(answer.out, "\nLamps\n  Lamp 9 (key): aim from Teo to Ines; ")) << answer.out;
    EXPECT_TRUE(says(answer.out, "\n15 differences\nCaution, loads overhead: ")) << answer.out;
}

TEST(CompareCommand, KeepsTheKeysThatScriptsRelyOn) {
    const Called answer = call({"compare", "-", kDemo, "--json"}, read(kSetRight));
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(number_at(answer, "/count"), 15.0);
    ASSERT_EQ(size_at(answer, "/differences"), 15U);
    EXPECT_EQ(text_at(answer, "/differences/1/change"), "added");
    EXPECT_EQ(text_at(answer, "/differences/1/about"), "one");
    EXPECT_EQ(text_at(answer, "/differences/1/sentence"), "Pot rack added: box.");
    EXPECT_EQ(text_at(answer, "/differences/1/things/0/kind"), "scenery");
    EXPECT_EQ(text_at(answer, "/differences/1/things/0/name"), "pot rack");
    EXPECT_EQ(size_at(answer, "/differences/1/things/0/before_m"), 0U);
    EXPECT_EQ(size_at(answer, "/differences/1/things/0/now_m"), 4U);
    EXPECT_TRUE(is_null_at(answer, "/differences/1/working"));
    EXPECT_EQ(text_at(answer, "/differences/3/working/source"), "plain geometry");
    EXPECT_EQ(size_at(answer, "/mind"), 2U);
}

TEST(CompareCommand, ShowsHowADistanceCameAbout) {
    EXPECT_FALSE(says(call({"compare", kDemo, kSetRight}).out, "result: "));
    // 12 in to the left and 135 in up: sqrt(12² + 135²) = 135.53 in.
    EXPECT_TRUE(says(call({"compare", kDemo, kSetRight, "--working"}).out, "result: 11'-3 1/2\""));
}

TEST(CompareCommand, ReadsOnePlanFromStandardInputButNotBoth) {
    EXPECT_EQ(call({"compare", kDemo, "-"}, read(kDemo)).out, "no differences\n");
    const Called both = call({"compare", "-", "-"}, read(kDemo));
    EXPECT_TRUE(refuses(both.code, both.out, both.err, "standard input"));
}

TEST(CompareCommand, TellsWhatIsWrongWithEitherPlan) {
    const WorkingFolder folder;
    write("bad.json", "{");
    for (const auto& names : {std::vector<std::string>{"bad.json", kDemo}, {kDemo, "bad.json"}}) {
        const Called answer = call({"compare", names[0], names[1]});
        EXPECT_TRUE(refuses(answer.code, answer.out, answer.err, "bad.json"));
    }
    const Called both = call({"compare", "missing.json", "bad.json"});
    EXPECT_EQ(both.code, 2);
    EXPECT_TRUE(says(both.err, "missing.json") && says(both.err, "bad.json")) << both.err;
    EXPECT_EQ(call({"compare", kDemo}).code, 2);
    EXPECT_EQ(call({"compare", kDemo, kDemo, kDemo}).code, 2);
}

TEST(SheetCommand, CloudsWhatChangedSinceAnOlderPlan) {
    const WorkingFolder folder;
    const std::string options = " -o sheet.svg --revision B";
    ASSERT_EQ(call(split("sheet " + kSetRight + options)).code, 0);
    const std::string plain = read("sheet.svg");
    EXPECT_FALSE(says(plain, "clouds since"));
    ASSERT_EQ(call(split("sheet " + kSetRight + " --since " + kDemo + options)).code, 0);
    EXPECT_TRUE(says(read("sheet.svg"), "clouds since file " + file_mark(read(kDemo))));
    // Against itself there is nothing to cloud, but that is said.
    ASSERT_EQ(call(split("sheet " + kSetRight + " --since " + kSetRight + options)).code, 0);
    EXPECT_TRUE(says(read("sheet.svg"), "clouds since file"));
    EXPECT_FALSE(says(read("sheet.svg"), "Revised"));
}

TEST(SheetCommand, RefusesAnOlderPlanThatItCannotRead) {
    const WorkingFolder folder;
    const Called missing = call({"sheet", kDemo, "--since", "missing.json", "-o", "sheet.pdf"});
    EXPECT_TRUE(refuses(missing.code, missing.out, missing.err, "missing.json"));
    const Called both = call({"sheet", "-", "--since", "-", "-o", "sheet.pdf"}, read(kDemo));
    EXPECT_TRUE(refuses(both.code, both.out, both.err, "standard input"));
    EXPECT_TRUE(folder.files().empty());
}

} // namespace
} // namespace throwline::command_test
