/// A medium of its own that is really full, and really read only: a child program works on a tiny
/// file system in memory that only it can see. Where the system does not let it have one, it limits
/// its files and gives up its rights instead, so that it never works on less than nothing.

#include "ui/keeping/fault_case.h"

#include <cerrno>
#include <cstdlib>
#include <fcntl.h>
#include <fmt/format.h>
#include <sched.h>
#include <sys/mount.h>
#include <sys/wait.h>

namespace throwline::ui {
namespace {

constexpr const char* kFolder = "THROWLINE_SMALL_MEDIUM";
constexpr const char* kIsReal = "THROWLINE_SMALL_MEDIUM_IS_REAL";
/// A few times the plan, its version before, and its work kept apart.
constexpr const char* kRoom = "size=131072";

bool put_line(const char* file, const std::string& line) {
    const int number = open(file, O_WRONLY | O_CLOEXEC);
    const bool done = number >= 0 && write(number, line.data(), line.size()) >= 0;
    close(number);
    return done;
}

/// Whether this process, which must have no other thread, got mounts of its own.
bool has_own_mounts() {
    const uid_t user = geteuid();
    const gid_t group = getegid();
    const bool done =
        unshare(CLONE_NEWNS) == 0
        || (unshare(CLONE_NEWUSER | CLONE_NEWNS) == 0 && put_line("/proc/self/setgroups", "deny")
            && put_line("/proc/self/uid_map", fmt::format("0 {} 1", user))
            && put_line("/proc/self/gid_map", fmt::format("0 {} 1", group)));
    return done && mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0;
}

/// The room of a medium, and its being read only.
class Medium {
  public:
    explicit Medium(std::filesystem::path folder)
        : folder_{std::move(folder)}, is_real_{std::getenv(kIsReal) != nullptr} {}

    bool is_real() const { return is_real_; }

    /// Takes all room but `left_bytes`.
    void fill(std::size_t left_bytes) {
        if (!is_real_) {
            full_.emplace();
            return;
        }
        const int number = open(filler().c_str(), O_WRONLY | O_CREAT | O_CLOEXEC, 0600);
        const std::string piece(1024, 'x');
        off_t written = 0;
        while (write(number, piece.data(), piece.size()) == static_cast<ssize_t>(piece.size())) {
            written += static_cast<off_t>(piece.size());
        }
        EXPECT_EQ(errno, ENOSPC);
        EXPECT_EQ(ftruncate(number, written - static_cast<off_t>(left_bytes)), 0);
        close(number);
    }
    void give_room() {
        full_.reset();
        std::filesystem::remove(filler());
    }
    std::string full_reason() const {
        return is_real_ ? "No space left on device" : "File too large";
    }

    /// While no file on it is open for writing.
    void make_read_only() {
        if (is_real_) {
            EXPECT_EQ(remounted(MS_RDONLY), 0) << std::strerror(errno);
        } else {
            closed_.emplace(folder_, folder_ / "plans");
        }
    }
    void make_writable() {
        closed_.reset();
        if (is_real_) {
            EXPECT_EQ(remounted(0), 0) << std::strerror(errno);
        }
    }
    std::string read_only_reason() const {
        return is_real_ ? "Read-only file system" : "Permission denied";
    }

  private:
    std::filesystem::path filler() const { return folder_ / "filler"; }
    int remounted(unsigned long flags) const {
        return mount("none", folder_.c_str(), nullptr, MS_REMOUNT | flags, kRoom);
    }

    std::filesystem::path folder_;
    bool is_real_;
    std::optional<FullDisk> full_;
    std::optional<ReadOnlyFolder> closed_;
};

/// In a child: whatever `body` finds is told by the test that it is in.
bool is_child() {
    return std::getenv(kFolder) != nullptr;
}

std::filesystem::path child_folder() {
    return std::getenv(kFolder);
}

TEST(SmallMedium, ChildFull) {
    if (!is_child()) {
        SUCCEED() << "only a child of the test below has work here";
        return;
    }
    Medium medium{child_folder()};
    Work work{child_folder()};
    const std::string kept = work.kept();
    // No room at all, then for the version before alone.
    for (const std::size_t left_bytes : {std::size_t{0}, std::size_t{8192}}) {
        medium.fill(left_bytes);
        const SaveOutcome outcome = work.keeper->save();
        medium.give_room();
        work.expect_told_and_kept(outcome, medium.full_reason());
        work.expect_files_untouched();
    }
    medium.fill(0);
    work.change("changed once more");
    work.keeper->flush();
    EXPECT_TRUE(support::came_to([&] { return work.not_kept.size() == 1; }));
    Work::expect_sentence(work.not_kept.value(0), medium.full_reason(), ".work");
    EXPECT_EQ(work.kept(), kept);
    work.desk->undo();
    medium.give_room();
    work.expect_saves_once_all_is_well();
    EXPECT_EQ(work.version_before(), work.before);
    work.keeper->let_go();
    EXPECT_EQ(Work::entries(work.apart), 0);
}

TEST(SmallMedium, ChildReadOnly) {
    if (!is_child()) {
        SUCCEED() << "only a child of the test below has work here";
        return;
    }
    Medium medium{child_folder()};
    Work work{child_folder(), [&] { medium.make_read_only(); }};
    EXPECT_TRUE(support::came_to([&] { return work.not_kept.size() == 1; }));
    Work::expect_sentence(work.not_kept.value(0), medium.read_only_reason(), "recovery");
    const SaveOutcome outcome = work.keeper->save();
    medium.make_writable();
    work.expect_told_and_kept(outcome, medium.read_only_reason());
    // Nobody could hold a lock there.
    work.expect_files_untouched(0);
    EXPECT_TRUE(support::came_to(
        [&] { return std::filesystem::exists(work.apart) && !work.kept().empty(); }));
    work.expect_saves_once_all_is_well();
    work.keeper->let_go();
    EXPECT_EQ(Work::entries(work.apart), 0);
}

/// Runs one of the above as a program of its own, on a medium of its own where there can be one.
int exit_code_of_child(const char* test, const std::filesystem::path& folder, bool may_be_real) {
    const pid_t child = fork();
    if (child == 0) {
        setenv(kFolder, folder.c_str(), 1);
        if (may_be_real && has_own_mounts()
            && mount("none", folder.c_str(), "tmpfs", 0, kRoom) == 0) {
            setenv(kIsReal, "1", 1);
        }
        const std::string filter = std::string{"--gtest_filter=SmallMedium."} + test;
        execl("/proc/self/exe", "test", filter.c_str(), nullptr);
        _exit(9);
    }
    int status = 0;
    waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

void expect_well(const char* test) {
    for (const bool may_be_real : {true, false}) {
        const auto folder = support::fresh_folder(std::string{"medium-"} + test);
        EXPECT_EQ(exit_code_of_child(test, folder, may_be_real), 0)
            << test << (may_be_real ? ", on a medium of its own" : ", with limits");
        std::filesystem::remove_all(folder);
    }
}

TEST(SmallMedium, KeepsTheWorkWhenFull) {
    expect_well("ChildFull");
}

TEST(SmallMedium, KeepsTheWorkWhenReadOnly) {
    expect_well("ChildReadOnly");
}

} // namespace
} // namespace throwline::ui
