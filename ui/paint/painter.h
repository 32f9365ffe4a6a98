#pragma once

#include "sheet/drawing.h"
#include "ui/paint/ink_table.h"

class QPainter;

namespace throwline::paint {

/// Paints a layer on a painter whose unit is one millimetre of paper, from the top left corner of
/// the sheet. Lines end exactly at their ends (flat caps). The ground is left as it is.
void paint_layer(QPainter& painter, const sheet::Layer& layer, Theme theme = Theme::light);
/// The same on a ground of another hue: what is filled with bare paper is filled with `bare_paper`.
void paint_layer(QPainter& painter, const sheet::Layer& layer, Theme theme,
                 const QColor& bare_paper);
/// All its layers, in order.
void paint_drawing(QPainter& painter, const sheet::Drawing& drawing, Theme theme = Theme::light);

} // namespace throwline::paint
