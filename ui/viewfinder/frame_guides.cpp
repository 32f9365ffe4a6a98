#include "ui/viewfinder/frame_guides.h"

#include "optics/composition.h"
#include "optics/safe_areas.h"
#include "optics/shot_size.h"

#include <QLineF>
#include <QPainter>
#include <QVector>
#include <algorithm>

namespace throwline::ui {

namespace {

constexpr GuideChoice kGuides[]{
    {"safe_areas", QT_TRANSLATE_NOOP("Viewfinder", "Safe areas"), Qt::Key_S,
     &FrameGuides::safe_areas},
    {"thirds", QT_TRANSLATE_NOOP("Viewfinder", "Thirds"), Qt::Key_T, &FrameGuides::thirds},
    {"headroom", QT_TRANSLATE_NOOP("Viewfinder", "Usual headroom"), Qt::Key_H,
     &FrameGuides::headroom},
    {"centre", QT_TRANSLATE_NOOP("Viewfinder", "Centre"), Qt::Key_C, &FrameGuides::cross}};

const QColor kDark{0x1F, 0x23, 0x28, 215};
const QColor kPale{0xFB, 0xFA, 0xF5, 190};

/// A line that is seen on dark and on pale.
void paint_lines(QPainter& painter, const QVector<QLineF>& lines, Qt::PenStyle style) {
    painter.setPen(QPen{kPale, 2.6, Qt::SolidLine, Qt::FlatCap});
    painter.drawLines(lines);
    painter.setPen(QPen{kDark, 1.0, style, Qt::FlatCap});
    painter.drawLines(lines);
}

QVector<QLineF> sides(const QRectF& box) {
    return {QLineF{box.topLeft(), box.topRight()}, QLineF{box.topRight(), box.bottomRight()},
            QLineF{box.bottomLeft(), box.bottomRight()}, QLineF{box.topLeft(), box.bottomLeft()}};
}

QRectF centred(const QRectF& frame, double share) {
    const optics::SafeBox box = optics::safe_box(frame.width(), frame.height(), share);
    return {frame.left() + box.margin_x_px, frame.top() + box.margin_y_px, box.width_px,
            box.height_px};
}

void paint_thirds(QPainter& painter, const QRectF& frame) {
    QVector<QLineF> lines;
    for (const double at : {-optics::kThirdLine, optics::kThirdLine}) {
        const double x = frame.center().x() + at * frame.width() / 2.0;
        const double y = frame.center().y() + at * frame.height() / 2.0;
        lines << QLineF{x, frame.top(), x, frame.bottom()}
              << QLineF{frame.left(), y, frame.right(), y};
    }
    paint_lines(painter, lines, Qt::DashDotLine);
}

void paint_cross(QPainter& painter, const QRectF& frame) {
    const QPointF centre = frame.center();
    const double arm = frame.height() * 0.06;
    paint_lines(painter,
                {QLineF{centre - QPointF{arm, 0.0}, centre + QPointF{arm, 0.0}},
                 QLineF{centre - QPointF{0.0, arm}, centre + QPointF{0.0, arm}}},
                Qt::SolidLine);
}

/// Between two lines at the top the crown is usually found.
void paint_headroom(QPainter& painter, const QRectF& frame, ShotSize wanted) {
    const optics::ShareRange usual = optics::usual_headroom(wanted);
    if (usual.most <= 0.0 || usual.most >= 0.5) {
        return;
    }
    const double least = frame.top() + std::max(0.0, usual.least) * frame.height();
    const double most = frame.top() + usual.most * frame.height();
    painter.fillRect(QRectF{QPointF{frame.left(), least}, QPointF{frame.right(), most}},
                     QColor{0x1F, 0x23, 0x28, 26});
    paint_lines(painter,
                {QLineF{frame.left(), least, frame.right(), least},
                 QLineF{frame.left(), most, frame.right(), most}},
                Qt::DashLine);
}

} // namespace

std::span<const GuideChoice> guide_choices() {
    return kGuides;
}

void paint_guides(QPainter& painter, const QRectF& frame, const FrameGuides& guides,
                  const std::optional<ShotSize>& wanted) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setClipRect(frame);
    if (guides.headroom && wanted) {
        paint_headroom(painter, frame, *wanted);
    }
    if (guides.thirds) {
        paint_thirds(painter, frame);
    }
    if (guides.safe_areas) {
        paint_lines(painter, sides(centred(frame, optics::kActionSafeShare)), Qt::DashLine);
        paint_lines(painter, sides(centred(frame, optics::kTitleSafeShare)), Qt::DotLine);
    }
    if (guides.cross) {
        paint_cross(painter, frame);
    }
    painter.restore();
}

} // namespace throwline::ui
