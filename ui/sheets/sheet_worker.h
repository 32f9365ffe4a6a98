#pragma once

#include "sheet/sheet_kinds.h"
#include "ui/desk/desk.h"

#include <QObject>
#include <memory>
#include <stop_token>
#include <thread>

namespace throwline::ui {

/// What is to be printed.
struct PrintWish {
    /// Kinds of sheet by name, in order.
    std::vector<std::string> kinds;
    /// The mark of the plan's file is put in by the worker.
    sheet::SheetOptions options;
};

struct SheetQuestion {
    AnalysisPtr analysis;
    CataloguePtr catalogue;
    PrintWish wish;
};

/// The pages that a question gives, or a sentence why there are none.
struct DrawnSheets {
    SheetQuestion question;
    Result<std::vector<sheet::Drawing>> pages;
};

/// Draws sheets on a thread of its own. Asking again stops what is under way; what arrives always
/// answers the question asked last.
class SheetWorker : public QObject {
    Q_OBJECT

  public:
    explicit SheetWorker(QObject* parent = nullptr);
    ~SheetWorker() override;

    void ask(SheetQuestion question);
    /// Gives up what was asked; nothing arrives until the next question.
    void stop();
    /// Whether an answer is still to come.
    bool is_working() const { return is_working_; }

  Q_SIGNALS:
    void drawn(std::shared_ptr<const throwline::ui::DrawnSheets> sheets);
    /// Share of the pages that are drawn, 0..1.
    void went_on(double share);

  private:
    struct Shared;
    struct Numbered;
    void work(const std::stop_token& stop);
    void draw(Numbered question);

    std::unique_ptr<Shared> shared_;
    /// Number of the question asked last.
    int asked_ = 0;
    bool is_working_ = false;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
