#pragma once

#include "base/vec.h"
#include "sheet/plan_frame.h"

#include <QPointF>
#include <QRectF>

/// Where the floor lies on the screen.
namespace throwline::ui {

/// Scale and place of the plan on the screen, and the part of the widget that shows it. A value.
/// Pixels are logical ones, y down; plan points are metres, y up.
struct FloorView {
    /// Logical pixels a millimetre of paper at the screen's nominal resolution.
    double px_per_mm = 96.0 / 25.4;
    /// Paper millimetres a metre of floor: 20 is 1:50.
    double mm_per_m = 20.0;
    /// Where the plan's origin is.
    QPointF origin_px;
    /// What of the widget shows the floor: without rulers and foot.
    QRectF window_px;

    double px_per_m() const { return px_per_mm * mm_per_m; }
    double metres(double px) const { return px / px_per_m(); }
    QPointF at(const Vec2& plan_point) const;
    Vec2 plan_at(const QPointF& px) const;
    Vec2 middle() const { return plan_at(window_px.center()); }

    /// Real length over drawn length: 50 at 1:50.
    double ratio() const { return 1000.0 / mm_per_m; }
    /// Another scale, with the point under `px` staying where it is; kept within 1:1 and 1:5000.
    void zoom_about(const QPointF& px, double new_mm_per_m);
    /// As large as an extent fits, with a rim of `margin_px`, and in the middle.
    void show(const sheet::Extent& extent, double margin_px);
    /// Moved by whole device pixels, so that a picture that is only shifted stays sharp.
    void pan(const QPointF& by_px, double device_pixel_ratio);
    /// What is looked at, paper millimetres, with a rim of a share of its size on each side.
    sheet::Box paper_window(double rim_share) const;
};

} // namespace throwline::ui
