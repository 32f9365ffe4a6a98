#include "ui/look/lozenge.h"
#include "ui/look/picture_image.h"
#include "ui/viewfinder/frame_view.h"

#include <QPainter>

namespace throwline::ui {

void FrameView::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter{this};
    const Theme theme = theme_of(palette());
    const QRectF box = picture_box();
    if (box.isEmpty()) {
        paint_nothing(painter);
    } else {
        painter.setRenderHint(QPainter::SmoothPixmapTransform);
        painter.setOpacity(is_dimmed_ ? 0.45 : 1.0);
        paint_in_box(painter, box, frame_->image);
        painter.setOpacity(1.0);
        paint_guides(painter, box, guides_, frame_->raised->scene.shot->size);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen{paint::hue(sheet::Ink::standing, theme), 1.0});
        painter.drawRect(box);
        paint_finding(painter);
        paint_pointed(painter);
    }
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen{choice_hue(theme), 2.0});
        const QRectF ring = box.isEmpty() ? QRectF{rect()} : box.adjusted(-1, -1, 1, 1);
        painter.drawRect(ring.intersected(QRectF{rect()}.adjusted(1, 1, -1, -1)));
    }
}

void FrameView::paint_nothing(QPainter& painter) {
    const Theme theme = theme_of(palette());
    QColor edge = paint::line_hue(sheet::Ink::note, theme);
    painter.fillRect(rect(), floor_ground(theme));
    painter.setPen(QPen{edge, 1.0, Qt::DashLine});
    painter.drawRect(QRectF{rect()}.adjusted(0.5, 0.5, -0.5, -0.5));
}

void FrameView::paint_pointed(QPainter& painter) {
    if (!pointed_ || is_aiming_) {
        return;
    }
    const Theme theme = theme_of(palette());
    QString name = QString::fromStdString(pointed_->name);
    if (!pointed_->light.empty()) {
        name += QStringLiteral(" \u00B7 ") + QString::fromStdString(pointed_->light);
    }
    const QRectF box = picture_box();
    const QFontMetricsF metrics{font()};
    const QSizeF size{metrics.horizontalAdvance(name) + 12.0, metrics.height() + 4.0};
    const QRectF label{QPointF{box.left() + 4.0, box.bottom() - size.height() - 4.0}, size};
    painter.setPen(Qt::NoPen);
    QColor ground = floor_ground(theme);
    ground.setAlpha(225);
    painter.setBrush(ground);
    painter.drawRoundedRect(label, 3, 3);
    painter.setPen(paint::hue(sheet::Ink::lettering, theme));
    painter.drawText(label, Qt::AlignCenter, name);
}

/// The place that a finding is about, with its number; at the edge with a barb towards it when it
/// lies outside the frame.
void FrameView::paint_finding(QPainter& painter) {
    const AnalysisPtr analysis = desk_.analysis();
    const int index = desk_.finding_pointed_at();
    if (analysis == nullptr || index < 0
        || static_cast<std::size_t>(index) >= analysis->findings.size() || !is_fresh()) {
        return;
    }
    const checks::Finding& finding = analysis->findings[static_cast<std::size_t>(index)];
    const checks::ShotScene& scene = frame_->raised->scene;
    std::optional<Vec3> place;
    if (!finding.things.empty()) {
        place = stage::look_point(scene.stage, finding.things.front());
    }
    const auto at = scene.view->frame.project(place.value_or(raised(finding.at, 0.0)));
    if (!at) {
        return;
    }
    const QRectF box = picture_box();
    const Vec2 inside = at->cwiseMax(-0.86).cwiseMin(0.86);
    const QPointF centre{box.center().x() + inside.x() * box.width() / 2.0,
                         box.center().y() - inside.y() * box.height() / 2.0};
    const Theme theme = theme_of(palette());
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen{severity_hue(finding.severity, theme), 2.0});
    painter.setBrush(Qt::NoBrush);
    if (inside == *at) {
        painter.drawEllipse(centre, 9.0, 9.0);
        paint_lozenge(painter, centre + QPointF{0.0, -20.0}, finding_number_, finding.severity,
                      theme);
        return;
    }
    const Vec2 way = (*at - inside).normalized();
    const QPointF out{way.x() * 26.0, -way.y() * 26.0};
    painter.drawLine(centre, centre + out);
    paint_lozenge(painter, centre, finding_number_, finding.severity, theme);
}

} // namespace throwline::ui
