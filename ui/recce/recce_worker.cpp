#include "ui/recce/recce_worker.h"

#include "sheet/recce_drawing.h"
#include "ui/paint/fonts.h"

#include <QMetaObject>
#include <optional>

namespace throwline::ui {

namespace {

std::shared_ptr<const sheet::Drawing> drawn(const RecceQuestion& question,
                                            const survey::RecceTold& told) {
    if (!told.result || question.size_mm.isEmpty()) {
        return nullptr;
    }
    plan::Plan plan = *question.plan;
    plan.units = told.read->units;
    const paint::FontMeasure measure;
    return std::make_shared<const sheet::Drawing>(
        sheet::recce_picture(sheet::recce_drawing_of(plan, *told.result), *question.catalogue,
                             measure, {question.size_mm.width(), question.size_mm.height()}));
}

} // namespace

RecceWorker::RecceWorker(QObject* parent)
    : QObject{parent}, thread_{[this](const std::stop_token& stop) { work(stop); }} {}

RecceWorker::~RecceWorker() = default;

void RecceWorker::ask(RecceQuestion question) {
    waiting_.put({++asked_, std::move(question)});
}

void RecceWorker::work(const std::stop_token& stop) {
    while (std::optional<Numbered> now = waiting_.take(stop)) {
        auto answer = std::make_shared<RecceSeen>();
        answer->told = survey::told(now->question.text);
        answer->drawing = drawn(now->question, answer->told);
        answer->question = std::move(now->question);
        QMetaObject::invokeMethod(
            this,
            [this, number = now->number, made = std::shared_ptr<const RecceSeen>{answer}] {
                if (number == asked_) {
                    answered_ = number;
                    Q_EMIT seen(made);
                }
            },
            Qt::QueuedConnection);
    }
}

} // namespace throwline::ui
