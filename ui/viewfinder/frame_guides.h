#pragma once

#include "base/trade_words.h"
#include "ui/look/look.h"

#include <QRectF>
#include <optional>
#include <span>

class QPainter;

namespace throwline::ui {

/// What is laid over the picture to frame by.
struct FrameGuides {
    bool safe_areas = true;
    bool thirds = false;
    bool headroom = false;
    bool cross = false;

    bool operator==(const FrameGuides&) const = default;
};

/// A guide that can be switched.
struct GuideChoice {
    /// Stable, for what is kept.
    const char* name;
    /// For a menu, to be translated in the context "Viewfinder".
    const char* words;
    /// Switches it while the keyboard is in the picture.
    Qt::Key key;
    bool FrameGuides::* shown;
};
/// All of them, in the order of the menu; adding a guide is a row here and a way to paint it.
std::span<const GuideChoice> guide_choices();

/// Paints guides over a picture that fills `frame`, dark lines with a pale edge, so that they are
/// seen on every tone; each kind in a pattern of its own. Headroom is the usual one for the wanted
/// size, and is left out when no size is wanted or the size has no upper bound or cuts the crown.
void paint_guides(QPainter& painter, const QRectF& frame, const FrameGuides& guides,
                  const std::optional<ShotSize>& wanted);

} // namespace throwline::ui
