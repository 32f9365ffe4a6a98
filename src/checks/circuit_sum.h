#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <vector>

/// What the lamps of a circuit draw: for the check, and for the lists that show the same figures.
namespace throwline::checks {

/// Protection for at least 125 % of a continuous load means planning to 80 % of the breaker.
/// NFPA 70 (NEC) 210.20(A), from code summaries.
inline constexpr double kContinuousShare = 0.8;
/// Sums of quotients stray from a limit that they meet by no more than this.
inline constexpr double kCurrentRounding_a = 1e-9;

struct CircuitSum {
    double power_w = 0.0;
    double current_a = 0.0;
    /// In the order of the plan. A lamp whose instrument the catalogue does not know is left out.
    std::vector<const plan::Lamp*> lamps;
};

/// What one lamp draws at full from a supply: P / (V pf).
double current_a(const catalogue::Instrument& instrument, double volts);

/// All lamps of the circuit at full, whichever beats they burn in.
CircuitSum sum_of(const plan::Circuit& circuit, const plan::Plan& plan,
                  const catalogue::Catalogue& catalogue);

/// What may be planned on a circuit: its breaker, or 80 % of that for loads that stay on.
double allowed_a(const plan::Circuit& circuit);

} // namespace throwline::checks
