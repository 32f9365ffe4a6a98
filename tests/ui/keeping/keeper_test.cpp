/// A plan in its file and apart from it.

#include "ui/keeping/keeper.h"

#include "base/file_mark.h"
#include "plan/read_plan.h"
#include "ui/desk_case.h"
#include "ui/keeping/kept_folder.h"

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <unistd.h>

namespace throwline::ui {
namespace {

class KeeperCase : public testing::Test {
  protected:
    void SetUp() override {
        folder = support::fresh_folder("keeper");
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
    std::string on_disk() const { return support::bytes_of(folder / "plan.json"); }
    /// How the keeper in a program to come finds things.
    std::vector<Recovery> left_behind() {
        remarks.clear();
        return RecoveryStore{folder / "recovery"}.left_behind(remarks);
    }
    /// An entry as a program that was killed leaves it.
    void leave_behind(const std::string& plan_text, const std::string& mark,
                      const std::string& readings = {}) {
        const std::string path = (folder / "plan.json").string();
        std::filesystem::create_directories(folder / "recovery");
        support::put_bytes(folder / "recovery" / "1-1-0.work",
                           "throwline work in progress 3\n" + process_mark(getpid()).boot
                               + "\n1\n999999999999\n1700000000\n" + mark + "\n"
                               + std::to_string(path.size()) + "\n" + path + "\n"
                               + std::to_string(readings.size()) + "\n" + readings + "\n"
                               + plan_text);
    }
    std::string retitled(const std::string& title) const {
        plan::Plan plan = support::demo_plan("workshop_interview.json");
        plan.title = title;
        return plan::written(plan);
    }

    std::vector<std::string> remarks;
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
    EXPECT_EQ(support::bytes_of(folder / "plan.json~"), before);
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

TEST_F(KeeperCase, KeepsWorkApartUntilItIsSaved) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    change("not saved yet");
    keeper->flush();
    // This process lives, so that nothing counts as left behind; the entry is there all the same.
    EXPECT_TRUE(left_behind().empty());
    EXPECT_FALSE(std::filesystem::is_empty(folder / "recovery"));
    ASSERT_EQ(keeper->save().saved, Saved::done);
    keeper->flush();
    EXPECT_TRUE(std::filesystem::is_empty(folder / "recovery"));
}

TEST_F(KeeperCase, KnowsAFileByWhateverNameItWasOpened) {
    std::filesystem::create_symlink(folder / "plan.json", folder / "other.json");
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    auto other_desk = std::make_unique<Desk>(support::shared_catalogue());
    Keeper other{*other_desk, RecoveryStore{folder / "recovery"}, 1};
    ASSERT_TRUE(other.open(folder / "other.json"));
    EXPECT_TRUE(other.path().empty());
    other.let_go();
}

TEST_F(KeeperCase, TakesOverALockWhoseProgramIsGone) {
    // As QLockFile writes it: process, program, machine.
    std::string host(256, '\0');
    ASSERT_EQ(gethostname(host.data(), host.size()), 0);
    support::put_bytes(folder / ".plan.json.lock",
                       "999999999\nthrowline\n" + std::string{host.c_str()} + "\n");
    const auto told = keeper->open(folder / "plan.json");
    ASSERT_TRUE(told);
    EXPECT_TRUE(told->isEmpty());
    EXPECT_EQ(keeper->path(), folder / "plan.json");
}

TEST_F(KeeperCase, SeesAFileThatWasTakenAwayAndPutBack) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    int told = 0;
    QObject::connect(keeper.get(), &Keeper::changed_underneath, [&] { ++told; });
    std::filesystem::remove(folder / "plan.json");
    QTest::qWait(50);
    EXPECT_EQ(told, 0);
    support::put_bytes(folder / "plan.json", retitled("theirs"));
    EXPECT_TRUE(support::came_to([&] { return told > 0; }));
    const int before = told;
    support::put_bytes(folder / "plan.json", retitled("theirs again"));
    EXPECT_TRUE(support::came_to([&] { return told > before; }));
    ASSERT_TRUE(keeper->load_theirs());
    EXPECT_EQ(desk->plan()->title, "theirs again");
    EXPECT_TRUE(desk->is_saved());
    EXPECT_EQ(keeper->path(), folder / "plan.json");
}

TEST_F(KeeperCase, DoesNotTakeItsOwnSavesForSomebodyElses) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    int told = 0;
    QObject::connect(keeper.get(), &Keeper::changed_underneath, [&] { ++told; });
    for (const char* title : {"one", "two", "three"}) {
        change(title);
        ASSERT_EQ(keeper->save().saved, Saved::done);
        QTest::qWait(30);
    }
    EXPECT_EQ(told, 0);
    EXPECT_EQ(desk->plan()->title, "three");
}

TEST_F(KeeperCase, TakesUpWhatACrashLeftBehind) {
    leave_behind(retitled("left behind"), file_mark(on_disk()));
    const auto waiting = left_behind();
    ASSERT_EQ(waiting.size(), 1U);
    EXPECT_EQ(waiting.front().kept_at_s, 1700000000);
    const auto told = keeper->take_up(waiting.front());
    ASSERT_TRUE(told);
    EXPECT_TRUE(told->isEmpty());
    EXPECT_EQ(desk->plan()->title, "left behind");
    EXPECT_FALSE(desk->is_saved());
    EXPECT_EQ(keeper->path(), folder / "plan.json");
    EXPECT_FALSE(std::filesystem::exists(waiting.front().kept));
    // It is kept by this window now.
    EXPECT_FALSE(std::filesystem::is_empty(folder / "recovery"));
    EXPECT_EQ(keeper->save().saved, Saved::done);
    EXPECT_NE(on_disk().find("left behind"), std::string::npos);
}

TEST_F(KeeperCase, AsksBeforeRecoveredWorkReplacesAFileChangedSince) {
    leave_behind(retitled("left behind"), file_mark("what the file held then"));
    const auto waiting = left_behind();
    ASSERT_EQ(waiting.size(), 1U);
    const auto told = keeper->take_up(waiting.front());
    ASSERT_TRUE(told);
    EXPECT_EQ(told->size(), 1);
    const std::string theirs = on_disk();
    EXPECT_EQ(keeper->save().saved, Saved::changed_underneath);
    EXPECT_EQ(on_disk(), theirs);
    EXPECT_EQ(keeper->save(true).saved, Saved::done);
    EXPECT_EQ(support::bytes_of(folder / "plan.json~"), theirs);
}

TEST_F(KeeperCase, TakesUpWorkWhoseFileIsGone) {
    leave_behind(retitled("left behind"), "00000000");
    std::filesystem::remove(folder / "plan.json");
    const auto waiting = left_behind();
    ASSERT_EQ(waiting.size(), 1U);
    ASSERT_TRUE(keeper->take_up(waiting.front()));
    EXPECT_EQ(desk->plan()->title, "left behind");
    EXPECT_EQ(keeper->save().saved, Saved::no_name);
}

TEST_F(KeeperCase, OffersNothingThatIsInItsFileAlready) {
    leave_behind(on_disk(), file_mark(on_disk()));
    EXPECT_TRUE(left_behind().empty());
    EXPECT_TRUE(remarks.empty());
    EXPECT_TRUE(std::filesystem::is_empty(folder / "recovery"));
}

TEST_F(KeeperCase, LeavesBrokenRecoveriesWhereTheyAreAndSaysSo) {
    std::filesystem::create_directories(folder / "recovery");
    const auto broken = folder / "recovery" / "7-7-0.work";
    for (const char* text : {"", "something else", "throwline work in progress 3\nx\ny\n",
                             "throwline work in progress 3\nb\n1\n1\n1\nm\n99\nshort",
                             "throwline work in progress 3\nb\n1\n1\n1\nm\n1\np\n99\nshort"}) {
        support::put_bytes(broken, text);
        EXPECT_TRUE(left_behind().empty()) << text;
        ASSERT_EQ(remarks.size(), 1U) << text;
        EXPECT_NE(remarks.front().find("7-7-0.work"), std::string::npos);
        EXPECT_TRUE(std::filesystem::exists(broken));
    }
}

TEST_F(KeeperCase, KeepsReadingsOfAPlanThatIsSaved) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    keeper->keep_readings("corners A B\nA-B 4");
    keeper->flush();
    ASSERT_FALSE(std::filesystem::is_empty(folder / "recovery"));
    const auto kept = std::filesystem::directory_iterator{folder / "recovery"} -> path();
    EXPECT_NE(support::bytes_of(kept).find("corners A B\nA-B 4\n"), std::string::npos);
    keeper->keep_readings({});
    keeper->flush();
    EXPECT_TRUE(std::filesystem::is_empty(folder / "recovery"));
}

TEST_F(KeeperCase, BringsReadingsBack) {
    const std::string readings = "corners A B\nA-B 4\n\n7\n";
    leave_behind(on_disk(), file_mark(on_disk()), readings);
    const auto waiting = left_behind();
    ASSERT_EQ(waiting.size(), 1U);
    EXPECT_EQ(waiting.front().plan_text, on_disk());
    ASSERT_TRUE(keeper->take_up(waiting.front()));
    EXPECT_EQ(keeper->readings(), readings);
    EXPECT_TRUE(desk->is_saved());
    // Another crash would not lose them.
    EXPECT_FALSE(std::filesystem::is_empty(folder / "recovery"));
}

TEST_F(KeeperCase, TakesUpWorkOfAProgramThatKeptNoReadings) {
    const std::string path = (folder / "plan.json").string();
    std::filesystem::create_directories(folder / "recovery");
    support::put_bytes(folder / "recovery" / "1-1-0.work",
                       "throwline work in progress 2\n" + process_mark(getpid()).boot
                           + "\n1\n999999999999\n1700000000\n00000000\n"
                           + std::to_string(path.size()) + "\n" + path + "\n"
                           + retitled("left behind"));
    const auto waiting = left_behind();
    ASSERT_EQ(waiting.size(), 1U);
    EXPECT_EQ(waiting.front().plan_text, retitled("left behind"));
    EXPECT_EQ(waiting.front().readings, "");
}

TEST_F(KeeperCase, RecoversWhatCanBeReadOfDamagedWork) {
    const std::string whole = retitled("left behind");
    leave_behind(whole.substr(0, whole.size() / 2), file_mark(on_disk()));
    const auto waiting = left_behind();
    ASSERT_EQ(waiting.size(), 1U);
    const auto told = keeper->take_up(waiting.front());
    ASSERT_TRUE(told);
    EXPECT_FALSE(told->isEmpty());
    EXPECT_EQ(desk->plan()->title, "left behind");
    EXPECT_FALSE(desk->plan()->scenery.empty());
    EXPECT_TRUE(std::filesystem::exists(waiting.front().kept)) << "what was left out is only there";
}

TEST_F(KeeperCase, LeftWorkStaysWhereItIsUntilItIsKeptAnew) {
    leave_behind(retitled("left behind"), file_mark(on_disk()));
    const auto waiting = left_behind();
    ASSERT_EQ(waiting.size(), 1U);
    // A folder that cannot be made: somebody put a file in its place.
    support::put_bytes(folder / "no folder", "a file");
    Keeper elsewhere{*desk, RecoveryStore{folder / "no folder"}, 1};
    ASSERT_TRUE(elsewhere.take_up(waiting.front()));
    EXPECT_EQ(desk->plan()->title, "left behind");
    EXPECT_TRUE(std::filesystem::exists(waiting.front().kept));
}

TEST_F(KeeperCase, SavingKeepsReadingsThatAreInNoPlan) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    keeper->keep_readings("corners A B\nA-B 4");
    change("another");
    ASSERT_EQ(keeper->save().saved, Saved::done);
    keeper->flush();
    ASSERT_FALSE(std::filesystem::is_empty(folder / "recovery"));
    const auto kept = std::filesystem::directory_iterator{folder / "recovery"} -> path();
    EXPECT_NE(support::bytes_of(kept).find("corners A B\nA-B 4\n"), std::string::npos);
}

TEST_F(KeeperCase, ReadingsOutliveWhoeverTellsOfNoneWhileTheyAreTakenUp) {
    const std::string readings = "corners A B\nA-B 4\n";
    leave_behind(on_disk(), file_mark(on_disk()), readings);
    const auto waiting = left_behind();
    ASSERT_EQ(waiting.size(), 1U);
    QObject::connect(desk.get(), &Desk::plan_changed, keeper.get(),
                     [&] { keeper->keep_readings({}); });
    ASSERT_TRUE(keeper->take_up(waiting.front()));
    EXPECT_EQ(keeper->readings(), readings);
}

TEST_F(KeeperCase, KnowsAProcessFromALaterOneWithItsNumber) {
    const ProcessMark mine = process_mark(getpid());
    EXPECT_EQ(mine, process_mark(getpid()));
    EXPECT_GT(mine.start, 0U);
    EXPECT_EQ(mine.boot.size(), 36U); // A UUID.
    EXPECT_EQ(process_mark(999'999'999).start, 0U);
    EXPECT_NE(mine, process_mark(getppid()));
}

TEST_F(KeeperCase, LeavesNothingToRecoverWhenTheWindowCloses) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    change("not wanted");
    keeper->flush();
    EXPECT_FALSE(std::filesystem::is_empty(folder / "recovery"));
    keeper->let_go();
    keeper.reset();
    EXPECT_TRUE(std::filesystem::is_empty(folder / "recovery"));
    EXPECT_FALSE(std::filesystem::exists(folder / ".plan.json.lock"));
}

TEST_F(KeeperCase, LeavesWorkToRecoverWhenTheWindowVanishes) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    change("wanted");
    keeper.reset();
    ASSERT_FALSE(std::filesystem::is_empty(folder / "recovery"));
    const auto kept = std::filesystem::directory_iterator{folder / "recovery"} -> path();
    EXPECT_NE(support::bytes_of(kept).find("wanted"), std::string::npos);
    // Nobody else can read it.
    EXPECT_EQ(std::filesystem::status(folder / "recovery").permissions(),
              std::filesystem::perms::owner_all);
}

TEST_F(KeeperCase, ForgetsWorkThatWasUndone) {
    ASSERT_TRUE(keeper->open(folder / "plan.json"));
    change("a try");
    keeper->flush();
    EXPECT_FALSE(std::filesystem::is_empty(folder / "recovery"));
    desk->undo();
    keeper->flush();
    EXPECT_TRUE(std::filesystem::is_empty(folder / "recovery"));
}

} // namespace
} // namespace throwline::ui
