/// Disks that are full, folders that cannot be written to or are gone: told in one sentence, and
/// the work stays.

#include "ui/keeping/fault_case.h"

namespace throwline::ui {
namespace {

class KeeperFault : public testing::Test {
  protected:
    void SetUp() override {
        folder = support::fresh_folder("faults");
        work.emplace(folder);
    }
    void TearDown() override {
        work.reset();
        std::filesystem::remove_all(folder);
    }

    std::filesystem::path folder;
    std::optional<Work> work;
};

TEST_F(KeeperFault, FullDisk) {
    SaveOutcome outcome;
    {
        const FullDisk full;
        outcome = work->keeper->save();
    }
    work->expect_told_and_kept(outcome, "File too large");
    work->expect_files_untouched();
    work->expect_saves_once_all_is_well();
    EXPECT_EQ(work->version_before(), work->before);
}

TEST_F(KeeperFault, DiskWithRoomForTheVersionBeforeAlone) {
    // Longer than the file on the disk, which would still go into the version before.
    plan::Plan longer = *work->desk->plan();
    longer.lamps.front().notes = {std::string(1000, 'n')};
    ASSERT_TRUE(work->desk->take(edit::Step{"Change", std::move(longer), {}}));
    SaveOutcome outcome;
    {
        const FullDisk full{work->before.size() + 500};
        outcome = work->keeper->save();
    }
    work->expect_told_and_kept(outcome, "File too large");
    work->expect_files_untouched();
}

TEST_F(KeeperFault, FullDevice) {
    work->expect_told_and_kept(work->keeper->save_as("/dev/full"), "No space left on device",
                               "/dev/full");
}

TEST_F(KeeperFault, FullDiskWhereItIsSavedAs) {
    SaveOutcome outcome;
    {
        const FullDisk full;
        outcome = work->keeper->save_as(folder / "other.json");
    }
    work->expect_told_and_kept(outcome, "File too large", "other.json");
    EXPECT_FALSE(std::filesystem::exists(folder / "other.json"));
    EXPECT_FALSE(std::filesystem::exists(folder / ".other.json.lock"));
    work->expect_files_untouched();
    work->expect_saves_once_all_is_well();
}

TEST_F(KeeperFault, ReadOnlyFolder) {
    SaveOutcome outcome;
    {
        const ReadOnlyFolder closed{work->place};
        outcome = work->keeper->save();
    }
    work->expect_told_and_kept(outcome, "Permission denied");
    work->expect_files_untouched();
    work->expect_saves_once_all_is_well();
}

TEST_F(KeeperFault, OpensFromAReadOnlyFolder) {
    work->keeper->let_go();
    auto other_desk = std::make_unique<Desk>(support::shared_catalogue());
    Keeper other{*other_desk, RecoveryStore{work->apart}, 1};
    const ReadOnlyFolder closed{work->place};
    const auto told = other.open(work->place / "plan.json");
    ASSERT_TRUE(told);
    EXPECT_TRUE(told->isEmpty());
    EXPECT_EQ(other.path(), work->place / "plan.json");
    other.let_go();
}

TEST_F(KeeperFault, VanishedFolder) {
    std::filesystem::remove_all(work->place);
    work->expect_told_and_kept(work->keeper->save(), "No such file or directory");
    std::filesystem::create_directories(work->place);
    work->expect_saves_once_all_is_well();
}

TEST_F(KeeperFault, AFileWhereTheFolderWas) {
    std::filesystem::remove_all(work->place);
    support::put_bytes(work->place, "x");
    work->expect_told_and_kept(work->keeper->save(), "Not a directory");
    std::filesystem::remove(work->place);
    std::filesystem::create_directories(work->place);
    work->expect_saves_once_all_is_well();
}

TEST_F(KeeperFault, NoPlaceForTheVersionBefore) {
    std::filesystem::remove(work->place / "plan.json~");
    std::filesystem::create_directories(work->place / "plan.json~");
    work->expect_told_and_kept(work->keeper->save(), "it is a folder");
    EXPECT_EQ(work->on_disk(), work->before);
    std::filesystem::remove(work->place / "plan.json~");
    work->expect_saves_once_all_is_well();
}

TEST_F(KeeperFault, SavesElsewhereWhenItCannotHere) {
    std::filesystem::remove_all(work->place);
    EXPECT_EQ(work->keeper->save().saved, Saved::failed);
    EXPECT_EQ(work->keeper->save_as(folder / "elsewhere.json").saved, Saved::done);
    EXPECT_EQ(work->keeper->path(), folder / "elsewhere.json");
    EXPECT_TRUE(work->desk->is_saved());
}

// Work kept apart from its file.

TEST_F(KeeperFault, FullDiskUnderTheWorkKeptApart) {
    const std::string earlier = work->kept();
    ASSERT_NE(earlier.find("changed"), std::string::npos);
    {
        const FullDisk full;
        work->change("changed once more");
        work->keeper->flush();
    }
    ASSERT_TRUE(support::came_to([&] { return work->not_kept.size() == 1; }));
    Work::expect_sentence(work->not_kept.front(), "File too large", ".work");
    EXPECT_FALSE(work->desk->is_saved());
    // The entry before is whole, and the only one.
    EXPECT_EQ(work->kept(), earlier);
    // Nobody has to do anything for it to be tried again.
    EXPECT_TRUE(support::came_to(
        [&] { return work->kept().find("changed once more") != std::string::npos; }));
    EXPECT_EQ(work->not_kept.size(), 1);
}

TEST_F(KeeperFault, SavesWhenWorkCannotBeKeptApart) {
    {
        const ReadOnlyFolder closed{work->apart};
        work->change("changed once more");
        work->keeper->flush();
    }
    ASSERT_TRUE(support::came_to([&] { return work->not_kept.size() == 1; }));
    Work::expect_sentence(work->not_kept.front(), "Permission denied", ".work");
    EXPECT_EQ(work->keeper->save().saved, Saved::done);
    work->keeper->flush();
    EXPECT_EQ(Work::entries(work->apart), 0);
}

TEST_F(KeeperFault, SaysOnceAStepThatWorkIsNotKeptApart) {
    const FullDisk full;
    for (int step = 1; step <= 3; ++step) {
        work->change("step " + std::to_string(step));
        work->keeper->flush();
        EXPECT_TRUE(support::came_to([&] { return work->not_kept.size() == step; }));
    }
}

TEST_F(KeeperFault, NoFolderToKeepWorkApartIn) {
    const auto closed_place = folder / "closed";
    std::filesystem::create_directories(closed_place);
    const RecoveryStore store{closed_place / "recovery"};
    const Recovery recovery{{}, work->place / "plan.json", "00000000", 0, "{}"};
    Result<void> done;
    {
        const ReadOnlyFolder closed{closed_place};
        done = store.keep(store.place_for(0), recovery);
    }
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().message,
              "cannot make the folder " + store.folder().string() + ": Permission denied");
    EXPECT_TRUE(store.keep(store.place_for(0), recovery));
}

TEST_F(KeeperFault, AFileWhereWorkIsToBeKeptApart) {
    support::put_bytes(folder / "file", "x");
    const RecoveryStore store{folder / "file"};
    const Result<void> done = store.keep(store.place_for(0), {{}, {}, {}, 0, "{}"});
    ASSERT_FALSE(done);
    EXPECT_NE(done.error().message.find("Not a directory"), std::string::npos)
        << done.error().message;
    EXPECT_EQ(support::bytes_of(folder / "file"), "x");
}

} // namespace
} // namespace throwline::ui
