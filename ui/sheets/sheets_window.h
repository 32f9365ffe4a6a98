#pragma once

#include "sheet/sheet_kinds.h"
#include "ui/desk/desk.h"

#include <QWidget>
#include <memory>
#include <thread>

class QCheckBox;
class QComboBox;
class QLabel;
class QListWidget;
class QPushButton;

namespace throwline::ui {

class PagePreview;

/// What is to be printed: kinds, paper, scale, and what is on the sheets.
struct PrintWish {
    std::vector<std::string> kinds;
    sheet::SheetOptions options;
};

/// The pages that a wish gives for one analysis, or a sentence why there are none.
struct PrintedSet {
    AnalysisPtr analysis;
    Result<std::vector<sheet::Drawing>> pages;
};

/// Every sheet of the production as it will be printed.
class SheetsWindow : public QWidget {
    Q_OBJECT

  public:
    explicit SheetsWindow(Desk& desk, QWidget* parent = nullptr);
    ~SheetsWindow() override;

    /// The pages shown; empty while they are being drawn.
    const std::vector<sheet::Drawing>& pages() const { return pages_; }
    bool is_drawing() const { return is_drawing_; }
    /// Chooses what is printed, by the names of the kinds.
    void choose_kinds(const QStringList& names);
    /// Writes all pages as one PDF, or the page shown as PNG or SVG, by the name's end. A sentence
    /// when that failed, empty when it was done.
    QString save_to(const QString& path) const;
    /// Prints on whatever the system offers.
    void print();

  private:
    QWidget* wishes();
    QWidget* buttons();
    void draw();
    void take(int question, std::shared_ptr<PrintedSet> set);
    void show_page();
    void ask_and_save();
    PrintWish wish() const;

    Desk& desk_;
    QListWidget* kinds_ = nullptr;
    QComboBox* paper_ = nullptr;
    QComboBox* way_ = nullptr;
    QComboBox* scale_ = nullptr;
    QComboBox* shot_ = nullptr;
    QCheckBox* coverage_ = nullptr;
    QCheckBox* pools_ = nullptr;
    QCheckBox* findings_ = nullptr;
    QListWidget* list_ = nullptr;
    PagePreview* preview_ = nullptr;
    QLabel* told_ = nullptr;
    QPushButton* print_ = nullptr;
    QPushButton* save_ = nullptr;
    std::vector<sheet::Drawing> pages_;
    bool is_drawing_ = false;
    int asked_ = 0;
    std::unique_ptr<sheet::TextMeasure> measure_;
    std::jthread worker_;
};

} // namespace throwline::ui
