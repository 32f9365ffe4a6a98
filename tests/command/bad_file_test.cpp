#include "command/call.h"
#include "command/program_run.h"
#include "command/refusal.h"

#include <algorithm>
#include <fcntl.h>
#include <fmt/format.h>
#include <map>
#include <sys/stat.h>
#include <unistd.h>

namespace throwline::command_test {
namespace {

namespace fs = std::filesystem;

const std::string kDemo = THROWLINE_SOURCE_DIR "/demo/potters_bench.json";
constexpr std::size_t kMebi = 1U << 20U;
/// Far less than the 1 GiB that a small machine can spare, far more than refusing takes.
constexpr long kMostMemory_kib = 512L * 1024;

/// A folder to work in, apart from the one that catches what the program prints.
class BadFile : public testing::Test {
  protected:
    ProgramEnd start(const ProgramStart& how) { return run_program(how, caught_); }

    void expect_refused(const ProgramStart& how, const std::string& file) {
        const ProgramEnd end = start(how);
        EXPECT_FALSE(end.hung) << file;
        EXPECT_TRUE(refuses(end.code, end.out, end.err, file)) << how.arguments.front();
        EXPECT_LT(end.peak_kib, kMostMemory_kib) << file;
    }

    /// Every command that reads a plan.
    void expect_unread(const std::string& file) {
        expect_refused({.arguments = {"check", file}}, file);
        expect_refused({.arguments = {"check", file, "--json"}}, file);
        expect_refused({.arguments = {"compare", file, kDemo}}, file);
        expect_refused({.arguments = {"compare", kDemo, file}}, file);
        expect_refused({.arguments = {"sheet", file, "-o", at("sheet.pdf")}}, file);
        EXPECT_FALSE(fs::exists(at("sheet.pdf"))) << file;
    }

    std::string at(const std::string& name) const { return (work_ / name).string(); }
    std::string written(const std::string& name, const std::string& text) const {
        command_test::write(at(name), text);
        return at(name);
    }

    /// Everything in the folder: regular files with their bytes.
    std::map<std::string, std::string> contents() const {
        std::map<std::string, std::string> all;
        for (const fs::directory_entry& entry : fs::directory_iterator{work_}) {
            const bool file = entry.symlink_status().type() == fs::file_type::regular;
            all[entry.path().filename().string()] = file ? read(entry.path().string()) : "";
        }
        return all;
    }

  private:
    static fs::path made(const fs::path& folder) {
        fs::create_directories(folder);
        return folder;
    }

    WorkingFolder folder_;
    fs::path work_ = made(fs::path{folder_.path()} / "work");
    fs::path caught_ = made(fs::path{folder_.path()} / "caught");
};

TEST_F(BadFile, AMissingPlanIsRefused) {
    expect_unread(at("none.json"));
    expect_unread(at("no folder/none.json"));
    expect_unread(written("file", "") + "/none.json");
    expect_unread(at(std::string(300, 'n')));
}

TEST_F(BadFile, WhatIsNoRegularFileIsRefusedWithoutWaiting) {
    fs::create_directory(at("folder.json"));
    expect_unread(at("folder.json"));
    ASSERT_EQ(mkfifo(at("fifo.json").c_str(), 0600), 0);
    expect_unread(at("fifo.json"));
    expect_unread("/dev/zero");
    expect_unread("/dev/null");
    fs::create_symlink(at("loop.json"), at("loop.json"));
    expect_unread(at("loop.json"));
    fs::create_symlink(at("none.json"), at("dangling.json"));
    expect_unread(at("dangling.json"));
}

TEST_F(BadFile, APlanThatMayNotBeReadIsRefused) {
    // Its owner may not read it; root, whom permissions do not stop, meets an error of the device.
    const std::string mem = "/proc/self/mem";
    expect_unread(mem);
    if (geteuid() != 0) {
        const std::string file = written("closed.json", read(kDemo));
        fs::permissions(file, fs::perms::none);
        expect_unread(file);
    }
}

TEST_F(BadFile, AHugePlanIsRefusedByItsSize) {
    const std::string file = written("huge.json", "");
    fs::resize_file(file, 200 * kMebi); // Sparse: takes no room on the disk.
    expect_unread(file);
}

TEST_F(BadFile, EndlessStandardInputIsRefusedAtTheLimit) {
    const std::string block = [] {
        std::string text;
        while (text.size() < kMebi) {
            text += R"({"id":"lamp","at":[1,2]},)";
        }
        return text;
    }();
    const auto lamps = [&](int input) {
        write_repeated(input, "{\"lamps\":[", 1);
        write_repeated(input, block, 200);
    };
    expect_refused({.arguments = {"check", "-"}, .feed = lamps}, "standard input");
    expect_refused({.arguments = {"sheet", "-", "-o", at("sheet.svg")}, .feed = lamps},
                   "standard input");
}

TEST_F(BadFile, APlanJustBelowTheLimitNeedsNoGigabyte) {
    // As many values as fit: the tree in memory is many times the text.
    for (const std::string unit : {"0,", "[],", "{\"a\":0},", "\"\","}) {
        const auto values = [&](int input) {
            write_repeated(input, "{\"extra\":[", 1);
            std::string block;
            while (block.size() + unit.size() <= kMebi) {
                block += unit;
            }
            write_repeated(input, block, 31);
        };
        const ProgramEnd end = start({.arguments = {"check", "-"}, .feed = values});
        EXPECT_TRUE(refuses(end.code, end.out, end.err, "standard input")) << unit;
        EXPECT_LT(end.peak_kib, 1024 * 1024) << unit;
    }
}

TEST_F(BadFile, ABadTableOfOwnItemsIsRefused) {
    fs::create_directory(at("folder"));
    for (const std::string& file : {at("none.json"), at("folder"), written("empty.json", ""),
                                    written("wrong.json", R"({"lenses": [{"name": 1e400}]})")}) {
        expect_refused({.arguments = {"check", kDemo, "--lensdata", file}}, file);
    }
    std::string many = "{\"lenses\": [{";
    for (int i = 0; i < 100'000; ++i) {
        many += fmt::format("\"key {}\":0,", i);
    }
    const std::string file = written("many.json", many + "\"name\":\"x\"}]}");
    expect_refused({.arguments = {"check", kDemo, "--lensdata", file}}, file);
}

TEST_F(BadFile, ASheetThatCannotBeWrittenIsRefused) {
    fs::create_directory(at("folder.pdf"));
    const std::string blocked = written("file", "") + "/sheet.pdf";
    fs::create_symlink("/dev/full", at("full.pdf"));
    fs::create_symlink(at("loop.svg"), at("loop.svg"));
    const auto before = contents();
    for (const std::string& file :
         {at("no folder/sheet.pdf"), at("folder.pdf"), blocked, at("full.pdf"), at("loop.svg"),
          at(std::string(300, 'n') + ".pdf"), std::string{"/proc/sheet.pdf"}}) {
        expect_refused({.arguments = {"sheet", kDemo, "-o", file}}, file);
    }
    EXPECT_EQ(contents(), before);
}

TEST_F(BadFile, AnUnknownKindOfSheetIsRefused) {
    for (const std::string name : {"sheet", "sheet.doc", "sheet.pdf.", "sheet.pdf ", ".pdf"}) {
        expect_refused({.arguments = {"sheet", kDemo, "-o", at(name)}}, at(name));
        EXPECT_FALSE(fs::exists(at(name)));
    }
}

TEST_F(BadFile, AFailedRunLeavesTheOldSheetAndNothingElse) {
    for (const std::string extension : {"pdf", "svg", "png"}) {
        const std::string old = written("old." + extension, "the old sheet");
        const auto before = contents();
        expect_refused({.arguments = {"sheet", at("none.json"), "-o", old}}, at("none.json"));
        EXPECT_EQ(contents(), before);
        // The disk is full after a kibibyte.
        expect_refused({.arguments = {"sheet", kDemo, "-o", old}, .largest_file = 1024}, old);
        EXPECT_EQ(contents(), before);
        // And there was no old sheet.
        const std::string fresh = at("new." + extension);
        expect_refused({.arguments = {"sheet", kDemo, "-o", fresh}, .largest_file = 1024}, fresh);
        EXPECT_EQ(contents(), before);
    }
}

TEST_F(BadFile, AResultThatNobodyCanTakeIsRefused) {
    const ProgramEnd end = start({.arguments = {"check", kDemo}, .out = "/dev/full"});
    EXPECT_TRUE(refuses(end.code, end.out, end.err, "standard output"));
}

} // namespace
} // namespace throwline::command_test
