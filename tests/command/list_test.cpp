#include "command/bare_studio.h"
#include "command/call.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

namespace throwline::command_test {
namespace {

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

Called list(const std::string& options) {
    return call(split("list - " + options), bare_studio(32));
}

const std::string kCookery = "list " THROWLINE_SOURCE_DIR "/demo/cookery.json ";

TEST(ListCommand, NamesTheLists) {
    const Called answer = list("");
    EXPECT_EQ(answer.code, 0) << answer.err;
    for (const char* name :
         {"shots", "running-order", "camera-cards", "lamps-by-position", "lamps-by-channel",
          "lamps-by-circuit", "power", "cables", "filters", "kit", "flats", "site-notes", "all"}) {
        EXPECT_TRUE(says("\n" + answer.out, std::string{"\n"} + name + " ")) << name;
    }
    EXPECT_EQ(size_at(list("--json"), "/lists"), 12U);
}

TEST(ListCommand, PrintsAListInEachForm) {
    EXPECT_TRUE(call(split(kCookery + "power")).out.starts_with("Power\n\nCircuits\n"));
    EXPECT_TRUE(call(split(kCookery + "power --csv"))
                    .out.starts_with("circuit,lamps,power_w,supply_v,current_a,"));
    const Called json = call(split(kCookery + "power --json"));
    EXPECT_EQ(text_at(json, "/name"), "power");
    EXPECT_EQ(number_at(json, "/sections/0/rows/0/power_w"), 2300.0);
}

TEST(ListCommand, PrintsSeveralInTheOrderOfTheTable) {
    const Called answer = call(split(kCookery + "kit shots"));
    EXPECT_TRUE(answer.out.starts_with("Shot list\n"));
    EXPECT_TRUE(says(answer.out, "\nKit\n"));
    const Called json = call(split(kCookery + "kit shots --json"));
    EXPECT_EQ(text_at(json, "/lists/0/name"), "shots");
    EXPECT_EQ(text_at(json, "/lists/1/name"), "kit");
    EXPECT_EQ(size_at(call(split(kCookery + "all --json")), "/lists"), 12U);
}

TEST(ListCommand, TakesTheFormFromTheFile) {
    const WorkingFolder folder;
    EXPECT_EQ(list("site-notes -o notes.csv").out, "notes.csv\n");
    EXPECT_EQ(list("site-notes -o notes.json").code, 0);
    EXPECT_EQ(list("site-notes kit -o notes.txt").code, 0);
    EXPECT_TRUE(read("notes.csv").starts_with("what,note\r\n")
                || read("notes.csv").starts_with("section,what,note\r\n"));
    EXPECT_TRUE(read("notes.json").starts_with("{\n"));
    EXPECT_TRUE(read("notes.txt").starts_with("Kit\n"));
    EXPECT_TRUE(says(read("notes.txt"), "\nSite notes\n"));
    EXPECT_EQ(folder.files(), (std::vector<std::string>{"notes.csv", "notes.json", "notes.txt"}));
}

TEST(ListCommand, WritesAFileAListIntoAFolder) {
    const WorkingFolder folder;
    const Called answer = list("-o lists/ --csv --lensdata missing.json");
    EXPECT_EQ(answer.code, 2);
    EXPECT_TRUE(folder.files().empty());
    const Called written = list("-o lists/ --csv");
    EXPECT_EQ(written.code, 0) << written.err;
    EXPECT_TRUE(says(written.out, "lists/shots.csv\n"));
    EXPECT_TRUE(says(read("lists/power.csv"), "circuit,"));
    EXPECT_EQ(size_at(list("shots -o lists --json"), "/files"), 1U);
    EXPECT_TRUE(read("lists/shots.json").starts_with("{\n"));
}

TEST(ListCommand, WritesTheSameBytesEveryTime) {
    EXPECT_EQ(call(split(kCookery + "all")).out, call(split(kCookery + "all")).out);
}

TEST(ListCommand, NamesTheNearestList) {
    const Called answer = list("camera-crads lamp-by-channel");
    EXPECT_EQ(answer.code, 2);
    EXPECT_TRUE(says(answer.err, "did you mean camera-cards?")) << answer.err;
    EXPECT_TRUE(says(answer.err, "did you mean lamps-by-channel?")) << answer.err;
    EXPECT_TRUE(answer.out.empty());
}

TEST(ListCommand, RefusesWhatCannotBe) {
    const WorkingFolder folder;
    EXPECT_TRUE(says(list("shots kit --csv").err, "CSV holds one list"));
    EXPECT_TRUE(says(list("--csv").err, "CSV holds one list"));
    EXPECT_TRUE(says(list("-o all.csv").err, "CSV holds one list"));
    EXPECT_TRUE(says(list("kit --csv --json").err, "cannot both"));
    EXPECT_TRUE(says(call({"list", "-", "kit", "-o", ""}, bare_studio(32)).err, "--output"));
    EXPECT_TRUE(says(call({"list"}).err, "needs PLAN"));
    EXPECT_TRUE(says(call({"list", "none.json"}).err, "none.json"));
    EXPECT_EQ(call(split("list - shots"), "{").code, 2);
    EXPECT_TRUE(folder.files().empty());
}

TEST(ListCommand, RefusesPlacesItCannotWriteTo) {
    const WorkingFolder folder;
    write("file", "old");
    for (const char* place : {"missing/kit.txt", "/proc/kit.txt", "file/lists/", "/proc/lists/"}) {
        const Called answer = list(std::string{"kit -o "} + place);
        EXPECT_EQ(answer.code, 2) << place;
        EXPECT_TRUE(answer.out.empty()) << place;
        EXPECT_FALSE(answer.err.empty()) << place;
    }
    EXPECT_EQ(read("file"), "old");
    EXPECT_EQ(folder.files(), std::vector<std::string>{"file"});
}

} // namespace
} // namespace throwline::command_test
