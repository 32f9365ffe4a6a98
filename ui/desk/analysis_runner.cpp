#include "ui/desk/analysis_runner.h"

#include <QMetaObject>
#include <optional>

namespace throwline::ui {

AnalysisRunner::AnalysisRunner(QObject* parent)
    : QObject{parent}, thread_{[this](const std::stop_token& stop) { work(stop); }} {}

AnalysisRunner::~AnalysisRunner() {
    thread_.request_stop();
    waiting_.clear();
}

void AnalysisRunner::ask(plan::PlanPtr plan,
                         std::shared_ptr<const catalogue::Catalogue> catalogue) {
    result_.reset();
    is_running_ = true;
    waiting_.put({++asked_, std::move(plan), std::move(catalogue)});
}

void AnalysisRunner::stop() {
    ++asked_;
    result_.reset();
    is_running_ = false;
    waiting_.clear();
}

void AnalysisRunner::work(const std::stop_token& stop) {
    while (const std::optional<Question> question = waiting_.take(stop)) {
        const int number = question->number;
        std::optional<checks::Analysis> analysis =
            checks::analyse(question->plan, *question->catalogue, waiting_.superseded(),
                            [&](double share) { tell(number, share); });
        if (!analysis) {
            continue;
        }
        auto result = std::make_shared<const checks::Analysis>(std::move(*analysis));
        QMetaObject::invokeMethod(
            this, [this, number, result] { take(number, result); }, Qt::QueuedConnection);
    }
}

void AnalysisRunner::tell(int question, double share) {
    QMetaObject::invokeMethod(
        this,
        [this, question, share] {
            if (question == asked_) {
                Q_EMIT went_on(share);
            }
        },
        Qt::QueuedConnection);
}

void AnalysisRunner::take(int question, std::shared_ptr<const checks::Analysis> result) {
    if (question != asked_) {
        return;
    }
    result_ = std::move(result);
    is_running_ = false;
    Q_EMIT finished();
}

} // namespace throwline::ui
