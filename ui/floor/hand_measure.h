#pragma once

#include "ui/floor/hand.h"

#include <optional>

namespace throwline::ui {

/// Measures between two points; what was measured stays until Esc.
class MeasureHand : public Hand {
  public:
    using Hand::Hand;

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    bool wants(const QKeyEvent& event) const override;
    bool key(const QKeyEvent& event) override;
    bool end() override;
    void paint(QPainter& painter) const override;
    QString hint() const override;

    /// "2.50 m (across 2.00 m, up 1.50 m)"; empty before there is something.
    QString result() const;

  private:
    void go_to(const Vec2& to);

    std::optional<Vec2> from_;
    Vec2 to_ = Vec2::Zero();
    bool is_done_ = false;
    QPointF pressed_px_;
};

} // namespace throwline::ui
