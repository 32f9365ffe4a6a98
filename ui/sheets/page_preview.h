#pragma once

#include "ui/sheets/page_painter.h"

#include <QWidget>

namespace throwline::ui {

/// One page on a table: the paper is white whatever the theme, painted as it will be printed, by a
/// thread of its own. Until that is done with a new size or place, what it painted last is shown
/// there.
class PagePreview : public QWidget {
    Q_OBJECT

  public:
    explicit PagePreview(QWidget* parent = nullptr);

    /// Null for none.
    void show(std::shared_ptr<const sheet::Drawing> page);
    void set_zoom(double zoom);
    double zoom() const { return zoom_; }
    /// Whether what is to be seen is painted.
    bool is_painted() const;
    /// Where the paper lies, logical pixels, from a whole device pixel on; there must be a page.
    QRectF paper_rect() const;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    double px_per_mm() const;
    void tell_page();
    void shift_by(const QPointF& by_px);
    PagePart wanted() const;
    void go_on();

    std::shared_ptr<const sheet::Drawing> page_;
    /// Against the size that fits the widget.
    double zoom_ = 1.0;
    QPointF shift_;
    QPointF pressed_at_;
    PagePainter painter_;
};

} // namespace throwline::ui
