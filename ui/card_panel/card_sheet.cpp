#include "ui/card_panel/card_sheet.h"

#include "ui/card_panel/field_edit.h"
#include "ui/card_panel/flow_layout.h"
#include "ui/look/look.h"

#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

/// What stays the same while only values change: words that are no values, and keys.
std::string shape_of(const card::Card& card) {
    std::string shape;
    for (const card::Sentence& sentence : card.sentences) {
        shape += sentence.heading ? "#" : "\n";
        for (const card::Piece& piece : sentence.pieces) {
            if (const auto* words = std::get_if<std::string>(&piece)) {
                shape += *words;
            } else if (const auto* field = std::get_if<card::Field>(&piece)) {
                shape += "[" + field->key + "]";
            } else {
                shape += "{" + std::get<card::Figure>(piece).key + "}";
            }
        }
    }
    return shape;
}

QString working_html(const Working& working) {
    QString html =
        QStringLiteral("<b>%1</b>").arg(QString::fromStdString(working.formula).toHtmlEscaped());
    for (const WorkingTerm& term : working.inputs) {
        html += QStringLiteral("<br>%1 %2 = %3")
                    .arg(QString::fromStdString(term.symbol).toHtmlEscaped(),
                         QString::fromStdString(term.name).toHtmlEscaped(),
                         QString::fromStdString(term.value).toHtmlEscaped());
    }
    html += QStringLiteral("<br>= <b>%1</b><br><i>%2</i>")
                .arg(QString::fromStdString(working.result).toHtmlEscaped(),
                     QString::fromStdString(working.source).toHtmlEscaped());
    return html;
}

void add_words(QWidget& row, const std::string& words) {
    // A label a word, so that the line breaks where a sentence would.
    const QStringList parts =
        QString::fromStdString(words).split(QLatin1Char{' '}, Qt::SkipEmptyParts);
    for (const QString& part : parts) {
        auto* label = new QLabel{part, &row};
        const bool is_stop = QStringLiteral(",.;:").contains(part.front());
        label->setProperty(kClings, is_stop);
        label->setContentsMargins(is_stop ? 0 : 2, 0, 3, 0);
        row.layout()->addWidget(label);
    }
}

} // namespace

CardSheet::CardSheet(QWidget* parent)
    : QWidget{parent}, rows_{new QVBoxLayout{this}}, told_{new QLabel{this}} {
    rows_->setContentsMargins(12, 4, 12, 12);
    rows_->setSpacing(7);
    told_->setWordWrap(true);
    told_->hide();
}

bool CardSheet::takes(const card::Card& card) const {
    return !shape_.empty() && shape_of(card) == shape_;
}

void CardSheet::lay(const card::Card& card) {
    shape_ = shape_of(card);
    for (const card::Sentence& sentence : card.sentences) {
        add(sentence);
    }
    rows_->addStretch(1);
}

void CardSheet::add(const card::Sentence& sentence) {
    if (sentence.heading) {
        auto* label = new QLabel{
            QString::fromStdString(std::get<std::string>(sentence.pieces.front())), this};
        QFont font = label->font();
        font.setBold(true);
        label->setFont(font);
        label->setContentsMargins(2, 8, 0, 0);
        rows_->addWidget(label);
        return;
    }
    auto* row = new QWidget{this};
    new FlowLayout{row};
    for (const card::Piece& piece : sentence.pieces) {
        add_piece(*row, piece);
    }
    rows_->addWidget(row);
}

void CardSheet::add_piece(QWidget& row, const card::Piece& piece) {
    if (const auto* words = std::get_if<std::string>(&piece)) {
        add_words(row, *words);
        return;
    }
    if (const auto* field = std::get_if<card::Field>(&piece)) {
        auto* edit = new FieldEdit{*field, &row};
        row.layout()->addWidget(edit);
        editors_[edit->key()] = edit;
        connect(edit, &FieldEdit::typed, this, &CardSheet::typed);
        connect(edit, &FieldEdit::refused, this, &CardSheet::tell);
        return;
    }
    const auto& figure = std::get<card::Figure>(piece);
    auto* button = new QToolButton{&row};
    button->setText(QString::fromStdString(figure.value));
    button->setObjectName(QString::fromStdString(figure.key));
    button->setAutoRaise(true);
    button->setShortcut({});
    button->setToolTip(tr("Show the working"));
    button->setAccessibleName(tr("%1, show the working").arg(button->text()));
    button->setStyleSheet(QStringLiteral("QToolButton { border: none; font-weight: bold;"
                                         " padding: 1px 3px; }"));
    row.layout()->addWidget(button);
    connect(button, &QToolButton::clicked, this,
            [this, figure, &row] { show_working(figure, row); });
    pieces_.emplace_back(figure.key, button);
}

void CardSheet::show_values(const card::Card& card) {
    for (const card::Sentence& sentence : card.sentences) {
        for (const card::Piece& piece : sentence.pieces) {
            if (const auto* field = std::get_if<card::Field>(&piece)) {
                if (FieldEdit* edit = editor(QString::fromStdString(field->key))) {
                    edit->show(*field);
                }
            }
        }
    }
}

FieldEdit* CardSheet::editor(const QString& key) const {
    const auto found = editors_.find(key);
    return found == editors_.end() ? nullptr : found->second;
}

void CardSheet::refuse(const QString& key, const QString& why) {
    if (FieldEdit* edit = editor(key)) {
        edit->refuse(why);
    }
}

void CardSheet::tell(const QString& why) {
    auto* edit = qobject_cast<FieldEdit*>(sender());
    if (why.isEmpty() || edit == nullptr) {
        told_->hide();
        return;
    }
    told_->setText(QStringLiteral("\u2191 ") + why);
    QPalette inks = palette();
    inks.setColor(QPalette::WindowText, paint::line_hue(sheet::Ink::error, theme_of(palette())));
    told_->setPalette(inks);
    // Just under the sentence that the field stands in.
    rows_->removeWidget(told_);
    rows_->insertWidget(rows_->indexOf(edit->parentWidget()) + 1, told_);
    told_->show();
}

void CardSheet::show_working(const card::Figure& figure, QWidget& under) {
    const QString name = QStringLiteral("working");
    if (QWidget* shown = findChild<QWidget*>(name, Qt::FindDirectChildrenOnly)) {
        const bool same = shown->property("figure").toString().toStdString() == figure.key;
        delete shown;
        if (same) {
            return;
        }
    }
    auto* slip = new QLabel{working_html(figure.working()), this};
    slip->setObjectName(name);
    slip->setProperty("figure", QString::fromStdString(figure.key));
    slip->setWordWrap(true);
    slip->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    slip->setMargin(8);
    slip->setFrameShape(QFrame::Box);
    slip->setAccessibleName(tr("Working"));
    rows_->insertWidget(rows_->indexOf(&under) + 1, slip);
}

} // namespace throwline::ui
