#include "base/text_file.h"

#include <array>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace throwline {
namespace {

namespace fs = std::filesystem;

/// A fresh folder for each test. Failures are such that root meets them, too.
class TextFile : public ::testing::Test {
  protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "text_file_XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
    }
    void TearDown() override { fs::remove_all(folder_); }

    fs::path at(const std::string& name) const { return folder_ / name; }

    void put(const std::string& name, const std::string& bytes) const {
        std::ofstream{at(name), std::ios::binary} << bytes;
    }
    std::string bytes_of(const std::string& name) const {
        std::ifstream file{at(name), std::ios::binary};
        return {std::istreambuf_iterator<char>{file}, {}};
    }
    std::size_t entries() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator{folder_}, fs::directory_iterator{}));
    }
    mode_t mode_of(const std::string& name) const {
        struct stat status{};
        EXPECT_EQ(::stat(at(name).c_str(), &status), 0);
        return status.st_mode & 07777U;
    }
    void expect_message(const Error& error, const std::string& name,
                        const std::string& reason) const {
        EXPECT_NE(error.message.find(at(name).string()), std::string::npos) << error.message;
        EXPECT_NE(error.message.find(reason), std::string::npos) << error.message;
    }

    fs::path folder_;
};

const std::string kBinary{"one\0two\r\n\xFF", 10};

TEST_F(TextFile, ComesBackByteForByte) {
    put("a", kBinary);
    EXPECT_EQ(*read_text_file(at("a"), 10), kBinary);
    put("empty", "");
    EXPECT_EQ(*read_text_file(at("empty"), 0), "");
    const std::string long_text(300'000, 'x');
    put("long", long_text);
    EXPECT_EQ(*read_text_file(at("long"), 1'000'000), long_text);
}

TEST_F(TextFile, IsReadThroughALink) {
    put("a", "text");
    fs::create_symlink("a", at("link"));
    EXPECT_EQ(*read_text_file(at("link"), 10), "text");
}

TEST_F(TextFile, SaysWhyItCannotBeRead) {
    put("a", "0123456789");
    expect_message(read_text_file(at("none"), 10).error(), "none", "No such file or directory");
    expect_message(read_text_file(at("a/b"), 10).error(), "a/b", "Not a directory");
    expect_message(read_text_file(at("a"), 9).error(), "a", "it is larger than 9 bytes");
    EXPECT_NE(read_text_file(folder_, 10).error().message.find("it is a folder"),
              std::string::npos);
    fs::create_symlink("loop", at("loop"));
    expect_message(read_text_file(at("loop"), 10).error(), "loop", "symbolic links");
    EXPECT_FALSE(read_text_file("", 10));
}

TEST_F(TextFile, IsNeverAPipeOrADevice) {
    ASSERT_EQ(::mkfifo(at("pipe").c_str(), 0600), 0);
    expect_message(read_text_file(at("pipe"), 10).error(), "pipe", "not a regular file");
    EXPECT_FALSE(read_text_file("/dev/zero", 10));
}

TEST_F(TextFile, IsCappedWhileReadingWhereItsSizeIsNotKnown) {
    // Files under /proc have bytes, but report a size of 0.
    const fs::path status = "/proc/self/status";
    ASSERT_TRUE(read_text_file(status, 1'000'000));
    EXPECT_FALSE(read_text_file(status, 10));
}

/// What a child process that has `input` as its standard input reads of it.
int exit_code_reading_input(const std::string& input, std::uintmax_t max_bytes) {
    int ends[2];
    if (::pipe(ends) != 0) {
        return -1;
    }
    const pid_t child = ::fork();
    if (child == 0) {
        ::dup2(ends[0], STDIN_FILENO);
        ::close(ends[1]);
        const Result<std::string> text = read_text_file("-", max_bytes);
        ::_exit(!text ? 2 : (*text == input ? 0 : 1));
    }
    ::close(ends[0]);
    const bool written = ::write(ends[1], input.data(), input.size()) >= 0;
    ::close(ends[1]);
    int status = 0;
    ::waitpid(child, &status, 0);
    return written && WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

TEST_F(TextFile, IsTheStandardInputForADash) {
    EXPECT_EQ(exit_code_reading_input("a plan", 6), 0);
    EXPECT_EQ(exit_code_reading_input("a plan", 5), 2);
    EXPECT_EQ(exit_code_reading_input("", 0), 0);
}

TEST_F(TextFile, IsCreatedWithTheUsualMode) {
    const mode_t mask = ::umask(022);
    ASSERT_TRUE(write_file_whole(at("new"), kBinary));
    ::umask(mask);
    EXPECT_EQ(bytes_of("new"), kBinary);
    EXPECT_EQ(mode_of("new"), 0644U);
    EXPECT_EQ(entries(), 1U);
}

TEST_F(TextFile, IsReplacedAndKeepsItsMode) {
    put("a", "a long old text");
    fs::permissions(at("a"), fs::perms{0640});
    ASSERT_TRUE(write_file_whole(at("a"), "new"));
    EXPECT_EQ(bytes_of("a"), "new");
    EXPECT_EQ(mode_of("a"), 0640U);
    EXPECT_EQ(entries(), 1U);
}

TEST_F(TextFile, IsReplacedInOneStep) {
    put("a", "old");
    std::ifstream reader{at("a")};
    ASSERT_TRUE(write_file_whole(at("a"), "new"));
    // Who has it open still sees the old file, whole.
    EXPECT_EQ((std::string{std::istreambuf_iterator<char>{reader}, {}}), "old");
}

TEST_F(TextFile, IsReplacedAtTheEndOfItsLinks) {
    fs::create_directory(at("inner"));
    put("inner/a", "old");
    fs::create_symlink("inner/a", at("first"));
    fs::create_symlink(at("first"), at("second"));
    ASSERT_TRUE(write_file_whole(at("second"), "new"));
    EXPECT_TRUE(fs::is_symlink(at("second")));
    EXPECT_TRUE(fs::is_symlink(at("first")));
    EXPECT_FALSE(fs::is_symlink(at("inner/a")));
    EXPECT_EQ(bytes_of("inner/a"), "new");
}

TEST_F(TextFile, IsCreatedAtTheEndOfADanglingLink) {
    fs::create_symlink("later", at("link"));
    ASSERT_TRUE(write_file_whole(at("link"), "new"));
    EXPECT_TRUE(fs::is_symlink(at("link")));
    EXPECT_EQ(bytes_of("later"), "new");
}

TEST_F(TextFile, MayHaveAnyName) {
    for (const std::string& name : {std::string{"with space"}, std::string{"new\nline"},
                                    std::string{"bytes\xFF"}, std::string(255, 'n')}) {
        ASSERT_TRUE(write_file_whole(at(name), "text"));
        EXPECT_EQ(bytes_of(name), "text");
    }
}

TEST_F(TextFile, SaysWhyItCannotBeWritten) {
    put("a", "old");
    expect_message(write_file_whole(at("none/b"), "x").error(), "none/b",
                   "No such file or directory");
    expect_message(write_file_whole(at("a/b"), "x").error(), "a/b", "Not a directory");
    EXPECT_NE(write_file_whole(folder_, "x").error().message.find("it is a folder"),
              std::string::npos);
    expect_message(write_file_whole(at("none/"), "x").error(), "none/", "it names a folder");
    fs::create_symlink("loop", at("loop"));
    expect_message(write_file_whole(at("loop"), "x").error(), "loop", "symbolic links");
    expect_message(write_file_whole(at(std::string(256, 'n')), "x").error(), std::string(256, 'n'),
                   "File name too long");
    EXPECT_FALSE(write_file_whole("", "x"));
    EXPECT_EQ(bytes_of("a"), "old");
    EXPECT_EQ(entries(), 2U);
}

TEST_F(TextFile, ThatIsADeviceIsWrittenStraight) {
    EXPECT_TRUE(write_file_whole("/dev/null", "x"));
    EXPECT_TRUE(fs::is_character_file("/dev/null"));
    const Result<void> full = write_file_whole("/dev/full", "x");
    ASSERT_FALSE(full);
    EXPECT_EQ(full.error().message, "cannot write /dev/full: No space left on device");
}

TEST_F(TextFile, IsNoPipeThatNobodyReads) {
    ASSERT_EQ(::mkfifo(at("pipe").c_str(), 0600), 0);
    EXPECT_FALSE(write_file_whole(at("pipe"), "x"));
}

/// Runs `body` in a child process whose files may not grow beyond 1000 bytes.
template <class Body>
int exit_code_with_small_files(Body body) {
    const pid_t child = ::fork();
    if (child == 0) {
        struct rlimit limit{1000, 1000};
        ::signal(SIGXFSZ, SIG_IGN);
        ::setrlimit(RLIMIT_FSIZE, &limit);
        ::_exit(body());
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

TEST_F(TextFile, StaysWholeWhenThereIsNoRoomForTheNewOne) {
    put("a", "old");
    const std::string large(100'000, 'x');
    const int code = exit_code_with_small_files([&] {
        const Result<void> done = write_file_whole(at("a"), large);
        return done ? 1 : (done.error().message.ends_with("File too large") ? 0 : 2);
    });
    EXPECT_EQ(code, 0);
    EXPECT_EQ(bytes_of("a"), "old");
    EXPECT_EQ(entries(), 1U);
}

TEST_F(TextFile, SeveralAreReplacedTogether) {
    put("a", "old");
    ASSERT_TRUE(write_files_whole(std::array{NewFile{at("a"), "new"}, NewFile{at("b"), "other"}}));
    EXPECT_EQ(bytes_of("a"), "new");
    EXPECT_EQ(bytes_of("b"), "other");
    EXPECT_EQ(entries(), 2U);
}

TEST_F(TextFile, SeveralStayWholeWhenOneCannotBeWritten) {
    put("a", "old");
    const auto done =
        write_files_whole(std::array{NewFile{at("a"), "new"}, NewFile{at("none/b"), "other"}});
    expect_message(done.error(), "none/b", "No such file or directory");
    EXPECT_EQ(bytes_of("a"), "old");
    EXPECT_EQ(entries(), 1U);
    const std::string large(100'000, 'x');
    const int code = exit_code_with_small_files([&] {
        return write_files_whole(std::array{NewFile{at("a"), "new"}, NewFile{at("b"), large}}) ? 1
                                                                                               : 0;
    });
    EXPECT_EQ(code, 0);
    EXPECT_EQ(bytes_of("a"), "old");
    EXPECT_EQ(entries(), 1U);
}

TEST_F(TextFile, SurvivesLeftoversOfACrash) {
    const std::string leftover = ".throwline-" + std::to_string(::getpid()) + "-0";
    put(leftover, "half");
    ASSERT_TRUE(write_file_whole(at("a"), "new"));
    EXPECT_EQ(bytes_of("a"), "new");
    EXPECT_EQ(bytes_of(leftover), "half");
}

} // namespace
} // namespace throwline
