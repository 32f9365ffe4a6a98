#pragma once

#include "base/quantity.h"
#include "base/working.h"
#include "catalogue/catalogue.h"

#include <span>

namespace throwline::photometry {

/// A smooth round beam, for instruments without a measured distribution.
struct BeamModel {
    double peak_cd = 0.0;
    /// Full angle between the directions of 50 % of the peak (IES meaning).
    Angle beam;
    /// Full angle between the directions of 10 % of the peak.
    Angle field;

    bool operator==(const BeamModel&) const = default;
};

/// Steepest edge that the model takes, for beams whose field is hardly wider than the beam.
inline constexpr double kSteepestExponent = 24.0;

/// k = ln(log2 10) / ln(field / beam), at most kSteepestExponent; also when field <= beam. Own
/// model, made to pass through 50 % and 10 %; field / beam = 1.82262 gives a Gaussian (k = 2).
double edge_exponent(const BeamModel& model);

/// peak 0.5^((angle / (beam / 2))^k), by the angle off the axis, 0..pi.
double intensity_cd(const BeamModel& model, Angle off_axis);

/// Luminous flux of the whole beam: integral of 2 pi I sin(angle). Within 0.01 %.
double flux_lm(const BeamModel& model);

/// An instrument's beam at a focus from 0 (spot) to 1 (flood), clamped: angles change evenly and
/// the peak by equal factors, so that widening never brightens it. Own choice.
BeamModel beam_at_focus(const catalogue::Instrument& instrument, double focus);

/// Light left by a dimmer at a level 0..1: level squared (common practice, no source). LED fixtures
/// may follow another curve.
double dimmer_share(double level);
BeamModel dimmed(BeamModel model, double level);

/// A beam behind one filter: diffusion widens beam and field by its spread (to 180 deg at most),
/// and the peak falls so that the flux changes by the transmission alone. Own model.
BeamModel filtered(const BeamModel& model, const catalogue::Filter& filter);
BeamModel filtered(BeamModel model, std::span<const catalogue::Filter> filters);

Working intensity_working(const BeamModel& model, Angle off_axis);

} // namespace throwline::photometry
