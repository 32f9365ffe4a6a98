#include "ui/sheets/file_worker.h"

#include <QMetaObject>

namespace throwline::ui {

void FileWorker::ask(Work work) {
    if (is_busy_) {
        return;
    }
    is_busy_ = true;
    is_stopped_ = false;
    running_ = std::async(std::launch::async, [this, work = std::move(work)] {
        const MayGoOn may_go_on = [this](double share) {
            QMetaObject::invokeMethod(
                this, [this, share] { Q_EMIT went_on(share); }, Qt::QueuedConnection);
            return !is_stopped_;
        };
        QMetaObject::invokeMethod(
            this,
            [this, sentence = work(may_go_on)] {
                is_busy_ = false;
                Q_EMIT told(sentence);
            },
            Qt::QueuedConnection);
    });
}

} // namespace throwline::ui
