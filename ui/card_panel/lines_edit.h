#pragma once

#include "ui/card_panel/field_editor.h"

#include <QPlainTextEdit>

namespace throwline::ui {

/// A field of the card that holds several lines, a note or an item on each, as tall as its text.
/// Enter begins another line; leaving it, or Ctrl+Enter, takes what was typed.
class LinesEdit : public QPlainTextEdit, public FieldEditor {
    Q_OBJECT

  public:
    explicit LinesEdit(const card::Field& field, QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    /// All lines are shown, as they are broken at that width.
    int heightForWidth(int width) const override;

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    /// There is nothing to scroll here; the card scrolls.
    void wheelEvent(QWheelEvent* event) override;

    QString text_now() const override { return toPlainText(); }
    void put_text(const QString& text) override { setPlainText(text); }
    void put_placeholder(const QString& words) override { setPlaceholderText(words); }
    int cursor() const override { return textCursor().position(); }
    void put_cursor(int at) override {
        QTextCursor there{document()};
        there.setPosition(qMin(at, document()->characterCount() - 1));
        setTextCursor(there);
    }
};

} // namespace throwline::ui
