#pragma once

#include <QProxyStyle>

namespace throwline::ui {

/// Draws what the style sheet cannot: boxes to tick with edges that stand out from the ground, and
/// a ring around whatever has the keyboard.
class PaperStyle : public QProxyStyle {
  public:
    PaperStyle();

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    /// Boxes to tick grow with the font.
    int pixelMetric(PixelMetric metric, const QStyleOption* option,
                    const QWidget* widget) const override;
};

} // namespace throwline::ui
