#pragma once

#include "ui/desk/desk.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace throwline::ui {

class FrameView;

/// What the chosen camera takes in, with a line about it beneath.
class Viewfinder : public QWidget {
    Q_OBJECT

  public:
    Viewfinder(Desk& desk, QWidget* parent = nullptr);

    FrameView& frame_view() { return *view_; }
    const FrameView& frame_view() const { return *view_; }
    /// What stands in the place of the picture when there is none, and what to do about it; empty
    /// with a picture.
    QString why_no_picture() const;

  private:
    void add_advice();
    void add_controls();
    QPushButton* guides_button();
    QPushButton* light_button();
    void tell_frame();
    QString about_frame() const;
    void add_shot();
    plan::Id<plan::Camera> camera_for_shot() const;

    Desk& desk_;
    FrameView* view_ = nullptr;
    QWidget* advice_ = nullptr;
    QLabel* advice_words_ = nullptr;
    QPushButton* advice_button_ = nullptr;
    QWidget* controls_ = nullptr;
    QLabel* title_ = nullptr;
    QLabel* words_ = nullptr;
};

} // namespace throwline::ui
