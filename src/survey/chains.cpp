#include "survey/chains.h"

#include "base/length_text.h"
#include "survey/adjust.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::survey {

namespace {

double variance_m2(const plan::Survey& survey, Length read) {
    const double sigma_m = tape_sigma_m(survey, read);
    return sigma_m * sigma_m;
}

std::string millimetres(Length length) {
    return fixed(length.mm(), 1) + " mm";
}

} // namespace

double tape_sigma_m(const plan::Survey& survey, Length read) {
    const Length part = Length::millimetres(survey.precision_per_metre_mm * read.m());
    return std::hypot(survey.precision.m(), part.m());
}

double chain_sigma_m(const plan::Survey& survey, const plan::Chain& chain) {
    double sum_m2 = 0.0;
    for (const plan::Stretch& stretch : chain.stretches) {
        sum_m2 += variance_m2(survey, stretch.width);
    }
    return std::sqrt(sum_m2);
}

Length chain_sum(const plan::Chain& chain) {
    Length sum;
    for (const plan::Stretch& stretch : chain.stretches) {
        sum += stretch.width;
    }
    return sum;
}

ChainFit fitted_chain(const plan::Survey& survey, const plan::Chain& chain, Length wall) {
    ChainFit fit;
    fit.read = chain_sum(chain);
    fit.wall = wall;
    fit.misclosure = wall - fit.read;
    fit.sigma_m = chain_sigma_m(survey, chain);
    fit.tolerance = Length::metres(kWrong * fit.sigma_m);
    fit.closes =
        fit.misclosure >= -fit.tolerance && (!chain.to_the_end || fit.misclosure <= fit.tolerance);
    const bool spread = chain.to_the_end && fit.closes;
    Length start;
    for (const plan::Stretch& stretch : chain.stretches) {
        const double share =
            spread ? variance_m2(survey, stretch.width) / (fit.sigma_m * fit.sigma_m) : 0.0;
        const Length width = stretch.width + fit.misclosure * share;
        fit.stretches.push_back({start, width});
        start += width;
    }
    return fit;
}

Working chain_working(const plan::Survey& survey, const plan::Chain& chain, const ChainFit& fit) {
    Working working;
    working.formula = "tolerance = 3.2905 sqrt(sum of (a² + (b L)²) over the stretches); "
                      "misclosure = wall - sum of L";
    working.inputs = {
        {"a", "fixed part of the tape's standard error", millimetres(survey.precision)},
        {"b", "its part per metre", fmt::format("{} mm", shortest(survey.precision_per_metre_mm))}};
    for (const plan::Stretch& stretch : chain.stretches) {
        working.inputs.push_back(
            {"L", stretch.name.empty() ? "stretch" : stretch.name, metres_text(stretch.width, 4)});
    }
    working.inputs.push_back({"", "wall after the adjustment", metres_text(fit.wall, 4)});
    working.result = fmt::format("misclosure {}, tolerance {}", millimetres(fit.misclosure),
                                 millimetres(fit.tolerance));
    working.source = "error propagation of independent readings (textbook); the tape's standard "
                     "error is our own choice";
    return working;
}

} // namespace throwline::survey
