#pragma once

#include "base/result.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

/// Work in progress kept apart from its file. No Qt here.
namespace throwline::ui {

/// What was left behind by a program that did not come to close its window.
struct Recovery {
    /// Its place in the store.
    std::filesystem::path kept;
    /// The file that it was opened from or saved to; empty for none.
    std::filesystem::path original;
    /// Tells the state of that file that the work began from or was last saved to; see file_mark().
    /// Empty for none.
    std::string original_mark;
    /// Seconds since 1970 on the clock of then.
    std::int64_t kept_at_s = 0;
    /// The plan as it was.
    std::string plan_text;
    /// Tape readings that were typed and not yet put into the plan; empty for none.
    std::string readings{};
};

/// A folder of entries, one a window at work.
class RecoveryStore {
  public:
    explicit RecoveryStore(std::filesystem::path folder) : folder_{std::move(folder)} {}

    /// The store of this user: under XDG_STATE_HOME, else ~/.local/state.
    static RecoveryStore of_user();

    const std::filesystem::path& folder() const { return folder_; }
    /// A place for a window of this process.
    std::filesystem::path place_for(int window) const;
    /// Writes an entry of this process whole, so that there is always the one before or this one.
    /// The folder is made when it is not there, for its owner's eyes only. `recovery` need not say
    /// when: it is now.
    Result<void> keep(const std::filesystem::path& place, const Recovery& recovery) const;
    void drop(const std::filesystem::path& place) const;

    /// Entries whose program is gone, the newest first; those that only say what their file does
    /// are dropped. What is no entry is left alone and told in `remarks`.
    std::vector<Recovery> left_behind(std::vector<std::string>& remarks) const;

  private:
    std::filesystem::path folder_;
};

/// A process of this machine, told from every later one that has its number.
struct ProcessMark {
    std::int64_t pid = 0;
    /// When it began, in ticks since the machine did; 0 when there is no such process.
    std::uint64_t start = 0;
    /// Which start of the machine: the kernel's boot_id (random(4)).
    std::string boot;

    bool operator==(const ProcessMark&) const = default;
};

ProcessMark process_mark(std::int64_t pid);

} // namespace throwline::ui
