/// Work survives: a process that edits and saves is killed at random instants; the file always
/// opens, and what is recovered misses at most the last two seconds.

#include "edit/moves.h"
#include "plan/read_plan.h"
#include "ui/desk_case.h"
#include "ui/keeping/keeper.h"
#include "ui/keeping/kept_folder.h"

#include <chrono>
#include <csignal>
#include <cstdlib>
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

/// Things moved about, lamps dimmed; the title counts the steps.
plan::Plan changed(plan::Plan plan, int step, std::mt19937& random) {
    plan.title = "step " + std::to_string(step);
    plan::Lamp& lamp = plan.lamps[random() % plan.lamps.size()];
    lamp.level = static_cast<double>(random() % 101) / 100.0;
    plan.beats[random() % plan.beats.size()].name = std::string(random() % 40, 'x') + "y";
    return plan;
}

/// In the child: edits without a pause, each step told on a pipe with its instant once it is taken,
/// saves now and then.
[[noreturn]] void edit_until_killed(const std::filesystem::path& folder, int pipe,
                                    std::uint32_t seed) {
    std::mt19937 random{seed};
    auto desk = std::make_unique<Desk>(support::shared_catalogue());
    Keeper keeper{*desk, RecoveryStore{folder / "recovery"}, 0};
    if (!keeper.open(folder / "plan.json")) {
        _exit(3);
    }
    for (int step = 1;; ++step) {
        if (!desk->take(edit::Step{"Step", changed(*desk->plan(), step, random), {}})) {
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

/// `most_lost_ms` grows to the age of the oldest step that was lost.
void kill_once(const std::filesystem::path& folder, std::uint32_t seed,
               std::int64_t& most_lost_ms) {
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
        if (step > best) {
            most_lost_ms = std::max(most_lost_ms, killed_ms - at_ms);
        }
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

/// As many as THROWLINE_KILLS says; two hundred take under four minutes.
TEST(Killed, LosesNeitherTheFileNorMoreThanTwoSeconds) {
    const char* wanted = std::getenv("THROWLINE_KILLS");
    const int kills = wanted == nullptr ? 25 : std::atoi(wanted);
    const auto folder = support::fresh_folder("killed");
    std::int64_t most_lost_ms = 0;
    for (int i = 0; i < kills && !HasFatalFailure(); ++i) {
        kill_once(folder, static_cast<std::uint32_t>(1000 + i), most_lost_ms);
    }
    RecordProperty("most_lost_ms", std::to_string(most_lost_ms));
    std::filesystem::remove_all(folder);
}

} // namespace
} // namespace throwline::ui
