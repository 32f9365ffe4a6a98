#pragma once

#include "card/card.h"

#include <QWidget>
#include <map>

class QLabel;
class QVBoxLayout;

namespace throwline::ui {

class FieldEdit;

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
    FieldEdit* editor(const QString& key) const;
    void refuse(const QString& key, const QString& why);

  Q_SIGNALS:
    void typed(const QString& key, const QString& text);

  private:
    void add(const card::Sentence& sentence);
    void add_piece(QWidget& row, const card::Piece& piece);
    void tell(const QString& why);
    void show_working(const card::Figure& figure, QWidget& under);

    QVBoxLayout* rows_;
    QLabel* told_;
    std::map<QString, FieldEdit*> editors_;
    std::vector<std::pair<std::string, QWidget*>> pieces_;
    std::string shape_;
};

} // namespace throwline::ui
