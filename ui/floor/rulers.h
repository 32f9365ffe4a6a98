#pragma once

#include "base/quantity.h"
#include "ui/floor/floor_view.h"
#include "ui/look/look.h"

#include <QPointF>
#include <QSizeF>
#include <optional>
#include <string>

class QPainter;

namespace throwline::ui {

/// Width of a ruler, logical pixels, in a font of this height.
double ruler_width_px(double font_height_px);

/// How a ruler is divided at a scale: long ticks with figures, each divided into short ones.
struct RulerSteps {
    double long_m = 1.0;
    int parts = 10;
};
/// Steps of round lengths, the long ones at least `least_px` apart.
RulerSteps ruler_steps(double px_per_m, UnitSystem units, double least_px);
/// What stands at a long tick: "2", "2.5", "4'", "6\"".
std::string ruler_figure(double at_m, UnitSystem units);

struct Rulers {
    const FloorView& view;
    QSizeF widget_px;
    UnitSystem units = UnitSystem::metric;
    Theme theme = Theme::light;
    std::optional<QPointF> pointer_px;
};
/// Along the top and the left of the widget, the pointer marked on both.
void paint_rulers(QPainter& painter, const Rulers& rulers);

} // namespace throwline::ui
