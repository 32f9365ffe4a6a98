#pragma once

#include <QString>
#include <QWidget>
#include <vector>

class QLineEdit;
class QListWidget;
class QTextBrowser;

namespace throwline::ui {

/// A page of the help: found by its name, read as Markdown.
struct HelpPage {
    QString name;
    QString title;
    QString markdown;
};

/// The pages that come inside the program, in the order in which they are read.
std::vector<HelpPage> carried_help();

/// Help that needs no line to anywhere: pages at the left, the text at the right, a search over
/// all.
class HelpWindow : public QWidget {
    Q_OBJECT

  public:
    explicit HelpWindow(std::vector<HelpPage> pages, QWidget* parent = nullptr);

    /// Shows a page by its name; the first when there is none such.
    void open(const QString& name);
    QString page() const;

  private:
    void fill(const QString& sought);
    void show_chosen();

    std::vector<HelpPage> pages_;
    QLineEdit* search_;
    QListWidget* list_;
    QTextBrowser* text_;
};

} // namespace throwline::ui
