#include "ui/underlay/underlay_notice.h"

#include "ui/underlay/underlay_reader.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace throwline::ui {

UnderlayNotice::UnderlayNotice(UnderlayReader& reader, QWidget* parent)
    : QFrame{parent}, reader_{reader}, words_{new QLabel{this}} {
    setAccessibleName(tr("About the scanned plan"));
    setAutoFillBackground(true);
    auto* row = new QHBoxLayout{this};
    row->setContentsMargins(8, 4, 8, 4);
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    row->addWidget(words_, 1);
    const auto add = [&](const QString& words) {
        auto* button = new QPushButton{words, this};
        row->addWidget(button);
        return button;
    };
    connect(add(tr("Look again")), &QPushButton::clicked, &reader_, &UnderlayReader::read_again);
    connect(add(tr("Choose another\u2026")), &QPushButton::clicked, this,
            &UnderlayNotice::another_wanted);
    connect(add(tr("Take it away")), &QPushButton::clicked, this, &UnderlayNotice::removal_wanted);
    connect(&reader_, &UnderlayReader::changed, this, &UnderlayNotice::look);
    look();
}

QString UnderlayNotice::words() const {
    return words_->text();
}

void UnderlayNotice::look() {
    words_->setText(reader_.fault());
    setVisible(!reader_.fault().isEmpty());
}

} // namespace throwline::ui
