#pragma once

#include "ui/desk/desk.h"

#include <QWidget>

class QMenu;
class QPushButton;

namespace throwline::ui {

class MovePlayer;
class OrderStrip;

/// Time, along the foot of the window: beats, the shots that hang on them, the walks between, and
/// now.
class RunningOrder : public QWidget {
    Q_OBJECT

  public:
    RunningOrder(Desk& desk, QWidget* parent = nullptr);

    OrderStrip& strip() { return *strip_; }
    MovePlayer& player() { return *player_; }
    /// Plays the move into the next beat, or stops.
    void play_or_stop();

  protected:
    void focusInEvent(QFocusEvent* event) override;

  private:
    void add_buttons();
    void tell_playing();
    void fill_paces();
    void fill_cameras(QMenu& menu);

    Desk& desk_;
    MovePlayer* player_ = nullptr;
    OrderStrip* strip_ = nullptr;
    QWidget* buttons_ = nullptr;
    QPushButton* play_ = nullptr;
    QPushButton* pace_ = nullptr;
};

} // namespace throwline::ui
