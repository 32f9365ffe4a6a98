#pragma once

#include "sheet/drawing.h"

#include <QImage>
#include <QWidget>

namespace throwline::ui {

/// One page on a table: the paper is white whatever the theme, drawn by the painter that prints.
class PagePreview : public QWidget {
    Q_OBJECT

  public:
    explicit PagePreview(QWidget* parent = nullptr);

    /// The drawing must live as long as it is shown; null for none.
    void show(const sheet::Drawing* page);
    void set_zoom(double zoom);
    double zoom() const { return zoom_; }

  protected:
    void paintEvent(QPaintEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    double fitting_px_per_mm() const;
    QRectF paper_rect() const;

    const sheet::Drawing* page_ = nullptr;
    /// Against the size that fits the widget.
    double zoom_ = 1.0;
    QPointF shift_;
    QPointF pressed_at_;
    /// The page as last painted, at its size in pixels.
    QImage picture_;
};

} // namespace throwline::ui
