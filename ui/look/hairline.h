#pragma once

#include <QColor>
#include <QLineF>

class QPainter;

namespace throwline::ui {

/// Paints a line along or across the screen, about one logical pixel wide, without half-tones at
/// its sides: its edges lie on whole device pixels, whatever the scale of the screen. Many are
/// painted several times as fast with a painter that does not smooth.
void paint_hairline(QPainter& painter, const QLineF& line, const QColor& hue);

} // namespace throwline::ui
