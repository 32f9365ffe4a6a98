#pragma once

#include "ui/card_panel/field_editor.h"

#include <QLineEdit>

namespace throwline::ui {

/// A field of the card in one line: a word with a line under it, typed into where it stands. Bad
/// text stays, its line broken, until it is put right or left with Escape.
class FieldEdit : public QLineEdit, public FieldEditor {
    Q_OBJECT

  public:
    explicit FieldEdit(const card::Field& field, QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

    QString text_now() const override { return text(); }
    void put_text(const QString& text) override;
    void put_placeholder(const QString& words) override { setPlaceholderText(words); }
    int cursor() const override { return cursorPosition(); }
    void put_cursor(int at) override { setCursorPosition(at); }

  private:
    void offer_choices();
    bool key_of_list(const QKeyEvent& event);
    void nudge(int steps);

    card::FieldKind kind_;
    QStringList choices_;
};

} // namespace throwline::ui
