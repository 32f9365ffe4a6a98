#pragma once

#include "base/working.h"
#include "plan/survey.h"

#include <vector>

/// A chain of readings along a wall, held against the wall. (Plain error propagation: variances of
/// independent readings add up.)
namespace throwline::survey {

/// Standard error of one reading of the survey's tape: sqrt(a² + (b L)²), metres.
double tape_sigma_m(const plan::Survey& survey, Length read);
/// Standard error of a chain's sum, metres.
double chain_sigma_m(const plan::Survey& survey, const plan::Chain& chain);
/// Sum of all stretches.
Length chain_sum(const plan::Chain& chain);

/// Where a stretch lies on its wall, from the chain's first corner.
struct StretchFit {
    Length start;
    Length width;

    bool operator==(const StretchFit&) const = default;
};

struct ChainFit {
    /// Sum as read.
    Length read;
    /// The wall after the adjustment.
    Length wall;
    /// wall - read: what is missing to the end (positive) or too much. For a chain that stops
    /// short, what was left unread; negative when it runs past the end.
    Length misclosure;
    /// Standard error of the sum, metres.
    double sigma_m = 0.0;
    /// kWrong standard errors.
    Length tolerance;
    /// The misclosure is within the tolerance, or a chain that stops short ends on its wall.
    bool closes = true;
    /// One a stretch. A chain that closes has the misclosure spread over its stretches in
    /// proportion to their variances; any other is left as read.
    std::vector<StretchFit> stretches;
};

ChainFit fitted_chain(const plan::Survey& survey, const plan::Chain& chain, Length wall);

/// How the tolerance of a chain came about, and its misclosure.
Working chain_working(const plan::Survey& survey, const plan::Chain& chain, const ChainFit& fit);

} // namespace throwline::survey
