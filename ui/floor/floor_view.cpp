#include "ui/floor/floor_view.h"

#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

// Beyond these nothing can be told apart on a screen.
constexpr double kLeast_mm_per_m = 0.2;
constexpr double kMost_mm_per_m = 1000.0;
/// A plan of one point is shown as if it were this large, metres.
constexpr double kLeastShown_m = 1.0;

double on_pixel(double px, double device_pixel_ratio) {
    return std::round(px * device_pixel_ratio) / device_pixel_ratio;
}

} // namespace

QPointF FloorView::at(const Vec2& plan_point) const {
    return origin_px + QPointF{plan_point.x() * px_per_m(), -plan_point.y() * px_per_m()};
}

Vec2 FloorView::plan_at(const QPointF& px) const {
    const QPointF from_origin = px - origin_px;
    return {from_origin.x() / px_per_m(), -from_origin.y() / px_per_m()};
}

void FloorView::zoom_about(const QPointF& px, double new_mm_per_m) {
    const Vec2 kept = plan_at(px);
    mm_per_m = std::clamp(new_mm_per_m, kLeast_mm_per_m, kMost_mm_per_m);
    origin_px += px - at(kept);
}

void FloorView::show(const sheet::Extent& extent, double margin_px) {
    const Vec2 size = extent.size().cwiseMax(Vec2::Constant(kLeastShown_m));
    const double width_px = std::max(window_px.width() - 2.0 * margin_px, 1.0);
    const double height_px = std::max(window_px.height() - 2.0 * margin_px, 1.0);
    const double px_a_metre = std::min(width_px / size.x(), height_px / size.y());
    mm_per_m = std::clamp(px_a_metre / px_per_mm, kLeast_mm_per_m, kMost_mm_per_m);
    const Vec2 centre = (extent.low + extent.high) / 2.0;
    origin_px += window_px.center() - at(centre);
    origin_px = QPointF{std::round(origin_px.x()), std::round(origin_px.y())};
}

void FloorView::pan(const QPointF& by_px, double device_pixel_ratio) {
    origin_px +=
        QPointF{on_pixel(by_px.x(), device_pixel_ratio), on_pixel(by_px.y(), device_pixel_ratio)};
}

sheet::Box FloorView::paper_window(double rim_share) const {
    const QPointF rim{window_px.width() * rim_share, window_px.height() * rim_share};
    const QPointF low = window_px.topLeft() - rim - origin_px;
    return {low.x() / px_per_mm, low.y() / px_per_mm,
            window_px.width() * (1.0 + 2.0 * rim_share) / px_per_mm,
            window_px.height() * (1.0 + 2.0 * rim_share) / px_per_mm};
}

} // namespace throwline::ui
