#pragma once

#include "ui/running_order/move_player.h"
#include "ui/running_order/order_painter.h"

#include <QAbstractScrollArea>
#include <QPointer>
#include <QTimer>
#include <functional>

class QLineEdit;
class QMenu;

namespace throwline::ui {

/// The strip itself: beats one after the other, shots hanging on them, a line for now.
class OrderStrip : public QAbstractScrollArea {
    Q_OBJECT

  public:
    OrderStrip(Desk& desk, MovePlayer& player, QWidget* parent = nullptr);
    ~OrderStrip() override;

    const OrderView& view() const { return view_; }
    const FramePictures& pictures() const { return pictures_; }
    /// What the keyboard stands on.
    OrderPlace focus_place() const { return focus_; }
    void set_focus_place(const OrderPlace& place);
    /// Where a place is, in pixels of the viewport.
    QRect shown_at(const OrderPlace& place) const;

    void go_to(const OrderPlace& place);
    /// One place earlier or later in the order.
    void step(const OrderPlace& place, int by);
    void remove(const OrderPlace& place);
    /// Opens a field over the name of a shot, or what happens in a beat.
    void rename(const OrderPlace& place);
    /// Opens a field for the number that a beat goes by.
    void renumber(const OrderPlace& place);
    void add_beat();
    void add_shot(const plan::Id<plan::Camera>& camera);
    /// Fills a menu with what can be done with a place.
    void fill_menu(QMenu& menu, const OrderPlace& place);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    bool event(QEvent* event) override;
    bool viewportEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void scrollContentsBy(int dx, int dy) override;

  private:
    enum class Drag { none, pressed, carrying, scrubbing };

    void rebuild();
    void ask_for_pictures();
    void take_analysis();
    void tell_size();
    /// Says what is played now to whoever does not see the line of now.
    void tell_now();
    void show_place(const OrderPlace& place);
    void show_now();
    QPointF on_strip(const QPointF& on_viewport) const;
    std::optional<OrderMoment> now() const;
    bool is_on_now_line(const QPointF& point) const;
    void scrub(double x);
    void carry(const QPointF& point);
    void put_down();
    void move_focus(int by);
    void let_go();
    static bool is_strip_key(int key, Qt::KeyboardModifiers modifiers);
    /// Opens a field for `what`, holding `words`; what is typed in it makes a step.
    void edit(const QRectF& box, const QString& what, const QString& words,
              const std::function<Result<edit::Step>(const std::string&)>& step);
    void take_and_go(const Result<edit::Step>& step);
    QString tip_at(const QPointF& point) const;
    OrderPainting painting() const;

    Desk& desk_;
    MovePlayer& player_;
    FramePictures pictures_;
    QTimer arrived_;
    OrderView view_;
    /// The findings of the plan itself, whatever is previewed or on its way.
    AnalysisPtr known_;
    /// What pictures were last asked for.
    AnalysisPtr asked_;
    int asked_side_px_ = 0;
    OrderPlace focus_;
    Drag drag_ = Drag::none;
    OrderPlace pressed_;
    QPointF pressed_at_;
    std::optional<DropPlace> drop_;
    QPointer<QLineEdit> editor_;
};

} // namespace throwline::ui
