#pragma once

#include "catalogue/catalogue.h"

#include <QDialog>
#include <functional>

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;

namespace throwline::ui {

/// Asks for an item of one's own: what it is, how large, how heavy.
class OwnItemForm : public QDialog {
    Q_OBJECT

  public:
    /// `keep` tries to keep it; the sentence that it returns is shown, and the form stays, unless
    /// it is empty.
    using Keep = std::function<QString(const catalogue::StockItem&)>;

    OwnItemForm(const catalogue::StockItem& item, UnitSystem units, Keep keep, QWidget* parent);

    QLineEdit& field(const char* name) const;
    void accept() override;

  private:
    QLineEdit* add_field(QFormLayout& form, const char* name, const QString& words,
                         const QString& value, const QString& tip);
    /// Empty when a field cannot be read; it then has the keyboard, and the reason is shown.
    std::optional<catalogue::StockItem> typed();
    bool read(const char* name, Length& length);
    void refuse(const QString& why);

    catalogue::StockItem item_;
    UnitSystem units_;
    Keep keep_;
    QComboBox* use_ = nullptr;
    QComboBox* shape_ = nullptr;
    QLabel* why_ = nullptr;
};

} // namespace throwline::ui
