#pragma once

#include <QLayout>
#include <QList>

namespace throwline::ui {

/// A widget with this property stays on the line of the one before it: a full stop, a comma.
inline constexpr char kClings[] = "clings";

/// Words and fields one after the other, in lines as wide as there is room, like a sentence.
class FlowLayout : public QLayout {
  public:
    explicit FlowLayout(QWidget* parent);
    ~FlowLayout() override;

    void addItem(QLayoutItem* item) override;
    int count() const override;
    QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;
    Qt::Orientations expandingDirections() const override { return {}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize minimumSize() const override;
    QSize sizeHint() const override { return minimumSize(); }
    void setGeometry(const QRect& rect) override;

  private:
    /// Lays the items out in a rectangle, or only measures; returns the height.
    int lay(const QRect& rect, bool measure_only) const;

    QList<QLayoutItem*> items_;
};

} // namespace throwline::ui
