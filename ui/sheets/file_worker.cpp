#include "ui/sheets/file_worker.h"

#include <QMetaObject>

namespace throwline::ui {

void FileWorker::ask(std::function<QString()> work) {
    if (is_busy_) {
        return;
    }
    is_busy_ = true;
    running_ = std::async(std::launch::async, [this, work = std::move(work)] {
        QMetaObject::invokeMethod(
            this,
            [this, sentence = work()] {
                is_busy_ = false;
                Q_EMIT told(sentence);
            },
            Qt::QueuedConnection);
    });
}

} // namespace throwline::ui
