#pragma once

#include "ui/floor/hand.h"

#include <optional>
#include <vector>

namespace throwline::ui {

/// Chooses, moves what is chosen, drags its handles, and draws a box around several.
class ChooseHand : public Hand {
  public:
    using Hand::Hand;

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    bool takes_typing() const override;
    QString typed(const QString& text, bool final) override;
    bool end() override;
    void look_again() override;
    void paint(QPainter& painter) const override;
    Qt::CursorShape cursor() const override;
    QString hint() const override;

  private:
    enum class Doing { nothing, pressing, moving, handle, marquee };

    void hover(const Pointer& pointer);
    void press_on(const std::vector<edit::Thing>& under, const Pointer& pointer);
    void begin_moving();
    void move_things(const Pointer& pointer);
    void move_handle(const Pointer& pointer);
    void say_value();
    void choose_beneath(const Pointer& pointer);
    void choose_inside(const Pointer& pointer);
    void toggle(const edit::Thing& thing);
    void stop();
    Result<edit::Step> step_by(const Vec2& by_m) const;

    Doing doing_ = Doing::nothing;
    /// The plan when the button went down.
    plan::PlanPtr begun_on_;
    Vec2 pressed_at_ = Vec2::Zero();
    QPointF pressed_px_;
    Vec2 pointer_at_ = Vec2::Zero();
    /// What was pressed had been chosen before.
    bool was_chosen_ = false;
    bool adds_ = false;
    /// The box around several takes also what it touches.
    bool takes_touched_ = false;
    std::optional<QPointF> last_click_px_;
    std::vector<edit::Thing> moved_;
    std::vector<Vec2> points_;
    Vec2 by_m_ = Vec2::Zero();
    std::optional<edit::Handle> handle_;
    Result<edit::Step> step_ = failure({});
    std::optional<edit::Handle> pointed_handle_;
    Polygon pointed_outline_;
};

} // namespace throwline::ui
