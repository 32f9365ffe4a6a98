#pragma once

#include "sheet/drawing.h"

#include <QImage>

class QPainter;

namespace throwline::ui {

/// Pixels of the engine as a picture that can be painted; a copy.
QImage image_of(const sheet::Pixels& pixels);
/// Paints a picture that was made for a box: pixel on pixel when it has about as many as the box
/// has on the screen, else scaled to it.
void paint_in_box(QPainter& painter, const QRectF& box, const QImage& image);

} // namespace throwline::ui
