#pragma once

#include "card/card.h"
#include "ui/card_panel/field_editor.h"

#include <QWidget>
#include <map>

class QLabel;
class QVBoxLayout;

namespace throwline::ui {

/// The sentences of a card laid out. Editors live on while the next card has their fields.
class CardSheet : public QWidget {
    Q_OBJECT

  public:
    explicit CardSheet(QWidget* parent = nullptr);

    /// Whether the card has the same sentences and fields as the one shown, so that only values
    /// differ.
    bool takes(const card::Card& card) const;
    void lay(const card::Card& card);
    void show_values(const card::Card& card);
    FieldEditor* editor(const QString& key) const;
    /// What is typed into it and not taken, by the key of its field.
    std::map<QString, FieldEditor::Unfinished> unfinished() const;
    void refuse(const QString& key, const QString& why);
    /// What stands under a sentence about what was typed into it; empty when nothing does.
    QString told() const;

  Q_SIGNALS:
    void typed(const QString& key, const QString& text);

  private:
    void add(const card::Sentence& sentence);
    void add_piece(QWidget& row, const card::Piece& piece);
    void add_field(QWidget& row, const card::Field& field);
    void add_figure(QWidget& row, const card::Figure& figure);
    /// Why something was refused, under the sentence that it was typed into.
    void tell(const QString& why, QWidget& under);
    void show_working_of(const QString& key);
    /// A slip with a working, or away with it when it is the one shown.
    void show_working(const std::string& key, const Working& working, QWidget& under);

    QVBoxLayout* rows_;
    QLabel* told_;
    /// As it was shown last.
    card::Card card_;
    std::map<QString, FieldEditor*> editors_;
    std::map<QString, QWidget*> figures_;
    std::string shape_;
};

} // namespace throwline::ui
