#pragma once

#include <QLineEdit>

namespace throwline::ui {

/// A small line beside the pointer for what is typed while something is dragged or drawn.
class TypedLine : public QLineEdit {
    Q_OBJECT

  public:
    explicit TypedLine(QWidget* parent);

    /// Opens beside a place of its parent, within it.
    void open(const QPoint& near_px, const QString& text);
    /// Why what stands in it cannot be.
    void refuse(const QString& why);

  Q_SIGNALS:
    void changed(const QString& text);
    void entered(const QString& text);
    /// Without entering anything.
    void left();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;
};

} // namespace throwline::ui
