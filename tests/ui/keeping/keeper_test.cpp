/// Work survives: a process that edits and saves is killed at random instants; the file always
/// opens, and what is recovered misses at most the last two seconds.

#include "edit/moves.h"
#include "plan/read_plan.h"
#include "plan/salvage.h"
#include "ui/desk_case.h"
#include "ui/keeping/keeper.h"

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <random>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace throwline::ui {
namespace {

using namespace std::chrono_literals;
using Clock = std::chrono::steady_clock;

constexpr auto kMostLost = 2s;

std::int64_t now_ms() {
    return std::chrono::duration_cast<std::chrono::milliseconds>(Clock::now().time_since_epoch())
        .count();
}

std::filesystem::path fresh_folder(const std::string& name) {
    const auto folder = std::filesystem::temp_directory_path()
                        / ("throwline-" + std::to_string(getpid()) + "-" + name);
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    return folder;
}

/// In the child: edits without a pause, each step told on a pipe with its instant, saves now and
/// then. The title counts the steps.
[[noreturn]] void edit_until_killed(const std::filesystem::path& folder, int pipe,
                                    std::uint32_t seed) {
    std::mt19937 random{seed};
    auto desk = std::make_unique<Desk>(support::shared_catalogue());
    Keeper keeper{*desk, RecoveryStore{folder / "recovery"}, 0};
    if (!keeper.open(folder / "plan.json")) {
        _exit(3);
    }
    for (int step = 1;; ++step) {
        plan::Plan plan = *desk->plan();
        plan.title = "step " + std::to_string(step);
        if (!desk->take(edit::Step{"Step", std::move(plan), {}})) {
            _exit(4);
        }
        const std::int64_t told[2]{step, now_ms()};
        if (write(pipe, told, sizeof told) != sizeof told) {
            _exit(5);
        }
        if (random() % 20 == 0 && keeper.save().saved != Saved::done) {
            _exit(6);
        }
        QTest::qWait(static_cast<int>(random() % 30));
    }
}

int step_of(const std::string& title) {
    return title.rfind("step ", 0) == 0 ? std::stoi(title.substr(5)) : 0;
}

/// The steps that the child told of before it died.
std::vector<std::pair<std::int64_t, std::int64_t>> told_steps(int pipe) {
    std::vector<std::pair<std::int64_t, std::int64_t>> steps;
    std::int64_t told[2];
    while (read(pipe, told, sizeof told) == sizeof told) {
        steps.emplace_back(told[0], told[1]);
    }
    return steps;
}

void kill_once(const std::filesystem::path& folder, std::uint32_t seed) {
    std::filesystem::remove_all(folder / "recovery");
    ASSERT_TRUE(std::filesystem::copy_file(
        support::source_folder() / "demo" / "workshop_interview.json", folder / "plan.json",
        std::filesystem::copy_options::overwrite_existing));
    int ends[2];
    ASSERT_EQ(pipe(ends), 0);
    const pid_t child = fork();
    if (child == 0) {
        close(ends[0]);
        // A program of its own: a fork of a Qt application is not one.
        const std::string fd = std::to_string(ends[1]);
        const std::string number = std::to_string(seed);
        setenv("THROWLINE_KILL_FOLDER", folder.c_str(), 1);
        setenv("THROWLINE_KILL_PIPE", fd.c_str(), 1);
        setenv("THROWLINE_KILL_SEED", number.c_str(), 1);
        execl("/proc/self/exe", "test", "--gtest_filter=Killed.Child", nullptr);
        _exit(9);
    }
    close(ends[1]);
    // Not before it has begun to work: starting up takes longer than the work that is looked at.
    std::int64_t first[2];
    ASSERT_EQ(read(ends[0], first, sizeof first), static_cast<ssize_t>(sizeof first));
    std::mt19937 random{seed};
    std::this_thread::sleep_for(std::chrono::milliseconds{random() % 1500});
    kill(child, SIGKILL);
    const std::int64_t killed_ms = now_ms();
    int status = 0;
    waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the child ended by itself: " << WEXITSTATUS(status);
    auto steps = told_steps(ends[0]);
    steps.insert(steps.begin(), {first[0], first[1]});
    close(ends[0]);

    const Checked<plan::Plan> file =
        plan::read_plan_file(folder / "plan.json", support::shipped_catalogue());
    ASSERT_TRUE(file) << text_of(file.error().front());
    int best = step_of(file->title);
    std::vector<std::string> remarks;
    for (const Recovery& recovery : RecoveryStore{folder / "recovery"}.left_behind(remarks)) {
        const auto work = plan::read_plan(recovery.plan_text, support::shipped_catalogue());
        ASSERT_TRUE(work);
        best = std::max(best, step_of(work->title));
    }
    EXPECT_TRUE(remarks.empty());
    for (const auto& [step, at_ms] : steps) {
        if (at_ms <= killed_ms - std::chrono::milliseconds{kMostLost}.count()) {
            EXPECT_GE(best, step) << "lost " << killed_ms - at_ms << " ms, seed " << seed;
        }
    }
}

/// Run by kill_once() alone.
TEST(Killed, Child) {
    const char* folder = std::getenv("THROWLINE_KILL_FOLDER");
    if (folder == nullptr) {
        SUCCEED() << "only a child of the test beside it has work here";
        return;
    }
    edit_until_killed(folder, std::atoi(std::getenv("THROWLINE_KILL_PIPE")),
                      static_cast<std::uint32_t>(std::atoi(std::getenv("THROWLINE_KILL_SEED"))));
}

/// Two hundred by THROWLINE_KILLS=200.
TEST(Killed, LosesNeitherTheFileNorMoreThanTwoSeconds) {
    const char* wanted = std::getenv("THROWLINE_KILLS");
    const int kills = wanted == nullptr ? 12 : std::atoi(wanted);
    const auto folder = fresh_folder("killed");
    for (int i = 0; i < kills && !HasFatalFailure(); ++i) {
        kill_once(folder, static_cast<std::uint32_t>(1000 + i));
    }
    std::filesystem::remove_all(folder);
}

class KeeperCase : public testing::Test {
  protected:
    void SetUp() override {
        folder = fresh_folder("keeper");
        std::filesystem::copy_file(support::source_folder() / "demo" / "workshop_interview.json",
                                   folder / "plan.json");
        desk = std::make_unique<Desk>(support::shared_catalogue());
        keeper = std::make_unique<Keeper>(*desk, RecoveryStore{folder / "recovery"}, 0);
    }
    void TearDown() override {
        keeper.reset();
        std::filesystem::remove_all(folder);
    }
    void change(const std::string& title) {
        plan::Plan plan = *desk->plan();
        plan.title = title;
        ASSERT_TRUE(desk->take(edit::Step{"Change", std::move(plan), {}}));
    }
    std::string on_disk() const {
        std::ifstream in{folder / "plan.json", std::ios::binary};
        return {std::istreambuf_iterator<char>{in}, {}};
    }

    std::filesystem::path folder;
    std::unique_ptr<Desk> desk;
    std::unique_ptr<Keeper> keeper;
};

TEST_F(KeeperCase, KeepsTheVersionBefore) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    const std::string before = on_disk();
    change("another");
    ASSERT_EQ(keeper->save().saved, Saved::done);
    EXPECT_TRUE(desk->is_saved());
    EXPECT_EQ(on_disk(), desk->plan_text());
    std::ifstream in{folder / "plan.json~", std::ios::binary};
    EXPECT_EQ((std::string{std::istreambuf_iterator<char>{in}, {}}), before);
}

TEST_F(KeeperCase, LeavesAFileAloneThatSomebodyElseChanged) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    change("mine");
    plan::Plan theirs = *desk->plan();
    theirs.title = "theirs";
    std::ofstream{folder / "plan.json"} << plan::written(theirs);
    EXPECT_EQ(keeper->save().saved, Saved::changed_underneath);
    EXPECT_NE(on_disk().find("theirs"), std::string::npos);
    EXPECT_FALSE(keeper->differences_from_file().isEmpty());
    EXPECT_EQ(keeper->save(true).saved, Saved::done);
    EXPECT_NE(on_disk().find("mine"), std::string::npos);
}

TEST_F(KeeperCase, TellsThatSomebodyElseChangedTheFile) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    bool told = false;
    QObject::connect(keeper.get(), &Keeper::changed_underneath, [&] { told = true; });
    std::ofstream{folder / "plan.json", std::ios::app} << "\n";
    EXPECT_TRUE(support::came_to([&] { return told; }));
}

TEST_F(KeeperCase, OpensWhatCanBeReadOfADamagedFileUnderNoName) {
    const std::string whole = on_disk();
    std::ofstream{folder / "plan.json"} << whole.substr(0, whole.size() / 2);
    const std::string damaged = on_disk();
    const auto told = keeper->open(folder / "plan.json");
    ASSERT_TRUE(told);
    EXPECT_GE(told->size(), 2);
    EXPECT_TRUE(keeper->path().empty());
    EXPECT_FALSE(desk->plan()->scenery.empty());
    EXPECT_EQ(keeper->save().saved, Saved::no_name);
    EXPECT_EQ(on_disk(), damaged);
}

TEST_F(KeeperCase, OpensACopyOfWhatAnotherWindowHasOpen) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    auto other_desk = std::make_unique<Desk>(support::shared_catalogue());
    Keeper other{*other_desk, RecoveryStore{folder / "recovery"}, 1};
    const auto told = other.open(folder / "plan.json");
    ASSERT_TRUE(told);
    EXPECT_EQ(told->size(), 1);
    EXPECT_TRUE(other.path().empty());
    other.let_go();
}

TEST_F(KeeperCase, SaysWhyItCannotSaveAndKeepsTheWork) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    change("changed");
    const SaveOutcome nowhere = keeper->save_as(folder / "no such folder" / "plan.json");
    EXPECT_EQ(nowhere.saved, Saved::failed);
    EXPECT_FALSE(nowhere.sentence.isEmpty());
    // A file where a folder should be: nothing can be written beneath it, by anybody.
    std::ofstream{folder / "file"} << "x";
    EXPECT_EQ(keeper->save_as(folder / "file" / "plan.json").saved, Saved::failed);
    EXPECT_FALSE(desk->is_saved());
    EXPECT_EQ(desk->plan()->title, "changed");
    EXPECT_EQ(keeper->save().saved, Saved::done);
}

TEST_F(KeeperCase, KeepsWorkApartUntilItIsSaved) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    change("not saved yet");
    keeper->flush();
    std::vector<std::string> remarks;
    // This process lives, so that nothing counts as left behind; the entry is there all the same.
    EXPECT_TRUE(RecoveryStore{folder / "recovery"}.left_behind(remarks).empty());
    EXPECT_FALSE(std::filesystem::is_empty(folder / "recovery"));
    ASSERT_EQ(keeper->save().saved, Saved::done);
    keeper->flush();
    EXPECT_TRUE(std::filesystem::is_empty(folder / "recovery"));
}

TEST_F(KeeperCase, TakesUpWhatACrashLeftBehind) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    plan::Plan left = *desk->plan();
    left.title = "left behind";
    keeper->let_go();
    const std::filesystem::path kept = folder / "recovery" / "1-1-0.work";
    const std::string path = (folder / "plan.json").string();
    std::ofstream{kept} << "throwline work in progress 1\n1\n999999999999\n1700000000\n"
                        << path.size() << "\n"
                        << path << "\n"
                        << plan::written(left);
    std::vector<std::string> remarks;
    const auto waiting = RecoveryStore{folder / "recovery"}.left_behind(remarks);
    ASSERT_EQ(waiting.size(), 1U);
    ASSERT_TRUE(keeper->take_up(waiting.front()));
    EXPECT_EQ(desk->plan()->title, "left behind");
    EXPECT_FALSE(desk->is_saved());
    EXPECT_EQ(keeper->path(), folder / "plan.json");
    EXPECT_FALSE(std::filesystem::exists(kept));
}

} // namespace
} // namespace throwline::ui
