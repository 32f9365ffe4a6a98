#pragma once

#include "edit/say.h"
#include "ui/desk/desk.h"

#include <QStringList>
#include <QWidget>
#include <vector>

class QCompleter;
class QLineEdit;
class QStringListModel;

namespace throwline::ui {

class SaidAnswer;

/// The line at the window's foot: what is typed there is done. What it cannot understand it says
/// just above, with a mark at the word.
class SaidLine : public QWidget {
    Q_OBJECT

  public:
    explicit SaidLine(Desk& desk, QWidget* parent = nullptr);

    /// What of the window can be said.
    void set_actions(std::vector<edit::SayableAction> actions);
    QLineEdit& edit() { return *edit_; }
    /// What is said above the line; empty when nothing is.
    QString answer() const;
    /// Place in the text that the answer is about, from 0; -1 for none.
    int marked() const;
    /// What the list under the keyboard offers.
    QStringList offers() const;

  Q_SIGNALS:
    /// An action of the window was said, by its id.
    void action_wanted(const QString& id);
    /// The line was left with Escape.
    void left();

  private:
    bool key(int key);
    bool step_through_history(int by);
    void say();
    void fulfil(const edit::Said& wish);
    void take(const Result<edit::Step>& step);
    void keep_in_history(const QString& sentence);
    void refuse(const Error& error);
    void done(const QString& words);
    void offer();
    void complete(const QString& word);

    Desk& desk_;
    std::vector<edit::SayableAction> actions_;
    SaidAnswer* answer_ = nullptr;
    QLineEdit* edit_ = nullptr;
    QCompleter* completer_ = nullptr;
    QStringListModel* offers_ = nullptr;
    QStringList history_;
    /// Where in the history the line is; its size when on what is being typed, which is kept.
    qsizetype at_ = 0;
    QString being_typed_;
};

} // namespace throwline::ui
