#pragma once

#include "edit/aim.h"
#include "ui/viewfinder/frame_guides.h"
#include "ui/viewfinder/frame_worker.h"

#include <QTimer>
#include <QWidget>
#include <optional>

namespace throwline::ui {

/// The picture that a shot takes in, to be looked at, pointed into, and aimed by.
class FrameView : public QWidget {
    Q_OBJECT

  public:
    FrameView(Desk& desk, QWidget* parent = nullptr);
    ~FrameView() override;

    /// What the keys do in it, for those who listen.
    static QString keys_told();

    const FrameSeen* frame() const { return frame_.get(); }
    const FrameGuides& guides() const { return guides_; }
    void set_guides(const FrameGuides& guides);
    Shading shading() const { return shading_; }
    /// Kept for every shot; a picture of a beat in which no lamp burns is plain all the same.
    void set_shading(Shading shading);
    /// The shot looked at; empty for none.
    plan::Id<plan::Shot> shot() const;
    /// Where the picture is, logical pixels; empty without one.
    QRectF picture_box() const;
    /// What is at a place of the widget: its owner on the stage, how much light falls on it when
    /// the picture is lit, and the thing on the floor.
    struct Pointed {
        std::string name;
        std::string light;
        std::optional<edit::Thing> thing;
    };
    std::optional<Pointed> pointed(const QPointF& at) const;

    QSize sizeHint() const override { return {280, 170}; }
    QSize minimumSizeHint() const override { return {120, 80}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

  Q_SIGNALS:
    /// Another picture, or none; the words about it with it.
    void frame_changed();
    void guides_changed();
    void shading_changed();

  protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    void look();
    void take(std::shared_ptr<const FrameSeen> frame);
    /// Whether the picture is of the plan, shot and shading that are to be shown.
    bool is_fresh() const;
    bool is_lit() const;
    void point_at(const QPointF& at);
    void switch_by(int key);
    /// The aim as it is now, when the picture is of the plan itself.
    std::optional<edit::HeldAim> hold() const;
    Vec2 frame_point(const QPointF& at) const;
    void turn_by(Angle left, Angle up);
    void zoom_by(double factor);
    void show_going_on();
    void finish();
    void let_go();
    void paint_nothing(QPainter& painter);
    void paint_pointed(QPainter& painter);
    void paint_finding(QPainter& painter);
    void look_at_finding();

    Desk& desk_;
    FrameWorker worker_;
    std::shared_ptr<const FrameSeen> frame_;
    FrameGuides guides_;
    Shading shading_ = Shading::plain;
    std::optional<Pointed> pointed_;
    QPointF pointed_at_;
    QPointF pressed_at_;
    bool is_pressed_ = false;
    bool is_aiming_ = false;
    /// What a drag, a run of the wheel or of arrow keys began from, and what it has come to.
    std::optional<edit::HeldAim> held_;
    Angle left_;
    Angle up_;
    double factor_ = 1.0;
    std::optional<Result<edit::Step>> going_on_;
    /// Ends a run of wheel steps or keys.
    QTimer run_;
    /// The number that the finding pointed at has on every sheet.
    int finding_number_ = 0;
    /// Dims a picture that is no longer that of the plan.
    QTimer stale_;
    bool is_dimmed_ = false;
};

} // namespace throwline::ui
