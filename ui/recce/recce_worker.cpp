#include "ui/recce/recce_worker.h"

#include "sheet/recce_drawing.h"
#include "ui/paint/fonts.h"

#include <QMetaObject>
#include <condition_variable>
#include <mutex>
#include <optional>

namespace throwline::ui {

namespace {

struct Numbered {
    int number = 0;
    RecceQuestion question;
};

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

struct RecceWorker::Shared {
    std::mutex guard;
    std::condition_variable_any changed;
    std::optional<Numbered> waiting;
};

RecceWorker::RecceWorker(QObject* parent)
    : QObject{parent}, shared_{std::make_unique<Shared>()},
      thread_{[this](const std::stop_token& stop) { work(stop); }} {}

RecceWorker::~RecceWorker() = default;

void RecceWorker::ask(RecceQuestion question) {
    {
        const std::lock_guard lock{shared_->guard};
        shared_->waiting = Numbered{++asked_, std::move(question)};
    }
    shared_->changed.notify_one();
}

void RecceWorker::work(const std::stop_token& stop) {
    while (true) {
        Numbered now;
        {
            std::unique_lock lock{shared_->guard};
            if (!shared_->changed.wait(lock, stop, [&] { return shared_->waiting.has_value(); })) {
                return;
            }
            now = std::move(*shared_->waiting);
            shared_->waiting.reset();
        }
        auto answer = std::make_shared<RecceSeen>();
        answer->told = survey::told(now.question.text);
        answer->drawing = drawn(now.question, answer->told);
        answer->question = std::move(now.question);
        QMetaObject::invokeMethod(
            this,
            [this, number = now.number, made = std::shared_ptr<const RecceSeen>{answer}] {
                if (number == asked_) {
                    answered_ = number;
                    Q_EMIT seen(made);
                }
            },
            Qt::QueuedConnection);
    }
}

} // namespace throwline::ui
