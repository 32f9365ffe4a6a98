#pragma once

#include "card/card.h"

#include <QString>
#include <functional>
#include <optional>

class QKeyEvent;
class QPainter;
class QWidget;

namespace throwline::ui {

/// What every editor of a field of the card has: the value as it stands, what is being typed over
/// it, and why that was refused. The widget beneath only holds the text.
class FieldEditor {
  public:
    /// Whoever takes what is typed.
    struct Hearer {
        std::function<void(const QString& text)> typed;
        /// Why, in a sentence; empty when nothing is wrong any more.
        std::function<void(const QString& why)> refused;
        std::function<void()> working_wanted;
    };

    virtual ~FieldEditor() = default;

    /// `widget` is the editor itself.
    FieldEditor(const card::Field& field, QWidget& widget);
    FieldEditor(const FieldEditor&) = delete;
    FieldEditor& operator=(const FieldEditor&) = delete;

    QWidget& widget() const { return widget_; }
    const QString& key() const { return key_; }
    void set_hearer(Hearer hearer) { hearer_ = std::move(hearer); }
    /// Shows another value, unless somebody is typing.
    void show_value(const card::Field& field);
    void refuse(const QString& why);
    /// What was typed and is not in the plan: still being typed, or refused.
    struct Unfinished {
        QString text;
        QString refusal;
        bool has_keyboard = false;
        int cursor = 0;
    };
    /// Nothing when the value stands there as it is.
    std::optional<Unfinished> unfinished() const;
    /// Goes on with what was typed into another editor of the same field.
    void go_on(const Unfinished& typed);
    bool is_refused() const { return !refusal_.isEmpty(); }

  protected:
    virtual QString text_now() const = 0;
    virtual void put_text(const QString& text) = 0;
    virtual void put_placeholder(const QString& words) = 0;
    virtual int cursor() const = 0;
    virtual void put_cursor(int at) = 0;

    bool is_being_typed() const;
    void commit();
    /// Back to the value.
    void restore();
    /// Says again why it was refused, when the keyboard comes back.
    void tell_refusal() const;
    /// Keys that do the same in every editor; whether it was one.
    bool key_of_all(const QKeyEvent& event);
    /// The line under the field, which tells that it can be typed into, has the keyboard, or was
    /// refused.
    void paint_line(QPainter& painter) const;

  private:
    QWidget& widget_;
    Hearer hearer_;
    QString key_;
    QString value_;
    QString refusal_;
};

/// The editor that a field is typed into.
FieldEditor* editor_for(const card::Field& field, QWidget* parent);

} // namespace throwline::ui
