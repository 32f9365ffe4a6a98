#pragma once

#include "edit/make.h"

#include <QWidget>
#include <optional>

class QComboBox;
class QPushButton;

namespace throwline::ui {

class LengthField;

/// Size of a studio and of its pipe grid.
class StudioForm : public QWidget {
    Q_OBJECT

  public:
    explicit StudioForm(QWidget* parent = nullptr);

    UnitSystem units() const;
    /// Nothing while a field holds no length.
    std::optional<edit::Studio> studio() const;

  Q_SIGNALS:
    void make_wanted();

  private:
    void take_units();
    void look();

    QComboBox* units_;
    LengthField* width_ = nullptr;
    LengthField* depth_ = nullptr;
    LengthField* height_ = nullptr;
    LengthField* grid_height_ = nullptr;
    LengthField* pitch_ = nullptr;
    QPushButton* make_;
};

} // namespace throwline::ui
