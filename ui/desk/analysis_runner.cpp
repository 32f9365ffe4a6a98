#include "ui/desk/analysis_runner.h"

#include <QMetaObject>
#include <condition_variable>
#include <mutex>
#include <optional>

namespace throwline::ui {

namespace {

struct Question {
    int number = 0;
    plan::PlanPtr plan;
    std::shared_ptr<const catalogue::Catalogue> catalogue;
    std::stop_source stop;
};

} // namespace

struct AnalysisRunner::Shared {
    std::mutex guard;
    std::condition_variable_any changed;
    std::optional<Question> waiting;
    /// Stops what is being worked on.
    std::stop_source under_way;
    /// Number of the question asked last; only the interface thread reads and writes it.
    int asked = 0;
};

AnalysisRunner::AnalysisRunner(QObject* parent)
    : QObject{parent}, shared_{std::make_unique<Shared>()},
      thread_{[this](const std::stop_token& stop) { work(stop); }} {}

AnalysisRunner::~AnalysisRunner() {
    thread_.request_stop();
    const std::lock_guard lock{shared_->guard};
    shared_->under_way.request_stop();
}

void AnalysisRunner::ask(plan::PlanPtr plan,
                         std::shared_ptr<const catalogue::Catalogue> catalogue) {
    result_.reset();
    is_running_ = true;
    ++shared_->asked;
    {
        const std::lock_guard lock{shared_->guard};
        shared_->under_way.request_stop();
        shared_->waiting = Question{shared_->asked, std::move(plan), std::move(catalogue), {}};
    }
    shared_->changed.notify_one();
}

void AnalysisRunner::stop() {
    ++shared_->asked;
    result_.reset();
    is_running_ = false;
    const std::lock_guard lock{shared_->guard};
    shared_->waiting.reset();
    shared_->under_way.request_stop();
}

void AnalysisRunner::work(const std::stop_token& thread_stop) {
    while (true) {
        Question question;
        {
            std::unique_lock lock{shared_->guard};
            if (!shared_->changed.wait(lock, thread_stop,
                                       [&] { return shared_->waiting.has_value(); })) {
                return;
            }
            question = std::move(*shared_->waiting);
            shared_->waiting.reset();
            shared_->under_way = question.stop;
        }
        const int number = question.number;
        std::optional<checks::Analysis> analysis = checks::analyse(
            question.plan, *question.catalogue, question.stop.get_token(), [&](double share) {
                QMetaObject::invokeMethod(
                    this,
                    [this, number, share] {
                        if (number == shared_->asked) {
                            Q_EMIT went_on(share);
                        }
                    },
                    Qt::QueuedConnection);
            });
        if (!analysis) {
            continue;
        }
        auto result = std::make_shared<const checks::Analysis>(std::move(*analysis));
        QMetaObject::invokeMethod(
            this, [this, number, result] { take(number, result); }, Qt::QueuedConnection);
    }
}

void AnalysisRunner::take(int question, std::shared_ptr<const checks::Analysis> result) {
    if (question != shared_->asked) {
        return;
    }
    result_ = std::move(result);
    is_running_ = false;
    Q_EMIT finished();
}

} // namespace throwline::ui
