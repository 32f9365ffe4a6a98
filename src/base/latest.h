#pragma once

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <optional>
#include <stop_token>
#include <utility>

namespace throwline {

/// Where a question waits for the thread that answers it. The newest one wins: what nobody has
/// taken yet is dropped when another is put, and what was taken before is superseded. Safe from any
/// thread.
template <class Question>
class Latest {
  public:
    void put(Question question) {
        {
            const std::lock_guard lock{guard_};
            waiting_ = std::move(question);
            taken_.request_stop();
        }
        changed_.notify_one();
    }
    /// Nothing waits any more, and what was taken is superseded.
    void clear() {
        const std::lock_guard lock{guard_};
        waiting_.reset();
        taken_.request_stop();
    }

    /// Waits for a question and takes it; nothing once stopped.
    std::optional<Question> take(const std::stop_token& stop) {
        std::unique_lock lock{guard_};
        changed_.wait(lock, stop, [&] { return waiting_.has_value(); });
        if (stop.stop_requested()) {
            return std::nullopt;
        }
        taken_ = std::stop_source{};
        return std::exchange(waiting_, std::nullopt);
    }
    /// Asks to stop once what was taken last is of no use any more.
    std::stop_token superseded() const {
        const std::lock_guard lock{guard_};
        return taken_.get_token();
    }
    /// Whether one waits.
    bool has_one() const {
        const std::lock_guard lock{guard_};
        return waiting_.has_value();
    }
    /// Waits for one for a while without taking it; whether it came.
    bool came_within(std::chrono::milliseconds while_, const std::stop_token& stop) {
        std::unique_lock lock{guard_};
        return changed_.wait_for(lock, stop, while_, [&] { return waiting_.has_value(); });
    }

  private:
    mutable std::mutex guard_;
    std::condition_variable_any changed_;
    std::optional<Question> waiting_;
    std::stop_source taken_;
};

} // namespace throwline
