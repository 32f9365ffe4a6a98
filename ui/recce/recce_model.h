#pragma once

#include "survey/recce_told.h"

#include <QAbstractTableModel>
#include <optional>

namespace throwline::ui {

/// The lines of a recce as a table. The text is kept elsewhere: every change is asked for as a new
/// text. The last row is empty, for typing the next fact; it becomes a line once it says enough.
class RecceModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column {
        kind_column,
        from_column,
        to_column,
        reading_column,
        note_column,
        verdict_column
    };
    static constexpr int kColumns = 6;
    enum Role {
        /// int of survey::Verdict for what is marked; nothing for what is fine.
        verdict_role = Qt::UserRole,
        /// Number of the lozenge.
        number_role,
        /// bool: what the reader does not understand lies in this field.
        error_role,
        /// bool: the row says nothing about the room.
        remark_role
    };

    explicit RecceModel(QObject* parent = nullptr);

    /// Shows another text; what was said of the old one is forgotten.
    void set_text(const std::string& text);
    /// Shows what is said of the text.
    void set_told(const survey::RecceTold& told);
    const std::vector<survey::RecceRow>& recce_rows() const { return rows_; }
    /// The row that stands on a line of the text; -1 for none.
    int row_on_line(int line) const;
    /// Takes a row's line out of the text.
    void take_out(int row);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

  Q_SIGNALS:
    void text_wanted(const QString& text);

  private:
    struct Said {
        std::string error;
        survey::RowField error_field = survey::RowField::reading;
        survey::RowVerdict verdict;
    };
    const survey::RecceRow& row(int index) const;
    void change(int index, const survey::RecceRow& row);
    void tell_errors(const Errors& errors);
    QVariant words(const QModelIndex& index) const;
    QString tip(const QModelIndex& index) const;

    std::string text_;
    std::vector<survey::RecceRow> rows_;
    std::vector<Said> said_;
    /// Being typed, not yet a line.
    survey::RecceRow next_;
};

} // namespace throwline::ui
