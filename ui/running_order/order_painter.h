#pragma once

#include "ui/look/look.h"
#include "ui/running_order/order_view.h"

class QPainter;

namespace throwline::ui {

/// What the strip shows besides its contents.
struct OrderPainting {
    const OrderView& view;
    const FramePictures& pictures;
    /// Plan whose pictures are fresh; others are dimmed.
    const plan::PlanPtr& plan;
    Theme theme = Theme::light;
    QFont font;
    std::optional<OrderMoment> now;
    /// What the keyboard stands on; none without focus.
    OrderPlace focus;
    /// What is being dragged, and where it would be put.
    OrderPlace dragged;
    std::optional<DropPlace> drop;
    int finding_pointed_at = -1;
    bool is_checking = false;
};

/// Paints what of the strip lies in `window`, in the strip's own pixels.
void paint_order(QPainter& painter, const OrderPainting& what, const QRectF& window);

} // namespace throwline::ui
