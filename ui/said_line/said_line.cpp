#include "ui/said_line/said_line.h"

#include "base/words.h"
#include "card/say_field.h"
#include "ui/look/clear_button.h"
#include "ui/said_line/said_answer.h"

#include <QAbstractItemView>
#include <QCompleter>
#include <QKeyEvent>
#include <QLineEdit>
#include <QStringListModel>
#include <QVBoxLayout>
#include <algorithm>
#include <functional>

namespace throwline::ui {

namespace {

constexpr qsizetype kMostRemembered = 200;

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

/// Where a column, counted in characters from 1, is in a text of UTF-16.
int place_of_column(const QString& sentence, int column) {
    const QList<uint> characters = sentence.toUcs4();
    const qsizetype before = std::clamp<qsizetype>(column - 1, 0, characters.size());
    int place = 0;
    for (const uint character : characters.first(before)) {
        place += QChar::requiresSurrogates(character) ? 2 : 1;
    }
    return place;
}

/// A line that asks first who else wants a key. The list of words under the keyboard hands keys
/// straight to it, past any event filter.
class SaidEdit : public QLineEdit {
  public:
    SaidEdit(std::function<bool(int)> wants, QWidget* parent)
        : QLineEdit{parent}, wants_{std::move(wants)} {}

  protected:
    bool event(QEvent* event) override {
        if (event->type() == QEvent::KeyPress && wants_(static_cast<QKeyEvent*>(event)->key())) {
            event->accept();
            return true;
        }
        return QLineEdit::event(event);
    }

  private:
    std::function<bool(int)> wants_;
};

} // namespace

SaidLine::SaidLine(Desk& desk, QWidget* parent) : QWidget{parent}, desk_{desk} {
    setAutoFillBackground(true);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    edit_ = new SaidEdit{[this](int pressed) { return key(pressed); }, this};
    edit_->setPlaceholderText(tr("Type what you want: move camera 2 left 40 cm"));
    edit_->setAccessibleName(tr("Type what you want"));
    edit_->setToolTip(tr("What is typed here is done. Up and Down bring back what was said, Tab "
                         "completes a word, Escape goes back to the floor."));
    add_clear_button(*edit_);
    answer_ = new SaidAnswer{*edit_, this};
    offers_ = new QStringListModel{this};
    completer_ = new QCompleter{offers_, this};
    completer_->setCompletionMode(QCompleter::UnfilteredPopupCompletion);
    completer_->setWidget(edit_);
    completer_->setMaxVisibleItems(12);
    completer_->popup()->setAccessibleName(tr("Words that may stand next"));
    auto* rows = new QVBoxLayout{this};
    rows->setContentsMargins(6, 2, 6, 4);
    rows->setSpacing(2);
    rows->addWidget(answer_);
    rows->addWidget(edit_);
    setFocusProxy(edit_);
    connect(edit_, &QLineEdit::returnPressed, this, &SaidLine::say);
    connect(edit_, &QLineEdit::textEdited, this, &SaidLine::offer);
    connect(completer_, qOverload<const QString&>(&QCompleter::activated), this,
            &SaidLine::complete);
}

void SaidLine::set_actions(std::vector<edit::SayableAction> actions) {
    actions_ = std::move(actions);
}

QString SaidLine::answer() const {
    return answer_->words();
}

int SaidLine::marked() const {
    return answer_->marked();
}

QStringList SaidLine::offers() const {
    return offers_->stringList();
}

bool SaidLine::key(int key) {
    QAbstractItemView& popup = *completer_->popup();
    switch (key) {
    case Qt::Key_Up:
        return !popup.isVisible() && step_through_history(-1);
    case Qt::Key_Down:
        return !popup.isVisible() && step_through_history(1);
    case Qt::Key_Tab:
        if (popup.isVisible() && !offers().isEmpty()) {
            complete(popup.currentIndex().isValid() ? popup.currentIndex().data().toString()
                                                    : offers().front());
            return true;
        }
        return false;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (popup.isVisible() && popup.currentIndex().isValid()) {
            complete(popup.currentIndex().data().toString());
            return true;
        }
        return false;
    case Qt::Key_Escape:
        if (popup.isVisible()) {
            popup.hide();
        } else {
            answer_->clear();
            Q_EMIT left();
        }
        return true;
    default:
        return false;
    }
}

bool SaidLine::step_through_history(int by) {
    const qsizetype to = at_ + by;
    if (to < 0 || to > history_.size()) {
        return true;
    }
    if (at_ == history_.size()) {
        being_typed_ = edit_->text();
    }
    at_ = to;
    edit_->setText(at_ == history_.size() ? being_typed_ : history_[at_]);
    return true;
}

void SaidLine::say() {
    completer_->popup()->hide();
    const QString sentence = edit_->text().trimmed();
    if (sentence.isEmpty()) {
        return;
    }
    const auto heard =
        edit::said(desk_.context(), desk_.chosen(), edit_->text().toStdString(), actions_);
    keep_in_history(sentence);
    if (!heard) {
        refuse(heard.error());
        return;
    }
    fulfil(*heard);
}

void SaidLine::fulfil(const edit::Said& wish) {
    if (const auto* step = std::get_if<edit::Step>(&wish)) {
        take(*step);
    } else if (const auto* field = std::get_if<edit::FieldWish>(&wish)) {
        take(card::fulfilled(desk_.context(), desk_.chosen(), *field));
    } else if (const auto* choice = std::get_if<edit::ChooseWish>(&wish)) {
        desk_.choose(choice->things);
        done(text(counted(static_cast<int>(choice->things.size()), "thing")) + tr(" chosen"));
    } else if (const auto* moment = std::get_if<edit::NowWish>(&wish)) {
        desk_.set_now(moment->now);
        done({});
    } else if (const auto* action = std::get_if<edit::ActionWish>(&wish)) {
        done({});
        Q_EMIT action_wanted(text(action->action));
    }
}

void SaidLine::take(const Result<edit::Step>& step) {
    if (!step) {
        refuse(step.error());
        return;
    }
    const plan::PlanPtr before = desk_.plan();
    QString refusal;
    const auto listening =
        connect(&desk_, &Desk::said, this, [&](const QString& sentence) { refusal = sentence; });
    const bool was_taken = desk_.take(step);
    disconnect(listening);
    if (!was_taken) {
        answer_->show_refusal(refusal, -1);
        return;
    }
    if (const auto moment = edit::moment_made(*before, *desk_.plan())) {
        desk_.set_now(*moment);
    }
    done(text(step->name));
}

void SaidLine::keep_in_history(const QString& sentence) {
    history_.removeAll(sentence);
    history_.append(sentence);
    while (history_.size() > kMostRemembered) {
        history_.removeFirst();
    }
    at_ = history_.size();
    being_typed_.clear();
}

/// The word is chosen, so that typing replaces it.
void SaidLine::refuse(const Error& error) {
    const QString sentence = edit_->text();
    if (error.place.column == 0) {
        answer_->show_refusal(text(capitalised(error.message)), -1);
        return;
    }
    const int from = place_of_column(sentence, error.place.column);
    answer_->show_refusal(text(capitalised(error.message)), from);
    qsizetype to = sentence.indexOf(QLatin1Char{' '}, from);
    to = to < 0 ? sentence.size() : to;
    if (to > from) {
        edit_->setSelection(from, static_cast<int>(to) - from);
    } else {
        edit_->setCursorPosition(from);
    }
}

void SaidLine::done(const QString& words) {
    edit_->setText({});
    offers_->setStringList({});
    if (words.isEmpty()) {
        answer_->clear();
    } else {
        answer_->show_done(words);
    }
}

void SaidLine::offer() {
    answer_->clear();
    at_ = history_.size();
    QStringList words;
    const QString before = edit_->text().left(edit_->cursorPosition());
    if (!before.trimmed().isEmpty() && edit_->cursorPosition() == edit_->text().size()) {
        for (const std::string& word :
             card::words_next(desk_.context(), desk_.chosen(), before.toStdString(), actions_)) {
            words.append(text(word));
        }
    }
    offers_->setStringList(words);
    if (words.isEmpty()) {
        completer_->popup()->hide();
    } else {
        completer_->complete();
        // Enter says the sentence, unless a word was gone to first.
        completer_->popup()->setCurrentIndex({});
    }
}

void SaidLine::complete(const QString& word) {
    edit_->setText(text(edit::completed(edit_->text().toStdString(), word.toStdString()))
                   + QLatin1Char{' '});
    offer();
}

} // namespace throwline::ui
