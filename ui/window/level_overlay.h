#pragma once

#include "ui/desk/level_runner.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QProgressBar;
class QPushButton;

namespace throwline::ui {

/// Has the levels on the floor worked out while they are wanted. Where that takes a while it is a
/// strip that tells how far it is and stops it; else it is not seen.
class LevelOverlay : public QWidget {
    Q_OBJECT

  public:
    explicit LevelOverlay(Desk& desk, QWidget* parent = nullptr);

    bool is_running() const { return runner_.is_running(); }
    /// Gives up the map under way; nothing is worked out until something else is to be shown, or
    /// begin_again().
    void stop();
    void begin_again();

  Q_SIGNALS:
    void arrived(const throwline::ui::FloorLevels& levels);

  private:
    void add_parts();
    /// Whether levels are wanted, of what is shown now.
    void follow();
    void ask();
    void tell();

    Desk& desk_;
    LevelRunner runner_;
    /// What was given up.
    LevelsWanted stopped_;
    /// Runs out when a drag pauses: only then is what it shows worth mapping.
    QTimer pause_;
    /// Runs out when the work takes long enough to be told about.
    QTimer patience_;
    QLabel* words_ = nullptr;
    QProgressBar* progress_ = nullptr;
    QPushButton* stop_ = nullptr;
    QPushButton* again_ = nullptr;
};

} // namespace throwline::ui
