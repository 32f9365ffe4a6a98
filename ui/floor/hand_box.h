#pragma once

#include "ui/floor/hand.h"

#include <optional>

namespace throwline::ui {

/// What is drawn from one point to another: a box or a platform corner to corner, a column from its
/// middle.
enum class Drawn { box, platform, column };

class BoxHand : public Hand {
  public:
    BoxHand(Bench& bench, Drawn drawn) : Hand{bench}, drawn_{drawn} {}

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    bool takes_typing() const override { return from_.has_value(); }
    QString typed(const QString& text, bool final) override;
    bool end() override;
    void paint(QPainter& painter) const override;
    QString hint() const override;

  private:
    Result<edit::Step> step_to(const Vec2& to) const;
    Result<Vec2> point_typed(const std::string& text) const;
    void go_to(const Vec2& to);
    void finish(const Vec2& to);

    Drawn drawn_;
    std::optional<Vec2> from_;
    Vec2 to_ = Vec2::Zero();
    QPointF pressed_px_;
};

} // namespace throwline::ui
