#include "ui/sheets/sheet_worker.h"

#include "base/file_mark.h"
#include "base/latest.h"
#include "plan/read_plan.h"
#include "sheet/tiles.h"
#include "ui/paint/fonts.h"

#include <QMetaObject>

namespace throwline::ui {

struct SheetWorker::Numbered {
    int number = 0;
    SheetQuestion question;
    std::stop_source stop;
};

struct SheetWorker::Shared {
    Latest<Numbered> waiting;
    /// Stops what was asked last; only the interface thread has it.
    std::stop_source under_way;
};

SheetWorker::SheetWorker(QObject* parent)
    : QObject{parent}, shared_{std::make_unique<Shared>()},
      thread_{[this](const std::stop_token& stop) { work(stop); }} {}

SheetWorker::~SheetWorker() {
    stop();
}

void SheetWorker::ask(SheetQuestion question) {
    stop();
    is_working_ = true;
    Numbered numbered{asked_, std::move(question), {}};
    shared_->under_way = numbered.stop;
    shared_->waiting.put(std::move(numbered));
}

void SheetWorker::stop() {
    ++asked_;
    is_working_ = false;
    shared_->waiting.clear();
    shared_->under_way.request_stop();
}

void SheetWorker::work(const std::stop_token& stop) {
    while (std::optional<Numbered> question = shared_->waiting.take(stop)) {
        draw(std::move(*question));
    }
}

void SheetWorker::draw(Numbered asked) {
    const int number = asked.number;
    const paint::FontMeasure measure;
    SheetQuestion& question = asked.question;
    question.wish.options.file_hash = file_mark(plan::written(*question.analysis->plan));
    auto pages =
        sheet::sheet_set({*question.analysis, *question.catalogue, measure}, question.wish.options,
                         question.wish.kinds, asked.stop.get_token(), [&](double share) {
                             QMetaObject::invokeMethod(
                                 this,
                                 [this, number, share] {
                                     if (number == asked_) {
                                         Q_EMIT went_on(share);
                                     }
                                 },
                                 Qt::QueuedConnection);
                         });
    if (!pages) {
        return;
    }
    auto made = std::make_shared<const DrawnSheets>(DrawnSheets{
        std::move(asked.question), pages->map([&](const std::vector<sheet::Drawing>& drawn) {
            return sheet::pages_of(drawn, measure);
        })});
    QMetaObject::invokeMethod(
        this,
        [this, number, made = std::move(made)] {
            if (number == asked_) {
                is_working_ = false;
                Q_EMIT drawn(made);
            }
        },
        Qt::QueuedConnection);
}

} // namespace throwline::ui
