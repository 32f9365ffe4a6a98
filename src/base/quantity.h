#pragma once

#include <compare>
#include <numbers>

namespace throwline {

/// A length, held in metres. The only way in or out names the unit, so a focal length in
/// millimetres and a distance in metres cannot be swapped unnoticed.
class Length {
  public:
    constexpr Length() = default;
    static constexpr Length metres(double value) { return Length{value}; }
    static constexpr Length millimetres(double value) { return Length{value / 1000.0}; }
    /// 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
    /// Written as whole numbers, so that any multiple of 1/64 in is rounded once and gives the same
    /// double as the text that names it.
    static constexpr Length inches(double value) { return Length{value * 127.0 / 5000.0}; }
    static constexpr Length feet(double value) { return Length{value * 381.0 / 1250.0}; }

    constexpr double m() const { return metres_; }
    constexpr double mm() const { return metres_ * 1000.0; }
    constexpr double in() const { return metres_ / 0.0254; }
    constexpr double ft() const { return metres_ / 0.3048; }

    constexpr auto operator<=>(const Length&) const = default;
    constexpr Length operator-() const { return Length{-metres_}; }
    constexpr Length operator+(Length other) const { return Length{metres_ + other.metres_}; }
    constexpr Length operator-(Length other) const { return Length{metres_ - other.metres_}; }
    constexpr Length operator*(double factor) const { return Length{metres_ * factor}; }
    constexpr Length operator/(double divisor) const { return Length{metres_ / divisor}; }
    constexpr double operator/(Length other) const { return metres_ / other.metres_; }
    constexpr Length& operator+=(Length other) {
        metres_ += other.metres_;
        return *this;
    }

  private:
    constexpr explicit Length(double metres) : metres_{metres} {}
    double metres_ = 0.0;
};

/// A plane angle, held in radians, anticlockwise from +x unless a name says otherwise.
class Angle {
  public:
    constexpr Angle() = default;
    static constexpr Angle radians(double value) { return Angle{value}; }
    static constexpr Angle degrees(double value) {
        return Angle{value * (std::numbers::pi / 180.0)};
    }

    constexpr double rad() const { return radians_; }
    constexpr double deg() const { return radians_ * (180.0 / std::numbers::pi); }

    constexpr auto operator<=>(const Angle&) const = default;
    constexpr Angle operator-() const { return Angle{-radians_}; }
    constexpr Angle operator+(Angle other) const { return Angle{radians_ + other.radians_}; }
    constexpr Angle operator-(Angle other) const { return Angle{radians_ - other.radians_}; }
    constexpr Angle operator*(double factor) const { return Angle{radians_ * factor}; }
    constexpr Angle operator/(double divisor) const { return Angle{radians_ / divisor}; }

  private:
    constexpr explicit Angle(double radians) : radians_{radians} {}
    double radians_ = 0.0;
};

/// The system in which lengths are shown and bare drawing scales are chosen.
enum class UnitSystem { metric, imperial };

} // namespace throwline
