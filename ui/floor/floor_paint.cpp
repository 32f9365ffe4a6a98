/// How the floor is painted: the picture made last, moved and scaled to where it belongs now, and
/// what is light and live on top of it.

#include "edit/moves.h"
#include "ui/floor/floor.h"
#include "ui/floor/floor_marks.h"
#include "ui/floor/floor_painter.h"
#include "ui/floor/hand.h"
#include "ui/floor/live_part.h"
#include "ui/floor/rulers.h"
#include "ui/floor/typed_line.h"
#include "ui/look/lozenge.h"

#include <QPainter>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr double kGhostStrength = 0.6;
/// With more chosen than this each gets a single line.
constexpr std::size_t kMostWithHalo = 400;

QRectF rect_of(const FloorView& view, const PictureWanted& of) {
    const double scale = view.mm_per_m / of.mm_per_m * view.px_per_mm;
    return {view.origin_px.x() + of.window.left * scale, view.origin_px.y() + of.window.top * scale,
            of.window.width * scale, of.window.height * scale};
}

double on_pixel(double px, double device_pixel_ratio) {
    return std::round(px * device_pixel_ratio) / device_pixel_ratio;
}

} // namespace

void Floor::paintEvent(QPaintEvent*) {
    QPainter painter{this};
    painter.setClipRect(view().window_px);
    paint_picture(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paint_live(painter);
    paint_choices(painter);
    paint_finding(painter);
    hand_->paint(painter);
    paint_words(painter);
    if (hasFocus()) {
        painter.setPen(QPen{choice_hue(bench_->theme), 1.5});
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(view().window_px.adjusted(0.75, 0.75, -0.75, -0.75));
    }
    painter.setClipping(false);
    paint_rulers(painter, {view(), QSizeF{size()}, desk_.plan()->units, bench_->theme,
                           pointer_is_here_ ? std::optional{pointer_px_} : std::nullopt});
}

void Floor::paint_picture(QPainter& painter) const {
    const QColor ground = floor_ground(bench_->theme);
    const std::optional<FloorImage>& latest = picture_->latest();
    if (!latest || latest->of.theme != bench_->theme) {
        painter.fillRect(view().window_px, ground);
        return;
    }
    const QRectF place = rect_of(view(), latest->of);
    if (!place.contains(view().window_px)) {
        painter.fillRect(view().window_px, ground);
    }
    if (latest->of.mm_per_m == view().mm_per_m) {
        const double ratio = devicePixelRatioF();
        painter.drawImage(QPointF{on_pixel(place.left(), ratio), on_pixel(place.top(), ratio)},
                          latest->image);
    } else {
        painter.drawImage(place, latest->image);
    }
}

/// What is not in the picture: what is dragged, until a picture has it again, and what would be
/// made.
void Floor::paint_live(QPainter& painter) {
    const MarkInk ink{view(), bench_->theme};
    for (const std::vector<Vec2>& walk : walks_) {
        paint_walk(painter, ink, walk);
    }
    PictureWanted of = wanted();
    if (picture_->latest()) {
        of.lifted.insert(picture_->latest()->of.lifted.begin(),
                         picture_->latest()->of.lifted.end());
    }
    live_->paint(painter, view(), of);
    if (bench_->ghost_plan() != nullptr) {
        of.plan = bench_->ghost_plan();
        of.lifted.clear();
        for (const edit::Thing& ghost : bench_->ghosts()) {
            of.lifted.insert(ghost.name);
        }
        painter.setOpacity(kGhostStrength);
        ghost_->paint(painter, view(), of);
        painter.setOpacity(1.0);
    }
}

void Floor::paint_choices(QPainter& painter) {
    const std::vector<edit::Thing>& chosen = desk_.chosen();
    const std::vector<Polygon>& outlines = bench_->outlines();
    const MarkInk ink{view(), bench_->theme};
    for (std::size_t i = 0; i < outlines.size(); ++i) {
        if (chosen.size() > kMostWithHalo) {
            paint_under_pointer(painter, ink, outlines[i]);
        } else {
            paint_choice(painter, ink, outlines[i], edit::is_locked(*desk_.plan(), chosen[i]));
        }
    }
}

void Floor::paint_finding(QPainter& painter) const {
    const AnalysisPtr analysis = desk_.analysis();
    const int index = desk_.finding_pointed_at();
    if (analysis == nullptr || index < 0 || index >= static_cast<int>(analysis->findings.size())) {
        return;
    }
    const checks::Finding& finding = analysis->findings[static_cast<std::size_t>(index)];
    paint_pointed_at(painter, {view(), bench_->theme}, finding.at,
                     severity_hue(finding.severity, bench_->theme));
}

void Floor::paint_words(QPainter& painter) const {
    if (pointer_by_keys_ && hand_id_ != HandId::choose) {
        painter.setPen(QPen{choice_hue(bench_->theme), 1.2});
        painter.drawLine(QLineF{pointer_px_ - QPointF{9, 0}, pointer_px_ + QPointF{9, 0}});
        painter.drawLine(QLineF{pointer_px_ - QPointF{0, 9}, pointer_px_ + QPointF{0, 9}});
    }
    if (typed_->isVisible()) {
        return;
    }
    if (!bench_->refusal().isEmpty()) {
        paint_slip(painter, bench_->theme, pointer_px_, {bench_->refusal()}, view().window_px,
                   true);
    } else if (!bench_->words().isEmpty()) {
        paint_slip(painter, bench_->theme, pointer_px_, bench_->words(), view().window_px, false);
    }
}

} // namespace throwline::ui
