#pragma once

#include <cstddef>
#include <functional>
#include <mutex>

namespace throwline {

/// Is told the share of a work that is done, 0..1; from any thread, one call at a time. May be
/// empty.
using WentOn = std::function<void(double share)>;

/// Counts the steps of a work that are done and tells the share. Safe from any thread.
class Progress {
  public:
    /// `steps` > 0; `went_on` must outlive this.
    Progress(std::size_t steps, const WentOn& went_on) : steps_{steps}, went_on_{went_on} {}

    void step_done() {
        if (went_on_) {
            const std::lock_guard lock{guard_};
            went_on_(static_cast<double>(++done_) / static_cast<double>(steps_));
        }
    }

  private:
    std::size_t steps_;
    std::size_t done_ = 0;
    const WentOn& went_on_;
    std::mutex guard_;
};

} // namespace throwline
