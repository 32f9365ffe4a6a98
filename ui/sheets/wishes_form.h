#pragma once

#include "ui/desk/desk.h"
#include "ui/sheets/sheet_wishes.h"

#include <QWidget>
#include <array>

class QCheckBox;
class QComboBox;
class QListWidget;
class QListWidgetItem;

namespace throwline::ui {

/// Which sheets, on what paper, and what is on them.
class WishesForm : public QWidget {
    Q_OBJECT

  public:
    explicit WishesForm(Desk& desk, QWidget* parent = nullptr);

    SheetWishes wishes() const;
    /// What the plan or the tables do not have becomes the usual. Says nothing of the change.
    void show_wishes(const SheetWishes& wishes);
    /// The shot that is asked for; empty for all. Of this plan only, so not a wish that is kept.
    plan::Id<plan::Shot> shot() const;
    /// Scales and shots are those of the plan as it is now.
    void look_at_plan();

  Q_SIGNALS:
    void changed();

  private:
    void add_kinds();
    void add_boxes();
    void add_switches();
    void tick(QListWidgetItem* entry);
    void look_at_all();

    Desk& desk_;
    QListWidget* kinds_ = nullptr;
    QComboBox* paper_ = nullptr;
    QComboBox* way_ = nullptr;
    QComboBox* scale_ = nullptr;
    QComboBox* shot_ = nullptr;
    QCheckBox* tiles_ = nullptr;
    std::array<QCheckBox*, 5> switches_{};
};

} // namespace throwline::ui
