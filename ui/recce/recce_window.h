#pragma once

#include "ui/desk/desk.h"
#include "ui/recce/recce_worker.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QPlainTextEdit;
class QPushButton;
class QTableView;
class QTabWidget;
class QTextBrowser;

namespace throwline::ui {

class RecceModel;
class ReccePicture;

/// Readings typed in, in a table or as a page of lines, while the room draws itself beside them.
class RecceWindow : public QWidget {
    Q_OBJECT

  public:
    RecceWindow(Desk& desk, QWidget* parent = nullptr);
    ~RecceWindow() override;

    /// The lines as typed so far.
    std::string text() const;
    void set_text(const QString& text);
    /// What was typed and is not in the plan; empty when all of it is.
    std::string readings() const;
    /// Whether what is shown belongs to what is typed.
    bool is_settled() const;
    /// Puts the room into the plan; its remarks are shown. Returns whether it was taken.
    bool use_as_room();

    QTableView& table() { return *table_; }
    QPlainTextEdit& page() { return *page_; }
    RecceModel& model() { return *model_; }
    const RecceSeen* seen() const { return seen_.get(); }

  Q_SIGNALS:
    /// readings() may be another.
    void readings_changed();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    void add_table();
    void add_page();
    void add_right(QWidget* right);
    QWidget* foot();
    void load_survey();
    void text_changed();
    void ask();
    void take(std::shared_ptr<const RecceSeen> answer);
    void tell();
    void tell_page_errors();
    void show_line(int line);
    QString html_of_told() const;
    void paste_into_table();

    Desk& desk_;
    RecceWorker worker_;
    RecceModel* model_ = nullptr;
    QTabWidget* left_ = nullptr;
    QTableView* table_ = nullptr;
    QPlainTextEdit* page_ = nullptr;
    ReccePicture* picture_ = nullptr;
    QTextBrowser* told_ = nullptr;
    QLabel* remarks_ = nullptr;
    QPushButton* use_ = nullptr;
    QTimer pause_;
    std::shared_ptr<const RecceSeen> seen_;
    /// What was loaded from the plan; typing on makes it the user's own.
    std::string loaded_;
    /// What was put into the plan, and what the plan has of it since.
    std::string used_;
    std::optional<plan::Survey> used_survey_;
};

} // namespace throwline::ui
