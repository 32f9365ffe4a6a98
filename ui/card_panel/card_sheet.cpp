#include "ui/card_panel/card_sheet.h"

#include "ui/card_panel/field_editor.h"
#include "ui/card_panel/flow_layout.h"
#include "ui/look/look.h"

#include <QLabel>
#include <QShortcut>
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
    card_ = card;
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
        add_field(row, *field);
    } else {
        add_figure(row, std::get<card::Figure>(piece));
    }
}

void CardSheet::add_field(QWidget& row, const card::Field& field) {
    FieldEditor* edit = editor_for(field, &row);
    row.layout()->addWidget(&edit->widget());
    const QString key = edit->key();
    editors_[key] = edit;
    edit->set_hearer({[this, key](const QString& text) { Q_EMIT typed(key, text); },
                      [this, &row](const QString& why) { tell(why, row); },
                      [this, key] { show_working_of(key); }});
}

void CardSheet::add_figure(QWidget& row, const card::Figure& figure) {
    auto* button = new QToolButton{&row};
    button->setText(QString::fromStdString(figure.value));
    button->setObjectName(QString::fromStdString(figure.key));
    button->setAutoRaise(true);
    button->setShortcut({});
    button->setFocusPolicy(Qt::StrongFocus);
    button->setToolTip(tr("Show the working (F2)"));
    button->setAccessibleName(
        tr("%1: %2, show the working").arg(QString::fromStdString(figure.label), button->text()));
    button->setStyleSheet(QStringLiteral("QToolButton { border: none; font-weight: bold;"
                                         " padding: 1px 3px; }"));
    row.layout()->addWidget(button);
    const QString key = button->objectName();
    connect(button, &QToolButton::clicked, this, [this, key] { show_working_of(key); });
    auto* f2 = new QShortcut{QKeySequence{Qt::Key_F2}, button};
    f2->setContext(Qt::WidgetShortcut);
    connect(f2, &QShortcut::activated, this, [this, key] { show_working_of(key); });
    figures_[key] = button;
}

void CardSheet::show_values(const card::Card& card) {
    card_ = card;
    for (const card::Sentence& sentence : card.sentences) {
        for (const card::Piece& piece : sentence.pieces) {
            if (const auto* field = std::get_if<card::Field>(&piece)) {
                if (FieldEditor* edit = editor(QString::fromStdString(field->key))) {
                    edit->show_value(*field);
                }
            }
        }
    }
}

FieldEditor* CardSheet::editor(const QString& key) const {
    const auto found = editors_.find(key);
    return found == editors_.end() ? nullptr : found->second;
}

std::map<QString, FieldEditor::Unfinished> CardSheet::unfinished() const {
    std::map<QString, FieldEditor::Unfinished> all;
    for (const auto& [key, edit] : editors_) {
        if (auto typed = edit->unfinished()) {
            all.emplace(key, std::move(*typed));
        }
    }
    return all;
}

void CardSheet::refuse(const QString& key, const QString& why) {
    if (FieldEditor* edit = editor(key)) {
        edit->refuse(why);
    }
}

QString CardSheet::told() const {
    return told_->isHidden() ? QString{} : told_->text();
}

void CardSheet::tell(const QString& why, QWidget& under) {
    if (why.isEmpty()) {
        told_->hide();
        return;
    }
    told_->setText(QStringLiteral("\u2191 ") + why);
    QPalette inks = palette();
    inks.setColor(QPalette::WindowText, paint::line_hue(sheet::Ink::error, theme_of(palette())));
    told_->setPalette(inks);
    rows_->removeWidget(told_);
    rows_->insertWidget(rows_->indexOf(&under) + 1, told_);
    told_->show();
}

void CardSheet::show_working_of(const QString& key) {
    const std::string wanted = key.toStdString();
    if (const card::Field* field = card::field(card_, wanted)) {
        if (field->working) {
            show_working(wanted, field->working(), *editor(key)->widget().parentWidget());
        } else {
            tell(tr("Nothing more is known about this value."),
                 *editor(key)->widget().parentWidget());
        }
    } else if (const card::Figure* figure = card::figure(card_, wanted)) {
        show_working(wanted, figure->working(), *figures_.at(key)->parentWidget());
    }
}

void CardSheet::show_working(const std::string& key, const Working& working, QWidget& under) {
    const QString name = QStringLiteral("working");
    if (QWidget* shown = findChild<QWidget*>(name, Qt::FindDirectChildrenOnly)) {
        const bool same = shown->property("figure").toString().toStdString() == key;
        delete shown;
        if (same) {
            return;
        }
    }
    auto* slip = new QLabel{working_html(working), this};
    slip->setObjectName(name);
    slip->setProperty("figure", QString::fromStdString(key));
    slip->setWordWrap(true);
    slip->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    slip->setMargin(8);
    slip->setFrameShape(QFrame::Box);
    slip->setAccessibleName(tr("Working"));
    rows_->insertWidget(rows_->indexOf(&under) + 1, slip);
}

} // namespace throwline::ui
