#pragma once

#include "survey/network.h"

namespace throwline::survey {

/// How a shape is brought to fit its readings.
struct SettleOptions {
    /// Scale of Cauchy's loss in standard errors: readings that miss by much more hardly pull. 0 is
    /// least squares.
    double cauchy_scale = 0.0;
    int most_rounds = 60;
    /// Settled once no coordinate moves by more than this.
    double stop_m = 1e-10;
};

struct Settling {
    /// In the datum.
    std::vector<Vec2> points;
    /// Weighted sum of squares, or Cauchy's loss in its place.
    double loss = 0.0;
    int rounds = 0;
    bool settled = false;
};

/// Gauss-Newton, damped (Levenberg and Marquardt) where a full step does not lower the loss; it
/// stays put where nothing pulls, so that readings that do not determine the shape do no harm.
Settling settle(const Network& network, std::span<const Vec2> start,
                const SettleOptions& options = {});

} // namespace throwline::survey
