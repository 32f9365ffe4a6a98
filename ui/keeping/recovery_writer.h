#pragma once

#include "plan/plan.h"
#include "ui/keeping/recovery_store.h"

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>

namespace throwline::ui {

/// Writes entries of the store on a thread of its own; of several waiting, only the newest.
class RecoveryWriter {
  public:
    /// `failed` is told a sentence, on that thread.
    RecoveryWriter(RecoveryStore store, std::filesystem::path place,
                   std::function<void(const std::string&)> failed);
    ~RecoveryWriter();

    /// The text of the plan is made on that thread, too; what `recovery` has for one is not looked
    /// at.
    void write(Recovery recovery, plan::PlanPtr plan);
    /// Removes the entry, and what waits to be written.
    void drop();
    /// Waits until nothing is left to be written. Whether the last of it could be.
    bool flush();

  private:
    struct Job {
        Recovery recovery;
        /// Null for dropping the entry.
        plan::PlanPtr plan;
    };
    Result<void> keep(Job job) const;
    void work(const std::stop_token& stop);
    void put(Job job);

    RecoveryStore store_;
    std::filesystem::path place_;
    std::function<void(const std::string&)> failed_;
    std::mutex guard_;
    std::condition_variable_any changed_;
    std::optional<Job> waiting_;
    bool is_busy_ = false;
    bool is_kept_ = true;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
