#pragma once

#include "base/quantity.h"
#include "catalogue/catalogue.h"
#include "ui/look/look.h"

#include <QWidget>

class QComboBox;
class QLabel;

namespace throwline::ui {

/// A needle towards north, and a bar of a round length at the scale of the floor.
class NorthAndBar : public QWidget {
    Q_OBJECT

  public:
    explicit NorthAndBar(QWidget* parent = nullptr);
    /// `north`: its bearing on the page, clockwise from up.
    void show_scale(double px_per_m, UnitSystem units, Angle north);
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    void paint_needle(QPainter& painter, Theme theme) const;
    void paint_bar(QPainter& painter, Theme theme) const;

    double px_per_m_ = 75.0;
    UnitSystem units_ = UnitSystem::metric;
    Angle north_;
};

/// What stands at the foot of the floor: the scale, which can be chosen or typed, what to do next,
/// north and a scale bar.
class FloorFoot : public QWidget {
    Q_OBJECT

  public:
    explicit FloorFoot(QWidget* parent = nullptr);

    /// The scales to choose from.
    void offer(const catalogue::Catalogue& catalogue, UnitSystem units);
    void show_scale(const QString& words, double px_per_m, UnitSystem units, Angle north);
    void show_hint(const QString& hint);
    QString scale() const;

  Q_SIGNALS:
    /// One was chosen or typed.
    void scale_wanted(const QString& name);
    /// The keyboard goes back to the floor.
    void done();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void elide_hint();

    QComboBox* scale_ = nullptr;
    QLabel* hint_ = nullptr;
    NorthAndBar* bar_ = nullptr;
    QString whole_hint_;
    QString words_;
};

} // namespace throwline::ui
