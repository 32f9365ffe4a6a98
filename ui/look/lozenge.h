#pragma once

#include "checks/finding.h"
#include "ui/look/look.h"

#include <QPointF>
#include <QSizeF>

class QPainter;
class QFontMetricsF;

namespace throwline::ui {

/// The hue of a severity's marks.
QColor severity_hue(checks::Severity severity, Theme theme);

/// Room that a lozenge with a number takes in a font, logical pixels.
QSizeF lozenge_size(const QFontMetricsF& font, int number);
/// A finding's lozenge as on the sheets, with the painter's font: filled for an error, double for a
/// caution, single for a note, so that it is told without its hue.
void paint_lozenge(QPainter& painter, const QPointF& centre, int number, checks::Severity severity,
                   Theme theme);

} // namespace throwline::ui
