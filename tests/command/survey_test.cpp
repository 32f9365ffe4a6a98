#include "command/call.h"
#include "command/refusal.h"

#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

const std::string kKitchen = THROWLINE_SOURCE_DIR "/demo/harbour_kitchen.recce.txt";
const std::string kWalls = "corners A B C D\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\nheight 2.5m\n";
const std::string kRoom = kWalls + "A-C 6.403m\nB-D 6.403m\n";

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

TEST(SurveyCommand, NamesTheWrongReadingFirst) {
    const Called answer = call({"survey", kKitchen, "--system", "imperial"});
    EXPECT_EQ(answer.code, 1);
    EXPECT_TRUE(answer.out.starts_with("Wrong: measure again\n  B-G: read 24'-3 1/8\"; wrong: "
                                       "probably should be 23'-3"))
        << answer.out;
    for (const char* part : {"Corners and points", "Readings (", "Chains\n", "Believed, not read",
                             "noise: fridge compressor"}) {
        EXPECT_TRUE(says(answer.out, part)) << part;
    }
}

TEST(SurveyCommand, GivesTheSameAsJson) {
    const Called answer = call({"survey", kKitchen, "--json"});
    EXPECT_EQ(answer.code, 1);
    EXPECT_EQ(size_at(answer, "/corners"), 7U);
    EXPECT_EQ(size_at(answer, "/points"), 5U);
    EXPECT_EQ(size_at(answer, "/wrong"), 1U);
    EXPECT_EQ(text_at(answer, "/corners/1/name"), "B");
    EXPECT_NEAR(number_at(answer, "/corners/1/x_m"), 5.205, 0.01);
    EXPECT_EQ(text_at(answer, "/readings/0/label"), "A-B");
    EXPECT_EQ(text_at(answer, "/agreement/test"), "passes");
    EXPECT_EQ(size_at(answer, "/notes"), 4U);
    const Called metric = call({"survey", kKitchen});
    EXPECT_TRUE(says(metric.out, "B-G: read 7.395 m; wrong: probably should be 7.0"))
        << metric.out.substr(0, 200);
}

TEST(SurveyCommand, IsCleanWhenAllAgrees) {
    const Called answer = call({"survey", "-"}, kRoom);
    EXPECT_EQ(answer.code, 0) << answer.out << answer.err;
    EXPECT_TRUE(answer.out.starts_with("The readings agree as well as the tape can (1 to spare)."))
        << answer.out;
}

TEST(SurveyCommand, SaysWhatIsMissingAndWritesNothing) {
    const WorkingFolder folder;
    write("room.txt", kWalls);
    const Called answer = call({"survey", "room.txt", "-o", "room.json"});
    EXPECT_EQ(answer.code, 1);
    EXPECT_TRUE(says(answer.out, "can still move: one more distance")) << answer.out;
    EXPECT_TRUE(says(answer.out, "Nothing was written to room.json")) << answer.out;
    EXPECT_EQ(folder.files(), std::vector<std::string>{"room.txt"});
    const Called json = call({"survey", "room.txt", "--json"});
    EXPECT_EQ(json.code, 1);
    EXPECT_GE(size_at(json, "/unsettled/wanted"), 1U);
}

TEST(SurveyCommand, WritesAPlanThatCanBeReadAgain) {
    const WorkingFolder folder;
    const Called made = call({"survey", kKitchen, "-o", "kitchen.json"});
    EXPECT_EQ(made.code, 1);
    EXPECT_TRUE(says(made.out, "kitchen.json: the room is written\n"));
    EXPECT_TRUE(says(read("kitchen.json"), "\"title\": \"harbour_kitchen\""));
    const Called checked = call({"check", "kitchen.json"});
    EXPECT_LE(checked.code, 1) << checked.err;
    // The plan's own survey says the same again.
    const Called again = call({"survey", "kitchen.json", "--json"});
    EXPECT_EQ(again.code, 1) << again.err;
    EXPECT_EQ(text_at(again, "/readings/0/says"),
              text_at(call({"survey", kKitchen, "--json"}), "/readings/0/says"));
}

TEST(SurveyCommand, PutsTheRoomIntoAPlan) {
    const WorkingFolder folder;
    write("room.txt", kRoom + "along A-B: wall 1m, door 80cm high 2m, rest\n");
    ASSERT_EQ(call({"survey", "room.txt", "-o", "plan.json", "--title", "Two hander"}).code, 0);
    write("room2.txt", kRoom + "along A-B: wall 1.5m, door 80cm high 2m, rest\n");
    const Called answer = call({"survey", "room2.txt", "--into", "plan.json"});
    EXPECT_EQ(answer.code, 0) << answer.out << answer.err;
    const std::string plan = read("plan.json");
    EXPECT_TRUE(says(plan, "\"from_start\": 1.5"));
    EXPECT_FALSE(says(plan, "\"from_start\": 1,"));
    EXPECT_TRUE(says(plan, "Two hander"));
}

TEST(SurveyCommand, WritesNothingThatWouldNotReadBack) {
    const WorkingFolder folder;
    write("room.txt", kRoom + "along A-B: wall 4.5m, door 1m, rest\n");
    const Called answer = call({"survey", "room.txt", "-o", "plan.json", "--json"});
    EXPECT_EQ(answer.code, 1);
    EXPECT_TRUE(is_null_at(answer, "/written"));
    EXPECT_TRUE(says(text_at(answer, "/not_written_because/0"), "past the end of wall A-B"));
    write("twice.txt",
          kRoom
              + "along A-B: door 1m high 2m, rest\nalong B-A: wall 3.5m, door 1m high 2m, "
                "rest\n");
    const Called overlap = call({"survey", "twice.txt", "-o", "plan.json"});
    EXPECT_EQ(overlap.code, 1);
    EXPECT_TRUE(says(overlap.out, "overlap in wall 1")) << overlap.out;
    EXPECT_EQ(folder.files(), (std::vector<std::string>{"room.txt", "twice.txt"}));
}

TEST(SurveyCommand, TakesASurveyAsJson) {
    const std::string survey = R"({"corners": ["A", "B", "C"], "readings": [
        {"from": "A", "to": "B", "length": 3}, {"from": "B", "to": "C", "length": 4},
        {"from": "C", "to": "A", "length": "5 m"}]})";
    const Called answer = call({"survey", "-", "--json"}, survey);
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_NEAR(number_at(answer, "/corners/2/y_m"), 4.0, 1e-6);
}

TEST(SurveyCommand, ShowsEveryWorking) {
    const Called answer = call({"survey", kKitchen, "--working"});
    EXPECT_TRUE(says(answer.out, "w = v / (sigma sqrt(r))"));
    EXPECT_TRUE(says(answer.out, "tolerance = 3.2905 sqrt("));
    EXPECT_TRUE(says(answer.out, "least error found = 4.132 sigma / sqrt(r)"));
    EXPECT_GT(size_at(call({"survey", kKitchen, "--working", "--json"}), "/working"), 50U);
}

TEST(SurveyCommand, AnswersBadInputWithOneSentenceAFault) {
    const WorkingFolder folder;
    struct Bad {
        const char* text;
        const char* message;
    };
    const Bad cases[] = {
        {"corners A B C\nA-X 3m\n", "bad.txt:2:3: no corner or floor point is called \"X\""},
        {"corners A B C\nA-B 3\n", "bad.txt:2:5: \"3\" has no unit"},
        {"corners A B C\nfrom A to B 3m\n", "bad.txt:2:1: \"from\" begins no line"},
        {"", "a recce names the corners of the room in walking order"},
        {"{\"corners\": [\"A\", \"B\"]}", "a room has 3 corners or more, this one 2"},
        {"{\"format\": 1, \"title\": \"t\", \"room\": {\"height\": 3, \"outline\": [[0, 0], [1, "
         "0], "
         "[1, 1]]}}",
         "the plan holds no survey"},
        {"{\"corners\"", "bad.txt:1:"},
        {"\xff\xfe\x01", "bad.txt:1:1: "}};
    for (const Bad& bad : cases) {
        write("bad.txt", bad.text);
        const Called answer = call({"survey", "bad.txt"});
        EXPECT_TRUE(refuses(answer.code, answer.out, answer.err, "bad.txt")) << bad.text;
        EXPECT_TRUE(says(answer.err, bad.message)) << answer.err;
    }
    EXPECT_EQ(call({"survey", "nowhere.txt"}).code, 2);
    write("room.txt", kRoom);
    EXPECT_EQ(call({"survey", "room.txt", "--into", "nowhere.json"}).code, 2);
    EXPECT_EQ(call({"survey", "room.txt", "-o", "room.txt"}).code, 2);
    EXPECT_EQ(call({"survey", "room.txt", "-o", "no/such/folder.json"}).code, 2);
    EXPECT_EQ(call({"survey", "room.txt", "--system", "roman"}).code, 2);
    EXPECT_EQ(read("room.txt"), kRoom);
}

} // namespace
} // namespace throwline::command_test
