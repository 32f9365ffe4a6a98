#include "base/file_mark.h"
#include "command/bare_studio.h"
#include "command/call.h"

#include <algorithm>
#include <filesystem>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

namespace throwline::command_test {
namespace {

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

Called sheet(const std::string& options) {
    return call(split("sheet - " + options), bare_studio(32));
}

TEST(SheetCommand, WritesTheFormatOfTheExtension) {
    const WorkingFolder folder;
    EXPECT_EQ(sheet("-o floor.pdf").code, 0);
    EXPECT_EQ(sheet("--output floor.svg").code, 0);
    EXPECT_EQ(sheet("-o floor.png --dpi 40").code, 0);
    EXPECT_TRUE(read("floor.pdf").starts_with("%PDF-"));
    EXPECT_TRUE(says(read("floor.svg").substr(0, 400), "<svg"));
    EXPECT_TRUE(read("floor.png").starts_with("\x89PNG"));
    EXPECT_EQ(folder.files(), (std::vector<std::string>{"floor.pdf", "floor.png", "floor.svg"}));
}

TEST(SheetCommand, TellsWhatItWrote) {
    const WorkingFolder folder;
    const Called answer = sheet("-o floor.svg --paper a4 --orientation portrait --json");
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(text_at(answer, "/sheets/0/file"), "floor.svg");
    EXPECT_EQ(number_at(answer, "/sheets/0/width_mm"), 210.0);
    EXPECT_EQ(number_at(answer, "/sheets/0/height_mm"), 297.0);
    EXPECT_TRUE(says(sheet("-o floor.svg").out, "print it at 100 %"));
}

TEST(SheetCommand, WritesTheSameBytesEveryTime) {
    const WorkingFolder folder;
    for (const char* name : {"a.pdf", "b.pdf", "a.svg", "b.svg"}) {
        EXPECT_EQ(sheet(std::string{"-o "} + name).code, 0);
    }
    EXPECT_EQ(read("a.pdf"), read("b.pdf"));
    EXPECT_EQ(read("a.svg"), read("b.svg"));
}

TEST(SheetCommand, MarksThePrintWithTheStateOfTheFile) {
    const WorkingFolder folder;
    EXPECT_EQ(sheet("-o floor.svg").code, 0);
    EXPECT_TRUE(says(read("floor.svg"), file_mark(bare_studio(32))));
    EXPECT_FALSE(says(read("floor.svg"), file_mark(bare_studio(33))));
}

TEST(SheetCommand, LeavesAnOldFileWholeWhenItFails) {
    const WorkingFolder folder;
    write("floor.pdf", "old");
    EXPECT_EQ(sheet("-o floor.pdf --scale 1:1").code, 2);
    EXPECT_EQ(sheet("-o floor.pdf --paper a4x").code, 2);
    EXPECT_EQ(sheet("-o floor.pdf --shot 9Z").code, 2);
    EXPECT_EQ(call(split("sheet - -o floor.pdf"), "{").code, 2);
    EXPECT_EQ(read("floor.pdf"), "old");
    EXPECT_EQ(folder.files(), std::vector<std::string>{"floor.pdf"});
}

TEST(SheetCommand, RefusesPlacesItCannotWriteTo) {
    const WorkingFolder folder;
    mkdir("folder.pdf", 0755);
    for (const char* name : {"missing/floor.pdf", "folder.pdf", "/proc/floor.pdf"}) {
        const Called answer = sheet(std::string{"-o "} + name);
        EXPECT_EQ(answer.code, 2) << name;
        EXPECT_TRUE(answer.out.empty()) << name;
        EXPECT_TRUE(says(answer.err, name)) << answer.err;
    }
    EXPECT_EQ(folder.files(), std::vector<std::string>{"folder.pdf"});
}

TEST(SheetCommand, NamesWhatItDoesNotKnow) {
    EXPECT_TRUE(says(sheet("-o floor.pfd").err, ".pdf, .svg or .png"));
    EXPECT_TRUE(says(sheet("").err, "--output is missing"));
    EXPECT_TRUE(says(sheet("-o a.pdf --orientation sideways").err, "landscape or portrait"));
    EXPECT_TRUE(says(sheet("-o a.pdf --without walls").err, "ground, coverage, pools or findings"));
    EXPECT_TRUE(says(sheet("-o a.pdf --margin -3mm").err, "--margin"));
}

TEST(SheetCommand, LeavesLayersOut) {
    const WorkingFolder folder;
    EXPECT_EQ(sheet("-o all.svg").code, 0);
    EXPECT_EQ(sheet("-o less.svg --without pools --without ground").code, 0);
    EXPECT_LT(read("less.svg").size(), read("all.svg").size());
}

TEST(SheetCommand, CutsWhatIsLargerThanThePaperIntoTiles) {
    const WorkingFolder folder;
    const Called answer = sheet("-o floor.pdf --paper A4 --scale 1:20 --tile --json");
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_GE(size_at(answer, "/sheets"), 4U);
    EXPECT_TRUE(says(text_at(answer, "/sheets/0/title"), "tile A1"));
    EXPECT_TRUE(says(text_at(answer, "/sheets/1/title"), "tile A2"));
    EXPECT_EQ(folder.files(), std::vector<std::string>{"floor.pdf"});
    EXPECT_EQ(sheet("-o floor.svg --paper A4 --scale 1:20 --tile").code, 0);
    EXPECT_EQ(folder.files().size(), 1U + size_at(answer, "/sheets"));
    EXPECT_TRUE(read("floor-01.svg").starts_with("<?xml"));
}

TEST(SheetCommand, DoesNotCutWhatFits) {
    const WorkingFolder folder;
    const Called answer = sheet("-o floor.pdf --paper A2 --scale 1:50 --tile --json");
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(size_at(answer, "/sheets"), 1U);
    EXPECT_FALSE(says(text_at(answer, "/sheets/0/title"), "tile"));
}

TEST(SheetCommand, TilesNeedAScaleAndAnOverlapThatCanBe) {
    EXPECT_TRUE(says(sheet("-o a.pdf --tile").err, "--tile needs --scale"));
    EXPECT_TRUE(says(sheet("-o a.pdf --overlap 5mm").err, "add --tile"));
    EXPECT_EQ(sheet("-o a.pdf --tile --scale 1:20 --overlap 80mm").code, 2);
    EXPECT_EQ(sheet("-o a.pdf --tile --scale 1:20 --overlap -1mm").code, 2);
}

TEST(SheetCommand, TakesAnyPaperAndScale) {
    const WorkingFolder folder;
    const Called own =
        call({"sheet", "-", "-o", "a.svg", "--paper", "24in x 36in", "--json"}, bare_studio(32));
    EXPECT_EQ(own.code, 0) << own.err;
    EXPECT_NEAR(number_at(own, "/sheets/0/width_mm"), 914.4, 1e-9);
    const Called scale = sheet("-o a.svg --paper A2 --scale 1:37 --json");
    EXPECT_EQ(scale.code, 0) << scale.err;
    EXPECT_EQ(text_at(scale, "/sheets/0/scale"), "1:37");
    EXPECT_TRUE(says(read("a.svg"), "Not a standard scale"));
    for (const char* paper : {"60x90mm", "3mm x 9km", "500x700", "A9"}) {
        const Called bad = call({"sheet", "-", "-o", "b.svg", "--paper", paper}, bare_studio(32));
        EXPECT_EQ(bad.code, 2) << paper;
        EXPECT_EQ(std::count(bad.err.begin(), bad.err.end(), '\n'), 1) << bad.err;
    }
}

TEST(SheetCommand, TellsWhatLargerScalesWouldTake) {
    const WorkingFolder folder;
    const Called answer = sheet("-o a.svg --paper A3 --json");
    EXPECT_EQ(text_at(answer, "/sheets/0/scale"), "1:50");
    EXPECT_EQ(text_at(answer, "/sheets/0/larger/0/scale"), "1:20");
    EXPECT_GE(number_at(answer, "/sheets/0/larger/0/tiles"), 2.0);
    EXPECT_TRUE(says(sheet("-o a.svg --paper A3").out, "larger: 1:20 needs "));
}

/// A studio with a picture beneath it.
std::string studio_on(const std::string& picture) {
    return bare_studio(32, R"(, "underlay": { "file": ")" + picture + R"(", "pixel_a": [10, 90],
        "pixel_b": [90, 90], "at_a": ["1 m", "1 m"], "at_b": ["5 m", "1 m"] })");
}

TEST(SheetCommand, LaysThePlansPictureBeneath) {
    const WorkingFolder folder;
    std::filesystem::create_directory("plans");
    ASSERT_EQ(sheet("-o plans/scan.png --dpi 20").code, 0);
    ASSERT_EQ(sheet("-o plans/scan.pdf").code, 0);
    for (const char* picture : {"scan.png", "scan.pdf", "scan.pdf#1"}) {
        write("plans/studio.json", studio_on(picture));
        EXPECT_EQ(call(split("sheet plans/studio.json -o floor.svg")).code, 0) << picture;
        EXPECT_TRUE(says(read("floor.svg"), "<image")) << picture;
        EXPECT_TRUE(says(read("floor.svg"), "layer-underlay")) << picture;
    }
    EXPECT_EQ(call(split("sheet plans/studio.json -o floor.svg --without underlay")).code, 0);
    EXPECT_FALSE(says(read("floor.svg"), "<image"));
}

TEST(SheetCommand, SaysWhyAPictureCannotBeUsed) {
    const WorkingFolder folder;
    write("broken.png", "no picture");
    mkdir("folder.png", 0755);
    ASSERT_EQ(mkfifo("pipe.png", 0600), 0);
    for (const char* picture : {"missing.png", "broken.png", "folder.png", "pipe.png"}) {
        const Called answer = call(split("sheet - -o floor.svg"), studio_on(picture));
        EXPECT_EQ(answer.code, 2) << picture;
        EXPECT_TRUE(says(answer.err, picture)) << answer.err;
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
    }
    EXPECT_EQ(call(split("sheet - -o floor.svg --without underlay"), studio_on("missing.png")).code,
              0);
}

// Check value of the CRC catalogue for this polynomial: the digits 1 to 9 give CBF43926.
TEST(FileMark, IsTheUsualChecksum) {
    EXPECT_EQ(file_mark("123456789"), "cbf43926");
    EXPECT_EQ(file_mark(""), "00000000");
}

} // namespace
} // namespace throwline::command_test
