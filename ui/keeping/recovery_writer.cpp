#include "ui/keeping/recovery_writer.h"

#include "plan/read_plan.h"

namespace throwline::ui {

RecoveryWriter::RecoveryWriter(RecoveryStore store, std::filesystem::path place,
                               std::function<void(const std::string&)> failed)
    : store_{std::move(store)}, place_{std::move(place)}, failed_{std::move(failed)},
      thread_{[this](const std::stop_token& stop) { work(stop); }} {}

RecoveryWriter::~RecoveryWriter() {
    flush();
}

void RecoveryWriter::write(Recovery recovery, plan::PlanPtr plan) {
    put({std::move(recovery), std::move(plan)});
}

void RecoveryWriter::drop() {
    put({});
}

Result<void> RecoveryWriter::keep(Job job) const {
    job.recovery.plan_text = plan::written(*job.plan);
    return store_.keep(place_, job.recovery);
}

void RecoveryWriter::put(Job job) {
    {
        const std::lock_guard lock{guard_};
        waiting_ = std::move(job);
    }
    changed_.notify_all();
}

bool RecoveryWriter::flush() {
    std::unique_lock lock{guard_};
    changed_.wait(lock, [&] { return !waiting_ && !is_busy_; });
    return is_kept_;
}

void RecoveryWriter::work(const std::stop_token& stop) {
    while (true) {
        Job job;
        {
            std::unique_lock lock{guard_};
            if (!changed_.wait(lock, stop, [&] { return waiting_.has_value(); })) {
                return;
            }
            job = std::move(*waiting_);
            waiting_.reset();
            is_busy_ = true;
        }
        bool is_kept = true;
        if (job.plan == nullptr) {
            store_.drop(place_);
        } else if (const auto done = keep(std::move(job)); !done) {
            is_kept = false;
            failed_(done.error().message);
        }
        {
            const std::lock_guard lock{guard_};
            is_kept_ = is_kept;
            is_busy_ = false;
        }
        changed_.notify_all();
    }
}

} // namespace throwline::ui
