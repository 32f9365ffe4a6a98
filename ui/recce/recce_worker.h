#pragma once

#include "base/latest.h"
#include "sheet/drawing.h"
#include "survey/recce_told.h"
#include "ui/desk/desk.h"

#include <QObject>
#include <QSizeF>
#include <memory>
#include <stop_token>
#include <thread>

namespace throwline::ui {

struct RecceQuestion {
    std::string text;
    /// Whose axes and title the drawing has.
    plan::PlanPtr plan;
    CataloguePtr catalogue;
    /// Of the drawing, millimetres.
    QSizeF size_mm;
};

struct RecceSeen {
    RecceQuestion question;
    survey::RecceTold told;
    /// The room as read; nothing while it has no shape.
    std::shared_ptr<const sheet::Drawing> drawing;
};

/// Reads, solves and draws what is typed, on a thread of its own; what was asked last wins.
class RecceWorker : public QObject {
    Q_OBJECT

  public:
    explicit RecceWorker(QObject* parent = nullptr);
    ~RecceWorker() override;

    void ask(RecceQuestion question);
    /// Whether an answer is still to come.
    bool is_working() const { return answered_ != asked_; }

  Q_SIGNALS:
    void seen(std::shared_ptr<const throwline::ui::RecceSeen> answer);

  private:
    struct Numbered {
        int number = 0;
        RecceQuestion question;
    };
    void work(const std::stop_token& stop);

    int asked_ = 0;
    int answered_ = 0;
    Latest<Numbered> waiting_;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
