#pragma once

#include "ui/floor/floor_painter.h"
#include "ui/floor/floor_view.h"

namespace throwline::ui {

/// What is drawn over the picture of the floor at every frame: what is being dragged, and what
/// would be put down. On the interface thread, so it gives up when it takes too long for a frame.
class LivePart {
  public:
    /// Part of a frame that it may take.
    static constexpr double kMost_ms = 8.0;

    /// Of a plan with the names in `lifted`, on a painter of the widget. `of.window` and scale are
    /// taken from the view.
    void paint(QPainter& painter, const FloorView& view, PictureWanted of);
    /// Whether it was quick enough; what is dragged is then shown by its outline alone.
    bool keeps_up() const { return slow_frames_ < kSlowFrames; }
    /// Something else will be drawn: it may be quicker.
    void start_anew() { slow_frames_ = 0; }
    double took_ms() const { return took_ms_; }

  private:
    /// A single slow frame may be another program's doing.
    static constexpr int kSlowFrames = 3;

    double took_ms_ = 0.0;
    int slow_frames_ = 0;
};

} // namespace throwline::ui
