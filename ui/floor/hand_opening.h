#pragma once

#include "plan/site.h"
#include "ui/floor/hand.h"

namespace throwline::ui {

/// Puts a door, a window or a plain opening into the wall that is nearest.
class OpeningHand : public Hand {
  public:
    OpeningHand(Bench& bench, plan::OpeningKind kind);

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer) override;
    bool takes_typing() const override { return true; }
    QString typed(const QString& text, bool final) override;
    bool end() override;
    void paint(QPainter& painter) const override;
    QString hint() const override;

  private:
    Result<edit::Step> step() const;
    void show();

    plan::OpeningKind kind_;
    Length width_;
    Vec2 at_ = Vec2::Zero();
    /// Where it would come to be.
    Polygon outline_;
};

} // namespace throwline::ui
