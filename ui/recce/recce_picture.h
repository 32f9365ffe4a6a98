#pragma once

#include "sheet/drawing.h"

#include <QWidget>
#include <memory>

namespace throwline::ui {

/// The room as read, filling the widget; words while there is none.
class ReccePicture : public QWidget {
    Q_OBJECT

  public:
    explicit ReccePicture(QWidget* parent = nullptr);

    /// Size of the drawing that fills the widget, millimetres of paper.
    QSizeF size_mm() const;
    /// A drawing, and whether it is that of what is typed now.
    void show_drawing(std::shared_ptr<const sheet::Drawing> drawing, bool is_fresh);
    void show_words(const QString& words);

    QSize sizeHint() const override { return {520, 420}; }
    QSize minimumSizeHint() const override { return {240, 180}; }

  Q_SIGNALS:
    void resized();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    double px_per_mm() const;

    std::shared_ptr<const sheet::Drawing> drawing_;
    bool is_fresh_ = false;
    QString words_;
};

} // namespace throwline::ui
