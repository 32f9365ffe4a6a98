#pragma once

#include "ui/floor/hand.h"

#include <optional>

namespace throwline::ui {

/// Puts the scanned plan in its place: dragging moves it; two places clicked, and how far apart
/// they truly are, typed, give it its size and its turn.
class UnderlayHand : public Hand {
  public:
    using Hand::Hand;

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    bool takes_typing() const override { return to_.has_value(); }
    QString typed(const QString& text, bool final) override;
    bool end() override;
    void paint(QPainter& painter) const override;
    QString hint() const override;

  private:
    void forget();

    /// The places that were clicked.
    std::optional<Vec2> from_;
    std::optional<Vec2> to_;
    Vec2 pointer_at_ = Vec2::Zero();
    /// Where the second place truly is, as typed so far.
    std::optional<Vec2> true_to_;
    std::optional<Pointer> pressed_;
};

} // namespace throwline::ui
