#include "photometry/beam_model.h"

#include "base/length_text.h"
#include "photometry/intensity_distribution.h"
#include "photometry/words.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::photometry {

namespace {

constexpr Angle kWidestAngle = Angle::degrees(180.0);

Angle widened(Angle angle, double spread) {
    return std::max(angle, std::min(angle * spread, kWidestAngle));
}

double geometric(double from, double to, double share) {
    // A peak of 0 has no logarithm; such a lamp is dark at every focus.
    return from <= 0.0 || to <= 0.0 ? 0.0 : from * std::pow(to / from, share);
}

} // namespace

double edge_exponent(const BeamModel& model) {
    const double ratio = model.field.rad() / model.beam.rad();
    if (ratio <= 1.0) {
        return kSteepestExponent;
    }
    return std::min(kSteepestExponent, std::log(std::log2(10.0)) / std::log(ratio));
}

double intensity_cd(const BeamModel& model, Angle off_axis) {
    return IntensityDistribution(model).at_angle_cd(off_axis.rad());
}

double flux_lm(const BeamModel& model) {
    // Simpson's rule, as far as there is a billionth of the peak left.
    const IntensityDistribution distribution(model);
    const double end_rad = distribution.half_angle_rad(1e-9);
    constexpr int kSteps = 4000;
    const double step_rad = end_rad / kSteps;
    double sum = 0.0;
    for (int i = 0; i <= kSteps; ++i) {
        const double angle_rad = i * step_rad;
        const double weight = i == 0 || i == kSteps ? 1.0 : (i % 2 == 1 ? 4.0 : 2.0);
        sum += weight * distribution.at_angle_cd(angle_rad) * std::sin(angle_rad);
    }
    return 2.0 * std::numbers::pi * sum * step_rad / 3.0;
}

BeamModel beam_at_focus(const catalogue::Instrument& instrument, double focus) {
    const catalogue::BeamSetting& spot = instrument.spot;
    const catalogue::BeamSetting& flood = instrument.flood;
    const double share = std::clamp(focus, 0.0, 1.0);
    return {geometric(spot.peak_cd, flood.peak_cd, share),
            spot.beam + (flood.beam - spot.beam) * share,
            spot.field + (flood.field - spot.field) * share};
}

double dimmer_share(double level) {
    const double held = std::clamp(level, 0.0, 1.0);
    return held * held;
}

BeamModel dimmed(BeamModel model, double level) {
    model.peak_cd *= dimmer_share(level);
    return model;
}

BeamModel filtered(const BeamModel& model, const catalogue::Filter& filter) {
    BeamModel behind{model.peak_cd * filter.transmission, widened(model.beam, filter.spread),
                     widened(model.field, filter.spread)};
    if (behind.beam == model.beam && behind.field == model.field) {
        return behind;
    }
    const double widened_lm = flux_lm(behind);
    if (widened_lm > 0.0) {
        behind.peak_cd *= flux_lm(model) * filter.transmission / widened_lm;
    }
    return behind;
}

BeamModel filtered(BeamModel model, std::span<const catalogue::Filter> filters) {
    for (const catalogue::Filter& filter : filters) {
        model = filtered(model, filter);
    }
    return model;
}

Working intensity_working(const BeamModel& model, Angle off_axis) {
    return {"I = Ip 0.5^((a / (beam / 2))^k), k = ln(log2 10) / ln(field / beam)",
            {{"Ip", "peak intensity", candela_text(model.peak_cd)},
             {"beam", "full angle to 50 %", degrees_text(model.beam)},
             {"field", "full angle to 10 %", degrees_text(model.field)},
             {"k", "edge exponent", fixed(edge_exponent(model), 3)},
             {"a", "angle off the axis", degrees_text(off_axis)}},
            candela_text(intensity_cd(model, off_axis)),
            "own smooth model through 50 % and 10 % (IES meaning of beam and field angle)"};
}

} // namespace throwline::photometry
