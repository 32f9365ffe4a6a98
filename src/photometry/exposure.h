#pragma once

#include "base/quantity.h"
#include "base/working.h"

#include <optional>

namespace throwline::photometry {

/// Incident-light calibration constant for a flat receptor: 240-400, 250 usual; for a hemispherical
/// one 320-540, 340 usual. ISO 2720:1974, ranges from memory.
inline constexpr double kFlatReceptorConstant = 250.0;
inline constexpr double kHemisphericalReceptorConstant = 340.0;
/// What the trade form fc = 25 T^2 / (S t) amounts to: 25 / 0.3048^2.
inline constexpr double kFootCandleRuleConstant = 25.0 / (0.3048 * 0.3048);

/// How a camera is set to take light. All > 0.
struct ExposureSetting {
    double iso = 800.0;
    double exposure_s = 1.0 / 48.0;
    double calibration = kFlatReceptorConstant;
};

/// Exposure time of a rotary shutter: angle / (360 fps).
double shutter_time_s(Angle shutter, double frames_per_s);

/// Level that a stop (T-number) asks for: E = C N^2 / (S t). ISO 2720:1974 incident form.
double illuminance_for_stop_lx(const ExposureSetting& setting, double stop);
/// Stop that a level asks for: N = sqrt(E S t / C). Empty without light.
std::optional<double> stop_for_illuminance(const ExposureSetting& setting, double illuminance_lx);
/// How far a level lies above what the stop asks for, in stops; negative is under. Empty without
/// light.
std::optional<double> stops_over(const ExposureSetting& setting, double stop,
                                 double illuminance_lx);

/// Level for an exposure value at ISO 100: 2.5 2^EV for C = 250.
double illuminance_for_ev100_lx(double exposure_value);

Working illuminance_for_stop_working(const ExposureSetting& setting, double stop);
Working stop_for_illuminance_working(const ExposureSetting& setting, double illuminance_lx);

} // namespace throwline::photometry
