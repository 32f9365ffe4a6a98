#pragma once

#include "base/latest.h"
#include "sheet/drawing.h"

#include <QImage>
#include <QObject>
#include <QRectF>
#include <memory>
#include <thread>

namespace throwline::ui {

/// What of a page is to be seen, and how large.
struct PagePart {
    std::shared_ptr<const sheet::Drawing> page;
    /// Millimetres of paper.
    QRectF part_mm;
    /// Logical pixels a millimetre, and device pixels a logical one.
    double px_per_mm = 1.0;
    double device_pixel_ratio = 1.0;

    bool operator==(const PagePart&) const = default;
};

struct PaintedPart {
    PagePart of;
    QImage image;
};

/// Paints pages on a thread of its own; the part asked for last wins.
class PagePainter : public QObject {
    Q_OBJECT

  public:
    explicit PagePainter(QObject* parent = nullptr);
    ~PagePainter() override;

    void ask(PagePart part);
    /// The newest that was painted; its image is null before the first.
    const PaintedPart& latest() const { return latest_; }

  Q_SIGNALS:
    void painted();

  private:
    void work(const std::stop_token& stop);

    PaintedPart latest_;
    Latest<PagePart> waiting_;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
