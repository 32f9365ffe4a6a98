#pragma once

#include "ui/desk/desk.h"
#include "ui/paint/paint.h"
#include "ui/sheets/file_worker.h"
#include "ui/sheets/sheet_worker.h"

#include <QTimer>
#include <QWidget>
#include <memory>
#include <span>

class QLabel;
class QListWidget;
class QMenu;
class QProgressBar;
class QPrinter;
class QPushButton;

namespace throwline::ui {

class PagePreview;
class WishesForm;

/// Every sheet of the production as it will be printed, and the lists as files.
class SheetsWindow : public QWidget {
    Q_OBJECT

  public:
    explicit SheetsWindow(Desk& desk, QWidget* parent = nullptr);
    ~SheetsWindow() override;

    /// The picture beneath the plan; null for none.
    void set_underlay(std::shared_ptr<const sheet::Pixels> underlay);

    /// The pages of what is wanted; empty while they are being drawn.
    std::span<const sheet::Drawing> pages() const;
    /// Whether pages are still to come.
    bool is_drawing() const;
    /// What stands beneath the page.
    QString words() const;
    WishesForm& form() { return *form_; }
    FileWorker& files() { return files_; }
    /// Writes all pages as one PDF, or the page shown as PNG or SVG, by the name's end.
    void save_to(const QString& path);
    /// Writes every list as CSV into a folder, or one into a file.
    void save_lists(const QString& folder);
    void save_list(const QString& name, const QString& path);
    /// Asks on what to print, of all that the system offers, and prints all pages.
    void print();

  private:
    QWidget* wishes();
    QWidget* foot();
    void add_buttons(QWidget* side);
    void fill_list_menu(QMenu& menu);
    void look_at_plan();
    void wish_changed();
    void draw();
    void stop();
    void take(std::shared_ptr<const DrawnSheets> sheets);
    void tell_state();
    void show_page();
    void write(FileWorker::Work work);
    void print_on(std::shared_ptr<QPrinter> printer, std::shared_ptr<const DrawnSheets> sheets);
    void ask_and_save();
    void ask_and_save_list(const QString& name);
    bool may_replace_in(const QString& folder);
    PrintWish wish() const;

    Desk& desk_;
    paint::PaintSession session_;
    WishesForm* form_ = nullptr;
    QListWidget* list_ = nullptr;
    PagePreview* preview_ = nullptr;
    QLabel* told_ = nullptr;
    QProgressBar* progress_ = nullptr;
    QPushButton* stop_ = nullptr;
    QPushButton* again_ = nullptr;
    QPushButton* print_ = nullptr;
    QPushButton* save_ = nullptr;
    QPushButton* lists_ = nullptr;
    UnitSystem units_;
    std::shared_ptr<const sheet::Pixels> underlay_;
    /// What is shown; of an earlier wish while the worker is at another.
    std::shared_ptr<const DrawnSheets> shown_;
    /// Runs out when drawing takes so long that somebody may want to stop it.
    QTimer patience_;
    /// The same of writing and printing.
    QTimer writing_patience_;
    FileWorker files_;
    SheetWorker worker_;
};

} // namespace throwline::ui
