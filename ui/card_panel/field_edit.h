#pragma once

#include "card/card.h"

#include <QLineEdit>

namespace throwline::ui {

/// A field of the card: a word with a line under it, typed into where it stands. Bad text stays,
/// its line broken, until it is put right or left with Escape.
class FieldEdit : public QLineEdit {
    Q_OBJECT

  public:
    explicit FieldEdit(const card::Field& field, QWidget* parent = nullptr);

    const QString& key() const { return key_; }
    /// Shows another value, unless somebody is typing.
    void show(const card::Field& field);
    void refuse(const QString& why);
    bool is_refused() const { return !refusal_.isEmpty(); }
    bool is_being_typed() const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    void typed(const QString& key, const QString& text);
    void refused(const QString& why);
    void working_wanted(const QString& key);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    void commit();
    void restore();
    void nudge(int steps);
    void offer();

    QString key_;
    QString value_;
    QString refusal_;
    card::FieldKind kind_;
    QStringList choices_;
};

} // namespace throwline::ui
