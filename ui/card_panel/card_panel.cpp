#include "ui/card_panel/card_panel.h"

#include "ui/card_panel/card_sheet.h"
#include "ui/card_panel/field_editor.h"

#include <QApplication>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

/// How long until the card is laid anew when a button was down.
constexpr int kHeld_ms = 100;

} // namespace

CardPanel::CardPanel(Desk& desk, QWidget* parent)
    : QWidget{parent}, desk_{desk}, title_{new QLabel{this}}, scroll_{new QScrollArea{this}} {
    setAccessibleName(tr("Card"));
    QFont font = title_->font();
    font.setBold(true);
    font.setPointSizeF(font.pointSizeF() * 1.15);
    title_->setFont(font);
    title_->setContentsMargins(14, 8, 12, 0);
    title_->setWordWrap(true);
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setFocusPolicy(Qt::NoFocus);
    auto* rows = new QVBoxLayout{this};
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    rows->addWidget(title_);
    rows->addWidget(scroll_, 1);
    // Tab goes to the fields themselves; else it would never get back past the first.
    setFocusPolicy(Qt::ClickFocus);
    soon_.setSingleShot(true);
    connect(&soon_, &QTimer::timeout, this, &CardPanel::look);
    const auto later = [this] {
        if (!soon_.isActive()) {
            soon_.start(0);
        }
    };
    connect(&desk_, &Desk::shown_changed, this, later);
    connect(&desk_, &Desk::chosen_changed, this, later);
    connect(&desk_, &Desk::now_changed, this, later);
    connect(&desk_, &Desk::analysis_changed, this, later);
    look();
}

void CardPanel::look() {
    const AnalysisPtr known = desk_.analysis();
    card_ = card::card_for({desk_.shown_context(), desk_.chosen(), known.get()});
    title_->setText(QString::fromStdString(card_.title));
    if (sheet_ != nullptr && sheet_->takes(card_)) {
        sheet_->show_values(card_);
        return;
    }
    // An editor that text is dragged out of must not go while it is.
    const auto* focused = dynamic_cast<FieldEditor*>(focusWidget());
    const bool has_keyboard = focused != nullptr && focused->widget().hasFocus();
    if (has_keyboard && QApplication::mouseButtons() != Qt::NoButton) {
        soon_.start(kHeld_ms);
        return;
    }
    // While a check goes on the figures are missing for a moment; the keyboard, and what is being
    // typed, stay where they were.
    const QString key = has_keyboard ? focused->key() : QString{};
    const bool is_of_same = sheet_ != nullptr && desk_.chosen() == laid_for_;
    const auto typed =
        is_of_same ? sheet_->unfinished() : std::map<QString, FieldEditor::Unfinished>{};
    const int at = scroll_->verticalScrollBar()->value();
    lay_sheet();
    if (QWidget* same = key.isEmpty() ? nullptr : editor(key)) {
        same->setFocus(Qt::OtherFocusReason);
    }
    for (const auto& [of, unfinished] : typed) {
        if (FieldEditor* edit = sheet_->editor(of)) {
            edit->go_on(unfinished);
        }
    }
    scroll_->verticalScrollBar()->setValue(at);
}

void CardPanel::lay_sheet() {
    // Where it stays: put into another parent it would be styled once more.
    auto* sheet = new CardSheet{scroll_->viewport()};
    sheet->lay(card_);
    connect(sheet, &CardSheet::typed, this, &CardPanel::take);
    sheet_ = sheet;
    laid_for_ = desk_.chosen();
    scroll_->setWidget(sheet);
    put_stops_in_order();
}

/// What is made later would come last in the window.
void CardPanel::put_stops_in_order() {
    QWidget* before = this;
    for (QWidget* stop : sheet_->findChildren<QWidget*>()) {
        if ((stop->focusPolicy() & Qt::TabFocus) != 0) {
            setTabOrder(before, stop);
            before = stop;
        }
    }
}

QWidget* CardPanel::editor(const QString& key) const {
    FieldEditor* found = sheet_ == nullptr ? nullptr : sheet_->editor(key);
    return found == nullptr ? nullptr : &found->widget();
}

QString CardPanel::told() const {
    return sheet_ == nullptr ? QString{} : sheet_->told();
}

void CardPanel::take(const QString& key, const QString& text) {
    const card::Field* field = card::field(card_, key.toStdString());
    if (field == nullptr) {
        return;
    }
    const Result<edit::Step> step = field->set(desk_.context(), text.trimmed().toStdString());
    if (!step) {
        sheet_->refuse(key, QString::fromStdString(step.error().message));
        return;
    }
    QString why;
    const auto heard = connect(&desk_, &Desk::said, this, [&](const QString& said) { why = said; });
    const bool taken = desk_.take(step);
    disconnect(heard);
    if (!taken) {
        sheet_->refuse(key, why);
    }
}

void CardPanel::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    focusNextChild();
}

} // namespace throwline::ui
