#pragma once

#include "plan/read_plan.h"
#include "ui/desk_case.h"
#include "ui/keeping/keeper.h"
#include "ui/keeping/kept_folder.h"

#include <csignal>
#include <cstring>
#include <functional>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

/// Work on a plan, and what can keep it from being saved.
namespace throwline::ui {

/// While it lives, no file of this process can grow beyond a few bytes.
class FullDisk {
  public:
    explicit FullDisk(rlim_t most_bytes = 512) {
        std::signal(SIGXFSZ, SIG_IGN);
        getrlimit(RLIMIT_FSIZE, &usual_);
        rlimit full = usual_;
        full.rlim_cur = most_bytes;
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

/// While it lives, nobody here may write into these folders. Root may write anywhere, so it becomes
/// somebody else for as long.
class ReadOnlyFolder {
  public:
    template <class... Folders>
    explicit ReadOnlyFolder(const Folders&... folders) {
        (close(folders), ...);
        if (was_root_) {
            constexpr uid_t kNobody = 65534;
            EXPECT_EQ(seteuid(kNobody), 0);
        }
    }
    ~ReadOnlyFolder() {
        if (was_root_) {
            EXPECT_EQ(seteuid(0), 0);
        }
        for (const auto& [folder, usual] : closed_) {
            std::filesystem::permissions(folder, usual);
        }
    }
    ReadOnlyFolder(const ReadOnlyFolder&) = delete;
    ReadOnlyFolder& operator=(const ReadOnlyFolder&) = delete;

  private:
    void close(const std::filesystem::path& folder) {
        closed_.emplace_back(folder, std::filesystem::status(folder).permissions());
        std::filesystem::permissions(folder, std::filesystem::perms{0555});
    }

    std::vector<std::pair<std::filesystem::path, std::filesystem::perms>> closed_;
    bool was_root_ = geteuid() == 0;
};

/// A plan in a file of its own folder, opened and changed once, with a version before it; its work
/// kept apart in another folder.
class Work {
  public:
    explicit Work(
        const std::filesystem::path& folder, const std::function<void()>& before_opening = [] {})
        : place{folder / "plans"}, apart{folder / "recovery"} {
        std::filesystem::create_directories(place);
        std::filesystem::copy_file(support::source_folder() / "demo" / "workshop_interview.json",
                                   place / "plan.json");
        before = support::bytes_of(place / "plan.json");
        support::put_bytes(place / "plan.json~", "the version before");
        before_opening();
        desk = std::make_unique<Desk>(support::shared_catalogue());
        keeper = std::make_unique<Keeper>(*desk, RecoveryStore{apart}, 0);
        QObject::connect(keeper.get(), &Keeper::keeping_failed,
                         [this](const QString& why) { not_kept << why; });
        EXPECT_TRUE(keeper->open(place / "plan.json"));
        title_before = desk->plan()->title;
        change("changed");
        keeper->flush();
    }

    void change(const std::string& title) {
        plan::Plan plan = *desk->plan();
        plan.title = title;
        EXPECT_TRUE(desk->take(edit::Step{"Change", std::move(plan), {}}));
    }
    std::string on_disk() const { return support::bytes_of(place / "plan.json"); }
    std::string version_before() const { return support::bytes_of(place / "plan.json~"); }
    static auto entries(const std::filesystem::path& folder) {
        return std::distance(std::filesystem::directory_iterator{folder}, {});
    }
    /// What is kept apart, whole.
    std::string kept() const {
        return entries(apart) == 1
                   ? support::bytes_of(std::filesystem::directory_iterator { apart } -> path())
                   : std::string{};
    }

    /// Refused in one sentence with the path and the reason in it, and the work is as it was.
    void expect_told_and_kept(const SaveOutcome& outcome, const std::string& reason,
                              const char* name = "plan.json") const {
        EXPECT_EQ(outcome.saved, Saved::failed);
        expect_sentence(outcome.sentence, reason, name);
        EXPECT_FALSE(desk->is_saved());
        EXPECT_EQ(desk->plan()->title, "changed");
        EXPECT_EQ(desk->history().undo_name(), "Change");
        EXPECT_EQ(keeper->path(), place / "plan.json");
    }
    static void expect_sentence(const QString& said, const std::string& reason, const char* name) {
        const std::string sentence = said.toStdString();
        EXPECT_NE(sentence.find(name), std::string::npos) << sentence;
        EXPECT_NE(sentence.find(reason), std::string::npos) << sentence;
        EXPECT_NE(sentence.find("put that right, or save the plan"), std::string::npos) << sentence;
        EXPECT_EQ(sentence.find('\n'), std::string::npos) << sentence;
    }
    /// The file and the version before it are as they were, and there is nothing besides but the
    /// lock, if any: nothing half written.
    void expect_files_untouched(int locks = 1) const {
        EXPECT_EQ(on_disk(), before);
        EXPECT_EQ(version_before(), "the version before");
        EXPECT_EQ(entries(place), 2 + locks);
    }
    void expect_saves_once_all_is_well() {
        // The history is whole: back to the file and forth again.
        desk->undo();
        EXPECT_EQ(desk->plan()->title, title_before);
        desk->redo();
        EXPECT_EQ(keeper->save().saved, Saved::done);
        EXPECT_TRUE(desk->is_saved());
        EXPECT_EQ(on_disk(), desk->plan_text());
    }

    std::filesystem::path place;
    std::filesystem::path apart;
    std::string before;
    std::string title_before;
    /// What was said about work that could not be kept apart.
    QStringList not_kept;
    std::unique_ptr<Desk> desk;
    std::unique_ptr<Keeper> keeper;
};

} // namespace throwline::ui
