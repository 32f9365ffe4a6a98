#include "ui/recce/recce_delegate.h"

#include "survey/recce_rows.h"
#include "ui/look/lozenge.h"
#include "ui/recce/recce_model.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPainter>
#include <optional>

namespace throwline::ui {

namespace {

/// How a verdict is marked; nothing for what needs no mark.
std::optional<checks::Severity> severity_of(const QModelIndex& index) {
    const QVariant verdict = index.data(RecceModel::verdict_role);
    if (!verdict.isValid()) {
        return std::nullopt;
    }
    switch (static_cast<survey::Verdict>(verdict.toInt())) {
    case survey::Verdict::wrong:
        return checks::Severity::error;
    case survey::Verdict::worth_a_look:
        return checks::Severity::caution;
    case survey::Verdict::hardly_checked:
    case survey::Verdict::not_used:
    case survey::Verdict::fine:
        break;
    }
    return std::nullopt;
}

} // namespace

RecceDelegate::RecceDelegate(QObject* parent) : QStyledItemDelegate{parent} {}

void RecceDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    QStyleOptionViewItem shown = option;
    const Theme theme = theme_of(option.palette);
    const bool is_error = index.data(RecceModel::error_role).toBool();
    const auto severity = severity_of(index);
    const int number = index.data(RecceModel::number_role).toInt();
    const bool is_verdict = index.column() == RecceModel::verdict_column;
    const bool has_lozenge = is_verdict && severity && number > 0;
    if (index.data(RecceModel::remark_role).toBool()) {
        shown.palette.setColor(QPalette::Text, paint::line_hue(sheet::Ink::note, theme));
    }
    if (is_verdict && is_error) {
        shown.palette.setColor(QPalette::Text, severity_hue(checks::Severity::error, theme));
    }
    const QSizeF size = lozenge_size(QFontMetricsF{option.font}, number);
    if (has_lozenge) {
        shown.rect.setLeft(shown.rect.left() + static_cast<int>(size.width()) + 6);
    }
    QStyledItemDelegate::paint(painter, shown, index);
    painter->save();
    if (has_lozenge) {
        painter->setFont(option.font);
        paint_lozenge(*painter,
                      QPointF{option.rect.left() + 4.0 + size.width() / 2.0,
                              QRectF{option.rect}.center().y()},
                      number, *severity, theme);
    }
    if (is_error && !is_verdict) {
        painter->setPen(QPen{severity_hue(checks::Severity::error, theme), 1.5});
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(QRectF{option.rect}.adjusted(1.5, 1.5, -1.5, -1.5));
    }
    painter->restore();
}

QWidget* RecceDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                                     const QModelIndex& index) const {
    if (index.column() == RecceModel::kind_column) {
        auto* kinds = new QComboBox{parent};
        kinds->setAccessibleName(tr("What the line tells"));
        for (const survey::RowKind kind : survey::kRowKinds) {
            const std::string_view name = survey::name_of(kind);
            kinds->addItem(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())));
        }
        return kinds;
    }
    QWidget* editor = QStyledItemDelegate::createEditor(parent, option, index);
    if (auto* field = qobject_cast<QLineEdit*>(editor)) {
        field->setPlaceholderText(index.data(Qt::ToolTipRole).toString());
        field->setAccessibleName(index.data(Qt::ToolTipRole).toString());
    }
    return editor;
}

void RecceDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    if (auto* kinds = qobject_cast<QComboBox*>(editor)) {
        kinds->setCurrentText(index.data(Qt::EditRole).toString());
        return;
    }
    QStyledItemDelegate::setEditorData(editor, index);
}

void RecceDelegate::setModelData(QWidget* editor, QAbstractItemModel* model,
                                 const QModelIndex& index) const {
    if (const auto* kinds = qobject_cast<QComboBox*>(editor)) {
        model->setData(index, kinds->currentText(), Qt::EditRole);
        return;
    }
    QStyledItemDelegate::setModelData(editor, model, index);
}

} // namespace throwline::ui
