/// Disks that are full, folders that cannot be written to or are gone: told in one sentence, and
/// the work stays.

#include "plan/read_plan.h"
#include "ui/desk_case.h"
#include "ui/keeping/keeper.h"
#include "ui/keeping/kept_folder.h"

#include <csignal>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

namespace throwline::ui {
namespace {

/// While it lives, no file of this process can grow beyond a few bytes.
class FullDisk {
  public:
    FullDisk() {
        std::signal(SIGXFSZ, SIG_IGN);
        getrlimit(RLIMIT_FSIZE, &usual_);
        rlimit full = usual_;
        full.rlim_cur = 512;
        EXPECT_EQ(setrlimit(RLIMIT_FSIZE, &full), 0);
    }
    ~FullDisk() {
        EXPECT_EQ(setrlimit(RLIMIT_FSIZE, &usual_), 0);
        std::signal(SIGXFSZ, SIG_DFL);
    }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

  private:
    rlimit usual_{};
};

/// While it lives, nobody here may write into a folder. Root may write anywhere, so it becomes
/// somebody else for as long.
class ReadOnlyFolder {
  public:
    explicit ReadOnlyFolder(std::filesystem::path folder) : folder_{std::move(folder)} {
        std::filesystem::permissions(folder_, std::filesystem::perms{0555});
        if (was_root_) {
            constexpr uid_t kNobody = 65534;
            EXPECT_EQ(seteuid(kNobody), 0);
        }
    }
    ~ReadOnlyFolder() {
        if (was_root_) {
            EXPECT_EQ(seteuid(0), 0);
        }
        std::filesystem::permissions(folder_, std::filesystem::perms{0755});
    }
    ReadOnlyFolder(const ReadOnlyFolder&) = delete;
    ReadOnlyFolder& operator=(const ReadOnlyFolder&) = delete;

  private:
    std::filesystem::path folder_;
    bool was_root_ = geteuid() == 0;
};

class KeeperFault : public testing::Test {
  protected:
    void SetUp() override {
        folder = support::fresh_folder("faults");
        place = folder / "plans";
        std::filesystem::create_directories(place);
        std::filesystem::copy_file(support::source_folder() / "demo" / "workshop_interview.json",
                                   place / "plan.json");
        before = support::bytes_of(place / "plan.json");
        desk = std::make_unique<Desk>(support::shared_catalogue());
        keeper = std::make_unique<Keeper>(*desk, RecoveryStore{folder / "recovery"}, 0);
        QObject::connect(keeper.get(), &Keeper::keeping_failed,
                         [this](const QString& why) { kept_wrongly << why; });
        ASSERT_TRUE(keeper->open(place / "plan.json"));
        plan::Plan plan = *desk->plan();
        plan.title = "changed";
        ASSERT_TRUE(desk->take(edit::Step{"Change", std::move(plan), {}}));
        keeper->flush();
    }
    void TearDown() override {
        keeper.reset();
        std::filesystem::remove_all(folder);
    }
    /// One sentence with the path in it, and everything as it was.
    void expect_told_and_kept(const SaveOutcome& outcome, const char* reason,
                              const char* name = "plan.json") {
        EXPECT_EQ(outcome.saved, Saved::failed);
        const std::string sentence = outcome.sentence.toStdString();
        EXPECT_NE(sentence.find(name), std::string::npos) << sentence;
        EXPECT_NE(sentence.find(reason), std::string::npos) << sentence;
        EXPECT_EQ(sentence.find('\n'), std::string::npos) << sentence;
        EXPECT_FALSE(desk->is_saved());
        EXPECT_EQ(desk->plan()->title, "changed");
        EXPECT_EQ(keeper->path(), place / "plan.json");
    }
    void expect_saves_once_all_is_well() {
        EXPECT_EQ(keeper->save().saved, Saved::done);
        EXPECT_TRUE(desk->is_saved());
        EXPECT_EQ(support::bytes_of(place / "plan.json"), desk->plan_text());
    }

    std::filesystem::path folder;
    std::filesystem::path place;
    std::string before;
    QStringList kept_wrongly;
    std::unique_ptr<Desk> desk;
    std::unique_ptr<Keeper> keeper;
};

TEST_F(KeeperFault, FullDisk) {
    SaveOutcome outcome;
    {
        const FullDisk full;
        outcome = keeper->save();
    }
    expect_told_and_kept(outcome, "File too large");
    EXPECT_EQ(support::bytes_of(place / "plan.json"), before);
    // Nothing half-written is left: the file, and the lock.
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator{place}, {}), 2);
    expect_saves_once_all_is_well();
    EXPECT_EQ(support::bytes_of(place / "plan.json~"), before);
}

TEST_F(KeeperFault, FullDevice) {
    expect_told_and_kept(keeper->save_as("/dev/full"), "No space left on device", "/dev/full");
}

TEST_F(KeeperFault, FullDiskUnderTheWorkKeptApart) {
    const auto kept = std::filesystem::directory_iterator{folder / "recovery"} -> path();
    const std::string earlier = support::bytes_of(kept);
    {
        const FullDisk full;
        plan::Plan plan = *desk->plan();
        plan.title = "changed once more";
        ASSERT_TRUE(desk->take(edit::Step{"Change", std::move(plan), {}}));
        keeper->flush();
    }
    EXPECT_TRUE(support::came_to([&] { return kept_wrongly.size() == 1; }));
    // The entry before is whole.
    EXPECT_EQ(support::bytes_of(kept), earlier);
}

TEST_F(KeeperFault, ReadOnlyFolder) {
    SaveOutcome outcome;
    {
        const ReadOnlyFolder closed{place};
        outcome = keeper->save();
    }
    expect_told_and_kept(outcome, "Permission denied");
    EXPECT_EQ(support::bytes_of(place / "plan.json"), before);
    expect_saves_once_all_is_well();
}

TEST_F(KeeperFault, OpensFromAReadOnlyFolder) {
    keeper->let_go();
    auto other_desk = std::make_unique<Desk>(support::shared_catalogue());
    Keeper other{*other_desk, RecoveryStore{folder / "recovery"}, 1};
    const ReadOnlyFolder closed{place};
    const auto told = other.open(place / "plan.json");
    ASSERT_TRUE(told);
    EXPECT_TRUE(told->isEmpty());
    EXPECT_EQ(other.path(), place / "plan.json");
    other.let_go();
}

TEST_F(KeeperFault, VanishedFolder) {
    std::filesystem::remove_all(place);
    expect_told_and_kept(keeper->save(), "No such file or directory");
    std::filesystem::create_directories(place);
    expect_saves_once_all_is_well();
}

TEST_F(KeeperFault, AFileWhereTheFolderWas) {
    std::filesystem::remove_all(place);
    support::put_bytes(place, "x");
    expect_told_and_kept(keeper->save(), "Not a directory");
    std::filesystem::remove(place);
    std::filesystem::create_directories(place);
    expect_saves_once_all_is_well();
}

TEST_F(KeeperFault, NoPlaceForTheVersionBefore) {
    std::filesystem::create_directories(place / "plan.json~");
    expect_told_and_kept(keeper->save(), "it is a folder");
    EXPECT_EQ(support::bytes_of(place / "plan.json"), before);
    std::filesystem::remove(place / "plan.json~");
    expect_saves_once_all_is_well();
}

TEST_F(KeeperFault, SavesElsewhereWhenItCannotHere) {
    std::filesystem::remove_all(place);
    EXPECT_EQ(keeper->save().saved, Saved::failed);
    EXPECT_EQ(keeper->save_as(folder / "elsewhere.json").saved, Saved::done);
    EXPECT_EQ(keeper->path(), folder / "elsewhere.json");
    EXPECT_TRUE(desk->is_saved());
}

} // namespace
} // namespace throwline::ui
