#pragma once

#include "sheet/finding_rows.h"
#include "ui/desk/desk.h"

#include <QTimer>
#include <QWidget>
#include <optional>

class QButtonGroup;
class QLabel;
class QLineEdit;
class QListView;
class QProgressBar;
class QPushButton;
class QScrollArea;

namespace throwline::ui {

class FindingsModel;

/// What is wrong with the plan, or worth knowing, worst first. Choosing a line goes there.
class FindingsPanel : public QWidget {
    Q_OBJECT

  public:
    explicit FindingsPanel(Desk& desk, QWidget* parent = nullptr);
    ~FindingsPanel() override;

    void set_order(sheet::FindingOrder order);
    sheet::FindingOrder order() const { return order_; }
    const FindingsModel& model() const { return *model_; }

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

  private:
    void add_head();
    void add_list();
    void add_buttons();
    void add_reason_editor();
    void add_foot();

    void show_state();
    void show_findings(AnalysisPtr analysis);
    void show_checking();
    void tell_cautions();
    void tell_row();
    void tell_working();
    void point_from_outside();
    void go_to_row(int row);
    void choose_row(int row);

    std::optional<int> current_row() const;
    std::vector<checks::Finding> findings_of(int row) const;
    void begin_accepting();
    void end_accepting();
    void accept();
    void take_back();

    Desk& desk_;
    sheet::FindingOrder order_ = sheet::FindingOrder::by_shot;
    FindingsModel* model_ = nullptr;
    QLabel* head_ = nullptr;
    QButtonGroup* orders_ = nullptr;
    QWidget* checking_ = nullptr;
    QProgressBar* progress_ = nullptr;
    QPushButton* stop_ = nullptr;
    QPushButton* again_ = nullptr;
    QLabel* nothing_ = nullptr;
    QListView* list_ = nullptr;
    QWidget* buttons_ = nullptr;
    QPushButton* accept_ = nullptr;
    QPushButton* show_working_ = nullptr;
    QWidget* reason_editor_ = nullptr;
    QLineEdit* reason_ = nullptr;
    QLabel* working_ = nullptr;
    QLabel* cautions_ = nullptr;
    QScrollArea* caution_area_ = nullptr;
    /// Runs out when checking has taken long enough to be told about.
    QTimer patience_;
    /// The line last chosen, to find it again after a change: its first finding.
    std::optional<checks::Finding> kept_;
    bool is_restoring_ = false;
};

} // namespace throwline::ui
