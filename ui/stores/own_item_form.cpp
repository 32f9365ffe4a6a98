#include "ui/stores/own_item_form.h"

#include "base/words.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <fmt/format.h>
#include <stdexcept>

namespace throwline::ui {

namespace {

/// More are asked in two columns, so that the form fits a small screen.
constexpr std::size_t kMostInAColumn = 9;
constexpr int kGapOfColumns_px = 24;

QString text(std::string_view words) {
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

std::string said_by(const QWidget& editor) {
    if (const auto* list = qobject_cast<const QComboBox*>(&editor)) {
        return list->currentData().toString().toStdString();
    }
    return qobject_cast<const QLineEdit*>(&editor)->text().toStdString();
}

QComboBox* list_of(const card::OwnField& field, const QString& value, QWidget* parent) {
    auto* list = new QComboBox{parent};
    if (field.kind == card::OwnKind::yes_no) {
        list->addItem(OwnItemForm::tr("yes"), QStringLiteral("yes"));
        list->addItem(OwnItemForm::tr("no"), QStringLiteral("no"));
    }
    for (const card::OwnChoice& choice : field.choices) {
        list->addItem(text(choice.words), text(choice.value));
    }
    list->setCurrentIndex(std::max(0, list->findData(value)));
    return list;
}

} // namespace

OwnItemForm::OwnItemForm(catalogue::OwnRow row, Asks asks, UnitSystem units, Keep keep,
                         QWidget* parent)
    : QDialog{parent}, row_{std::move(row)}, units_{units}, keep_{std::move(keep)} {
    const bool is_new = asks == Asks::for_a_new_one;
    setWindowTitle(is_new ? tr("Own item") : tr("Own item: %1").arg(text(row_.name())));
    if (is_new) {
        row_.set("name", std::string{});
    }
    rows_ = new QVBoxLayout{this};
    if (is_new) {
        add_kinds();
    }
    why_ = new QLabel{this};
    why_->setWordWrap(true);
    why_->hide();
    rows_->addWidget(why_);
    add_buttons();
    ask();
}

void OwnItemForm::add_kinds() {
    auto* label = new QLabel{tr("&Kind"), this};
    kinds_ = new QComboBox{this};
    kinds_->setAccessibleName(tr("Kind"));
    for (const card::OwnTable& table : card::own_tables()) {
        kinds_->addItem(text(table.words), text(table.table));
    }
    kinds_->setCurrentIndex(kinds_->findData(text(row_.table)));
    label->setBuddy(kinds_);
    auto* line = new QHBoxLayout;
    line->addWidget(label);
    line->addWidget(kinds_, 1);
    rows_->addLayout(line);
    connect(kinds_, &QComboBox::activated, this,
            [this] { set_table(kinds_->currentData().toString().toStdString()); });
}

void OwnItemForm::add_buttons() {
    auto* buttons = new QDialogButtonBox{this};
    keep_button_ = buttons->addButton(tr("Keep"), QDialogButtonBox::AcceptRole);
    leave_button_ = buttons->addButton(tr("Leave it"), QDialogButtonBox::RejectRole);
    rows_->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &OwnItemForm::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &OwnItemForm::reject);
}

void OwnItemForm::set_table(std::string_view table) {
    if (table == row_.table) {
        return;
    }
    catalogue::OwnRow other{std::string{table}};
    // What it is called is known whatever it is.
    if (const std::string name = said_by(field("name")); !name.empty()) {
        other.set("name", name);
    }
    row_ = std::move(other);
    why_->hide();
    ask();
    adjustSize();
}

/// Asks for every field of the row's table.
void OwnItemForm::ask() {
    delete fields_;
    asked_.clear();
    fields_ = new QWidget{this};
    auto* grid = new QGridLayout{fields_};
    grid->setContentsMargins(0, 0, 0, 0);
    const std::span<const card::OwnField> fields = card::own_table(row_.table).fields;
    const std::size_t columns = fields.size() > kMostInAColumn ? 2 : 1;
    const std::size_t in_a_column = (fields.size() + columns - 1) / columns;
    for (std::size_t i = 0; i < fields.size(); ++i) {
        const card::OwnField& field = fields[i];
        QWidget* editor = editor_of(field, fields_);
        auto* label = new QLabel{text(field.words), fields_};
        label->setBuddy(editor);
        const int row = static_cast<int>(i % in_a_column);
        const int column = 3 * static_cast<int>(i / in_a_column);
        grid->addWidget(label, row, column);
        grid->addWidget(editor, row, column + 1);
        asked_.push_back({&field, editor});
    }
    if (columns > 1) {
        grid->setColumnMinimumWidth(2, kGapOfColumns_px);
    }
    rows_->insertWidget(kinds_ == nullptr ? 0 : 1, fields_);
    put_in_tab_order();
    asked_.front().editor->setFocus();
}

/// As one reads: the fields were made after what stands below them.
void OwnItemForm::put_in_tab_order() {
    QWidget* before = kinds_;
    for (const Asked& asked : asked_) {
        if (before != nullptr) {
            setTabOrder(before, asked.editor);
        }
        before = asked.editor;
    }
    setTabOrder(before, keep_button_);
    setTabOrder(keep_button_, leave_button_);
}

QWidget* OwnItemForm::editor_of(const card::OwnField& field, QWidget* parent) {
    const QString value = text(card::shown_value(field, row_, units_));
    const bool is_list = field.kind == card::OwnKind::choice || field.kind == card::OwnKind::yes_no;
    QWidget* editor = is_list ? static_cast<QWidget*>(list_of(field, value, parent))
                              : new QLineEdit{value, parent};
    editor->setObjectName(text(field.key));
    editor->setAccessibleName(text(field.words));
    const QString tip = field.tip.empty() && field.kind == card::OwnKind::length
                            ? tr("In any unit; metres, feet and inches")
                            : text(field.tip);
    editor->setToolTip(tip);
    editor->setAccessibleDescription(tip);
    return editor;
}

QWidget& OwnItemForm::field(const char* key) const {
    const auto found = std::find_if(asked_.begin(), asked_.end(),
                                    [&](const Asked& asked) { return asked.field->key == key; });
    if (found == asked_.end()) {
        throw std::logic_error{"the form does not ask for this"};
    }
    return *found->editor;
}

QLineEdit& OwnItemForm::line(const char* key) const {
    auto* line = qobject_cast<QLineEdit*>(&field(key));
    if (line == nullptr) {
        throw std::logic_error{"this is not typed into a line"};
    }
    return *line;
}

void OwnItemForm::refuse(const Error& error) {
    std::string why = error.message;
    for (const Asked& asked : asked_) {
        if (error.place.pointer == fmt::format("/{}", asked.field->key)) {
            why = fmt::format("{}: {}", asked.field->words, error.message);
            asked.editor->setFocus();
        }
    }
    why_->setText(text(capitalised(why)));
    why_->show();
}

void OwnItemForm::accept() {
    catalogue::OwnRow row = row_;
    for (const Asked& asked : asked_) {
        const auto put = card::put_value(row, *asked.field, said_by(*asked.editor), units_);
        if (!put) {
            refuse(put.error());
            return;
        }
    }
    if (const Checked<void> kept = keep_(row); !kept) {
        refuse(kept.error().front());
        return;
    }
    QDialog::accept();
}

} // namespace throwline::ui
