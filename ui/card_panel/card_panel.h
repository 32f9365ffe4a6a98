#pragma once

#include "card/card.h"
#include "ui/desk/desk.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QScrollArea;

namespace throwline::ui {

class CardSheet;

/// What is chosen, in sentences; the underlined words are typed into.
class CardPanel : public QWidget {
    Q_OBJECT

  public:
    explicit CardPanel(Desk& desk, QWidget* parent = nullptr);

    /// The editor of a field, by its key; null when the card has none such.
    QWidget* editor(const QString& key) const;
    /// Why what was typed last was refused; empty when it was taken.
    QString told() const;
    /// The words as they stand, for tests.
    std::string text() const { return card::as_text(card_); }

  protected:
    void focusInEvent(QFocusEvent* event) override;

  private:
    void look();
    void lay_sheet();
    void take(const QString& key, const QString& text);
    void put_stops_in_order();

    Desk& desk_;
    card::Card card_;
    QLabel* title_;
    QScrollArea* scroll_;
    CardSheet* sheet_ = nullptr;
    /// What was chosen when the sheet was laid.
    std::vector<edit::Thing> laid_for_;
    /// Several signals of one change make one new card.
    QTimer soon_;
};

} // namespace throwline::ui
