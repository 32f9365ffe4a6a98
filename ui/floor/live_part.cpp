#include "ui/floor/live_part.h"

#include "ui/paint/fonts.h"
#include "ui/paint/painter.h"

#include <QElapsedTimer>
#include <QPainter>

namespace throwline::ui {

void LivePart::paint(QPainter& painter, const FloorView& view, PictureWanted of) {
    if (!keeps_up() || of.lifted.empty()) {
        return;
    }
    QElapsedTimer timer;
    timer.start();
    const sheet::FloorQuestion question{*of.plan,
                                        *of.catalogue,
                                        of.now.beat,
                                        of.now.shot,
                                        view.mm_per_m,
                                        view.paper_window(0.0),
                                        {},
                                        of.overlays,
                                        {},
                                        std::move(of.lifted)};
    std::optional<sheet::Drawing> drawing = sheet::floor_drawing(question, paint::FontMeasure{});
    if (drawing) {
        thicken_lines(*drawing, 1.0 / (view.px_per_mm * of.device_pixel_ratio));
        painter.save();
        painter.translate(view.origin_px);
        painter.scale(view.px_per_mm, view.px_per_mm);
        for (const sheet::Layer& layer : drawing->layers) {
            paint::paint_layer(painter, layer, of.theme, floor_ground(of.theme));
        }
        painter.restore();
    }
    took_ms_ = static_cast<double>(timer.nsecsElapsed()) / 1e6;
    slow_frames_ = took_ms_ > kMost_ms ? slow_frames_ + 1 : 0;
}

} // namespace throwline::ui
