#include "ui/paint/painter.h"

#include "sheet/hatch.h"
#include "ui/paint/fonts.h"

#include <QFontMetricsF>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>
#include <numbers>

namespace throwline::paint {

namespace {

using sheet::Circle;
using sheet::Fill;
using sheet::Hatch;
using sheet::Path;
using sheet::Pen;
using sheet::Text;

constexpr double kHatchSpacing_mm = 1.4;
constexpr double kHatchLine_mm = 0.13;
constexpr double kDotSpacing_mm = 1.6;
constexpr double kDotRadius_mm = 0.15;
constexpr int kCircleSides = 96;
/// How far the outline of a drawn curve may stray.
constexpr double kFlatness_mm = 0.005;

QPointF point_of(const Vec2& at) {
    return {at.x(), at.y()};
}

QColor tinted(QColor colour, double strength) {
    colour.setAlphaF(static_cast<float>(strength));
    return colour;
}

QPen pen_of(const Pen& pen, Theme theme) {
    if (!(pen.width_mm > 0.0)) {
        return QPen{Qt::NoPen};
    }
    QPen made{tinted(line_hue(pen.ink, theme), pen.strength), pen.width_mm, Qt::SolidLine,
              Qt::FlatCap, Qt::MiterJoin};
    QVector<qreal> dashes = dashes_mm(pen.pattern);
    if (!dashes.isEmpty()) {
        for (qreal& dash : dashes) {
            dash /= pen.width_mm; // Qt counts dashes in line widths.
        }
        made.setDashPattern(dashes);
    }
    return made;
}

bool makes_pixels(const QPainter& painter) {
    return painter.paintEngine()->type() == QPaintEngine::Raster;
}

/// When it makes pixels, Qt cuts lines at the edge of the picture and dashes them anew from there,
/// so that the tiles of a sheet would not meet. The outline of a line does not hang on where the
/// picture ends. Other engines get lines as lines.
void fill_with_outline(QPainter& painter, const QPainterPath& path, const QPen& pen,
                       const QBrush& brush) {
    painter.fillPath(path, brush);
    if (pen.style() != Qt::NoPen) {
        QPainterPathStroker stroker{pen};
        stroker.setCurveThreshold(kFlatness_mm);
        painter.fillPath(stroker.createStroke(path), pen.brush());
    }
}

void draw_line(QPainter& painter, const QPointF& from, const QPointF& to, const QPen& pen) {
    if (makes_pixels(painter)) {
        QPainterPath path{from};
        path.lineTo(to);
        fill_with_outline(painter, path, pen, Qt::NoBrush);
        return;
    }
    painter.setPen(pen);
    painter.drawLine(QLineF{from, to});
}

void draw_lines(QPainter& painter, std::span<const Vec2> outline, const Fill& fill,
                double angle_rad, Theme theme) {
    const QPen pen{tinted(line_hue(fill.ink, theme), fill.strength), kHatchLine_mm, Qt::SolidLine,
                   Qt::FlatCap};
    for (const auto& [from, to] : sheet::hatch_lines(outline, angle_rad, kHatchSpacing_mm)) {
        draw_line(painter, point_of(from), point_of(to), pen);
    }
}

void draw_dots(QPainter& painter, std::span<const Vec2> outline, const Fill& fill, Theme theme) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(tinted(hue(fill.ink, theme), fill.strength));
    for (const Vec2& dot : sheet::hatch_dots(outline, kDotSpacing_mm)) {
        painter.drawEllipse(point_of(dot), kDotRadius_mm, kDotRadius_mm);
    }
    painter.setBrush(Qt::NoBrush);
}

/// The hatch of an outline; a solid fill is painted with the outline itself.
void draw_hatch(QPainter& painter, std::span<const Vec2> outline, const Fill& fill, Theme theme) {
    constexpr double kQuarter = std::numbers::pi / 4.0;
    switch (fill.hatch) {
    case Hatch::none:
    case Hatch::solid:
        return;
    case Hatch::diagonal:
        draw_lines(painter, outline, fill, -kQuarter, theme);
        return;
    case Hatch::cross:
        draw_lines(painter, outline, fill, -kQuarter, theme);
        draw_lines(painter, outline, fill, kQuarter, theme);
        return;
    case Hatch::dots:
        draw_dots(painter, outline, fill, theme);
        return;
    }
}

QBrush brush_of(const Fill& fill, Theme theme, const QColor& bare_paper) {
    if (fill.hatch != Hatch::solid) {
        return QBrush{Qt::NoBrush};
    }
    const QColor colour = fill.ink == sheet::Ink::paper ? bare_paper : hue(fill.ink, theme);
    return QBrush{tinted(colour, fill.strength)};
}

class MarkPainter {
  public:
    MarkPainter(QPainter& painter, Theme theme, const QColor& bare_paper)
        : painter_{painter}, theme_{theme}, bare_paper_{bare_paper} {}

    void operator()(const Path& path) const {
        if (path.points.size() < 2) {
            return;
        }
        QPolygonF polygon;
        for (const Vec2& at : path.points) {
            polygon << point_of(at);
        }
        const QPen pen = pen_of(path.pen, theme_);
        if (path.closed) {
            draw_hatch(painter_, path.points, path.fill, theme_);
        }
        const QBrush brush =
            path.closed ? brush_of(path.fill, theme_, bare_paper_) : QBrush{Qt::NoBrush};
        if (makes_pixels(painter_)) {
            QPainterPath outline;
            outline.addPolygon(polygon);
            if (path.closed) {
                outline.closeSubpath();
            }
            fill_with_outline(painter_, outline, pen, brush);
            return;
        }
        painter_.setPen(pen);
        painter_.setBrush(brush);
        if (path.closed) {
            painter_.drawPolygon(polygon, Qt::OddEvenFill);
        } else {
            painter_.drawPolyline(polygon);
        }
    }

    void operator()(const Circle& circle) const {
        draw_hatch(painter_, throwline::circle(circle.centre, circle.radius_mm, kCircleSides),
                   circle.fill, theme_);
        const QPen pen = pen_of(circle.pen, theme_);
        const QBrush brush = brush_of(circle.fill, theme_, bare_paper_);
        if (makes_pixels(painter_)) {
            QPainterPath outline;
            outline.addEllipse(point_of(circle.centre), circle.radius_mm, circle.radius_mm);
            fill_with_outline(painter_, outline, pen, brush);
            return;
        }
        painter_.setPen(pen);
        painter_.setBrush(brush);
        painter_.drawEllipse(point_of(circle.centre), circle.radius_mm, circle.radius_mm);
    }

    void operator()(const Text& text) const {
        const QFont font = sheet_font(text.bold);
        const QFontMetricsF metrics{font};
        const QString words = QString::fromStdString(text.text);
        const double scale = text.height_mm / metrics.capHeight();
        painter_.save();
        painter_.translate(point_of(text.at));
        // Qt turns clockwise on a page whose y runs down.
        painter_.rotate(-text.turn_rad * 180.0 / std::numbers::pi);
        painter_.scale(scale, scale);
        painter_.setFont(font);
        painter_.setPen(hue(text.ink, theme_));
        painter_.drawText(QPointF{-anchor_share(text) * metrics.horizontalAdvance(words), 0.0},
                          words);
        painter_.restore();
    }

    void operator()(const sheet::Picture& picture) const {
        if (picture.pixels == nullptr || picture.pixels->width < 1 || picture.pixels->height < 1) {
            return;
        }
        const sheet::Pixels& pixels = *picture.pixels;
        const QImage image{pixels.rgb.data(), pixels.width, pixels.height, 3 * pixels.width,
                           QImage::Format_RGB888};
        painter_.save();
        painter_.setOpacity(picture.strength);
        painter_.setRenderHint(QPainter::SmoothPixmapTransform);
        painter_.setTransform(
            QTransform{picture.across.x() / pixels.width, picture.across.y() / pixels.width,
                       picture.down.x() / pixels.height, picture.down.y() / pixels.height,
                       picture.corner.x(), picture.corner.y()},
            true);
        painter_.drawImage(QPointF{0.0, 0.0}, image);
        painter_.restore();
    }

  private:
    static double anchor_share(const Text& text) {
        switch (text.anchor) {
        case sheet::TextAnchor::start:
            return 0.0;
        case sheet::TextAnchor::middle:
            return 0.5;
        case sheet::TextAnchor::end:
            return 1.0;
        }
        return 0.0;
    }

    QPainter& painter_;
    Theme theme_;
    QColor bare_paper_;
};

} // namespace

void paint_layer(QPainter& painter, const sheet::Layer& layer, Theme theme) {
    paint_layer(painter, layer, theme, hue(sheet::Ink::paper, theme));
}

void paint_layer(QPainter& painter, const sheet::Layer& layer, Theme theme,
                 const QColor& bare_paper) {
    const MarkPainter paint_mark{painter, theme, bare_paper};
    painter.save();
    painter.translate(point_of(layer.shift_mm));
    for (const sheet::Mark& mark : layer.marks) {
        std::visit(paint_mark, mark);
    }
    painter.restore();
}

void paint_drawing(QPainter& painter, const sheet::Drawing& drawing, Theme theme) {
    for (const sheet::Layer& layer : drawing.layers) {
        paint_layer(painter, layer, theme);
    }
}

} // namespace throwline::paint
