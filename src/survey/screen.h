#pragma once

#include "survey/network.h"

#include <Eigen/Core>

namespace throwline::survey {

// Redundancy by which nothing can be divided: an error of a metre would show as 0.1 mm.
inline constexpr double kNoRedundancy = 1e-4;

/// Residuals in standard errors, and how an error in one reading shows in all of them, in the
/// linear model at one shape; readings can be left out of it one after the other, whatever the
/// order.
struct Screen {
    Eigen::VectorXd residual;
    Eigen::MatrixXd shows;
    double weighted_sum = 0.0;

    /// 0 where the reading has nothing to check it.
    double standardised(int observation) const;
};

/// Nothing when the readings do not determine the shape.
std::optional<Screen> screen_at(const Network& network, std::span<const Vec2> shape);
/// The same with more readings left out; one that nothing checks any more stays.
Screen left_out(Screen screen, std::span<const int> out);
Screen left_out(const Screen& screen, int out);

} // namespace throwline::survey
