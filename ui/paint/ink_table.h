#pragma once

#include "sheet/drawing.h"

#include <QColor>
#include <QVector>

namespace throwline::paint {

enum class Theme { light, dark };

/// The hue of a meaning. Hues are those of the colour-universal set of Okabe and Ito (2008); each
/// meaning has a pattern and a mark of its own besides.
QColor hue(sheet::Ink ink, Theme theme);

/// The hue of its lines: on white paper dark enough (relative luma, ITU-R BT.601, under a half) to
/// survive a copy in black and white. The ground is meant to be lost.
QColor line_hue(sheet::Ink ink, Theme theme);

/// The ground that a drawing is painted on.
QColor ground_of_sheet(Theme theme);

/// Lengths of dashes and gaps in millimetres; empty for a solid line.
QVector<qreal> dashes_mm(sheet::LinePattern pattern);

} // namespace throwline::paint
