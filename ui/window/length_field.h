#pragma once

#include "base/quantity.h"

#include <QLineEdit>
#include <optional>

namespace throwline::ui {

/// A line in which a length is typed in any notation; a bare number is metres or feet as the units
/// say. What is no length stays, marked, with the reason as its tool tip.
class LengthField : public QLineEdit {
    Q_OBJECT

  public:
    LengthField(Length length, UnitSystem units, QWidget* parent = nullptr);

    /// Nothing while what stands there is no length from `least` to `most`.
    std::optional<Length> length() const;
    void set_length(Length length);
    void set_units(UnitSystem units);
    void set_range(Length least, Length most);

  Q_SIGNALS:
    void changed();

  private:
    void look();

    UnitSystem units_;
    Length least_ = Length::metres(0.0);
    Length most_ = Length::metres(1000.0);
    std::optional<Length> length_;
};

} // namespace throwline::ui
