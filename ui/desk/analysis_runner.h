#pragma once

#include "base/latest.h"
#include "catalogue/catalogue.h"
#include "checks/check.h"

#include <QObject>
#include <memory>
#include <stop_token>
#include <thread>

namespace throwline::ui {

/// Checks plans one after the other on a thread of its own. Asking for another stops the one that
/// is under way; what arrives is always about the plan asked for last.
class AnalysisRunner : public QObject {
    Q_OBJECT

  public:
    explicit AnalysisRunner(QObject* parent = nullptr);
    ~AnalysisRunner() override;

    void ask(plan::PlanPtr plan, std::shared_ptr<const catalogue::Catalogue> catalogue);
    /// What was found out about the plan asked for last; null until then, and after stop().
    const std::shared_ptr<const checks::Analysis>& result() const { return result_; }
    bool is_running() const { return is_running_; }
    void stop();

  Q_SIGNALS:
    void finished();
    void went_on(double share);

  private:
    struct Question {
        int number = 0;
        plan::PlanPtr plan;
        std::shared_ptr<const catalogue::Catalogue> catalogue;
    };
    void work(const std::stop_token& stop);
    void tell(int question, double share);
    void take(int question, std::shared_ptr<const checks::Analysis> result);

    std::shared_ptr<const checks::Analysis> result_;
    bool is_running_ = false;
    /// Number of the question asked last; only the interface thread reads and writes it.
    int asked_ = 0;
    Latest<Question> waiting_;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
