#pragma once

#include "card/own_item.h"

#include <QDialog>
#include <functional>
#include <vector>

class QBoxLayout;
class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace throwline::ui {

/// Asks for an item of one's own: what kind of thing it is and every figure that the program
/// reckons with.
class OwnItemForm : public QDialog {
    Q_OBJECT

  public:
    /// Tries to keep a row. What is wrong has the key as its place where it is about one; the form
    /// then stays and says it.
    using Keep = std::function<Checked<void>(const catalogue::OwnRow&)>;
    enum class Asks { for_a_new_one, for_changes };

    /// A new one begins with the values of `row` but no name, and its kind may be chosen.
    OwnItemForm(catalogue::OwnRow row, Asks asks, UnitSystem units, Keep keep, QWidget* parent);

    /// Where a key is asked for: a QLineEdit or a QComboBox. Throws
    /// std::logic_error for a key that the form does not ask for.
    QWidget& field(const char* key) const;
    /// The line of a key. Throws std::logic_error as well where the form has a list instead.
    QLineEdit& line(const char* key) const;
    /// Asks for a row of another table from here on.
    void set_table(std::string_view table);
    void accept() override;

  private:
    struct Asked {
        const card::OwnField* field = nullptr;
        QWidget* editor = nullptr;
    };

    void add_kinds();
    void add_buttons();
    void ask();
    void put_in_tab_order();
    QWidget* editor_of(const card::OwnField& field, QWidget* parent);
    void refuse(const Error& error);

    catalogue::OwnRow row_;
    UnitSystem units_;
    Keep keep_;
    QBoxLayout* rows_ = nullptr;
    QComboBox* kinds_ = nullptr;
    QWidget* fields_ = nullptr;
    QLabel* why_ = nullptr;
    QPushButton* keep_button_ = nullptr;
    QPushButton* leave_button_ = nullptr;
    std::vector<Asked> asked_;
};

} // namespace throwline::ui
