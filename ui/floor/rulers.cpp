#include "ui/floor/rulers.h"

#include "base/length_text.h"
#include "ui/look/hairline.h"

#include <QFontMetricsF>
#include <QLineF>
#include <QPainter>
#include <QPolygonF>
#include <array>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr double kInch_m = 0.0254;
constexpr double kFoot_m = 0.3048;

constexpr std::array kMetricSteps{RulerSteps{0.01, 10}, RulerSteps{0.02, 4}, RulerSteps{0.05, 5},
                                  RulerSteps{0.1, 10},  RulerSteps{0.2, 4},  RulerSteps{0.5, 5},
                                  RulerSteps{1.0, 10},  RulerSteps{2.0, 4},  RulerSteps{5.0, 5},
                                  RulerSteps{10.0, 10}, RulerSteps{20.0, 4}, RulerSteps{50.0, 5},
                                  RulerSteps{100.0, 10}};
constexpr std::array kImperialSteps{
    RulerSteps{kInch_m, 4},          RulerSteps{3.0 * kInch_m, 3},  RulerSteps{6.0 * kInch_m, 6},
    RulerSteps{kFoot_m, 4},          RulerSteps{2.0 * kFoot_m, 4},  RulerSteps{5.0 * kFoot_m, 5},
    RulerSteps{10.0 * kFoot_m, 10},  RulerSteps{20.0 * kFoot_m, 4}, RulerSteps{50.0 * kFoot_m, 5},
    RulerSteps{100.0 * kFoot_m, 10}, RulerSteps{200.0 * kFoot_m, 4}};

/// Room between two figures, in heights of the font.
constexpr double kFigurePitch = 4.5;

template <std::size_t count>
RulerSteps first_apart(const std::array<RulerSteps, count>& steps, double least_m) {
    for (const RulerSteps& step : steps) {
        if (step.long_m >= least_m) {
            return step;
        }
    }
    return steps.back();
}

/// One ruler, in its own axes: along it, and across from its outer edge.
struct Strip {
    QPainter& painter;
    const Rulers& rulers;
    double width_px;
    double from_px;
    double to_px;
    /// Where the plan's origin is along it, and whether metres grow along it.
    double origin_px;
    double sign;

    double along(double at_m) const { return origin_px + sign * at_m * rulers.view.px_per_m(); }
};

void paint_ticks(const Strip& strip, const RulerSteps& steps) {
    const double step_m = steps.long_m / steps.parts;
    const double a = (strip.from_px - strip.origin_px) / strip.rulers.view.px_per_m() * strip.sign;
    const double b = (strip.to_px - strip.origin_px) / strip.rulers.view.px_per_m() * strip.sign;
    const auto first = static_cast<long>(std::ceil(std::min(a, b) / step_m));
    const auto last = static_cast<long>(std::floor(std::max(a, b) / step_m));
    const QFontMetricsF metrics{strip.painter.font()};
    const QColor ink = strip.painter.pen().color();
    for (long i = first; i <= last; ++i) {
        const double at_m = static_cast<double>(i) * step_m;
        const double px = strip.along(at_m);
        const bool is_long = i % steps.parts == 0;
        const bool is_half = steps.parts % 2 == 0 && i % (steps.parts / 2) == 0;
        const double length_px = strip.width_px * (is_long ? 1.0 : is_half ? 0.34 : 0.2);
        paint_hairline(strip.painter, {px, strip.width_px - length_px, px, strip.width_px}, ink);
        if (is_long) {
            const QString figure = QString::fromStdString(ruler_figure(at_m, strip.rulers.units));
            strip.painter.drawText(QPointF{px + 3.0, metrics.ascent() + 1.0}, figure);
        }
    }
}

void paint_pointer(const Strip& strip, double along_px, const QColor& hue) {
    if (along_px < strip.from_px || along_px > strip.to_px) {
        return;
    }
    const double w = strip.width_px;
    strip.painter.setPen(Qt::NoPen);
    strip.painter.setBrush(hue);
    strip.painter.drawPolygon(QPolygonF{{QPointF{along_px, w}, QPointF{along_px - 4.5, w - 7.0},
                                         QPointF{along_px + 4.5, w - 7.0}}});
    strip.painter.setBrush(Qt::NoBrush);
}

void paint_strip(const Strip& strip, const RulerSteps& steps, std::optional<double> pointer_px) {
    const Theme theme = strip.rulers.theme;
    QPainter& painter = strip.painter;
    painter.fillRect(QRectF{strip.from_px, 0.0, strip.to_px - strip.from_px, strip.width_px},
                     panel_ground(theme));
    painter.setClipRect(QRectF{strip.from_px, 0.0, strip.to_px - strip.from_px, strip.width_px});
    painter.setPen(QPen{paint::line_hue(sheet::Ink::dimension, theme), 1.0});
    painter.setRenderHint(QPainter::Antialiasing, false);
    paint_ticks(strip, steps);
    paint_hairline(painter,
                   {strip.from_px, strip.width_px - 0.5, strip.to_px, strip.width_px - 0.5},
                   seam_hue(theme));
    painter.setRenderHint(QPainter::Antialiasing);
    if (pointer_px) {
        paint_pointer(strip, *pointer_px, choice_hue(theme));
    }
    painter.setClipping(false);
}

} // namespace

double ruler_width_px(double font_height_px) {
    return std::ceil(font_height_px * 1.35);
}

RulerSteps ruler_steps(double px_per_m, UnitSystem units, double least_px) {
    const double least_m = least_px / px_per_m;
    return units == UnitSystem::metric ? first_apart(kMetricSteps, least_m)
                                       : first_apart(kImperialSteps, least_m);
}

std::string ruler_figure(double at_m, UnitSystem units) {
    if (units == UnitSystem::metric) {
        // Adding nought turns "-0" into "0".
        return shortest(std::round(at_m * 1000.0) / 1000.0 + 0.0);
    }
    const auto inches = static_cast<long>(std::lround(at_m / kInch_m));
    const long feet = inches / 12;
    const long rest = std::abs(inches % 12);
    if (rest == 0) {
        return shortest(static_cast<double>(feet)) + "'";
    }
    const std::string sign = inches < 0 && feet == 0 ? "-" : "";
    const std::string inch_text = shortest(static_cast<double>(rest)) + "\"";
    return feet == 0 ? sign + inch_text : shortest(static_cast<double>(feet)) + "'" + inch_text;
}

void paint_rulers(QPainter& painter, const Rulers& rulers) {
    painter.save();
    QFont font = painter.font();
    font.setPointSizeF(font.pointSizeF() * 0.82);
    painter.setFont(font);
    const FloorView& view = rulers.view;
    const double least_px = QFontMetricsF{font}.height() * kFigurePitch;
    const RulerSteps steps = ruler_steps(view.px_per_m(), rulers.units, least_px);
    paint_strip({painter, rulers, view.window_px.top(), view.window_px.left(),
                 view.window_px.right(), view.origin_px.x(), 1.0},
                steps, rulers.pointer_px ? std::optional{rulers.pointer_px->x()} : std::nullopt);
    // The left one is the same, read from below: along it runs up the page.
    painter.translate(0.0, view.window_px.bottom());
    painter.rotate(-90.0);
    const double bottom_px = view.window_px.bottom();
    paint_strip({painter, rulers, view.window_px.left(), 0.0, view.window_px.height(),
                 bottom_px - view.origin_px.y(), 1.0},
                steps,
                rulers.pointer_px ? std::optional{bottom_px - rulers.pointer_px->y()}
                                  : std::nullopt);
    painter.restore();
    painter.save();
    painter.setFont(font);
    const QRectF corner{0.0, 0.0, view.window_px.left(), view.window_px.top()};
    painter.fillRect(corner, panel_ground(rulers.theme));
    painter.setPen(paint::line_hue(sheet::Ink::dimension, rulers.theme));
    painter.drawText(corner, Qt::AlignCenter,
                     rulers.units == UnitSystem::metric ? QStringLiteral("m")
                                                        : QStringLiteral("ft"));
    painter.restore();
}

} // namespace throwline::ui
