#pragma once

#include "ui/floor/hand.h"

#include <optional>
#include <span>
#include <vector>

namespace throwline::ui {

/// A thing that is drawn point by point.
struct PointsDrawn {
    /// After so many it is done; 0: when Enter says so.
    std::size_t count = 0;
    /// The last point joins the first: a click there ends it.
    bool closes = false;
    /// Fewest with which Enter ends it.
    std::size_t least = 2;
    Result<edit::Step> (*make)(const edit::Context& context,
                               std::span<const Vec2> points) = nullptr;
    /// "Click where the flats begin": before the first point.
    const char* first_hint = "";
};

/// Draws along points: clicked, or typed as length and direction from the last one.
class PointsHand : public Hand {
  public:
    PointsHand(Bench& bench, const PointsDrawn& drawn);

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    bool double_press(const Pointer& pointer) override;
    bool key(const QKeyEvent& event) override;
    bool wants(const QKeyEvent& event) const override;
    bool takes_typing() const override { return !points_.empty(); }
    QString typed(const QString& text, bool final) override;
    bool end() override;
    void paint(QPainter& painter) const override;
    QString hint() const override;

  private:
    std::vector<Vec2> with_pointer() const;
    bool closes_at(const Vec2& point) const;
    void go_to(const Vec2& point);
    void add(const Vec2& point);
    void finish();
    void forget();

    PointsDrawn drawn_;
    std::vector<Vec2> points_;
    Vec2 pointer_at_ = Vec2::Zero();
    QPointF pressed_px_;
};

} // namespace throwline::ui
