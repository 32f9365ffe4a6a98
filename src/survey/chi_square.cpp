#include "survey/adjust.h"

#include <cmath>
#include <limits>

namespace throwline::survey {
namespace {

constexpr int kMostTerms = 10000;
constexpr double kRounding = 1e-15;

/// Regularised lower incomplete gamma function by its series (Abramowitz and Stegun 6.5.29).
double gamma_by_series(double a, double x) {
    double term = 1.0 / a;
    double sum = term;
    for (int n = 1; n < kMostTerms && term > sum * kRounding; ++n) {
        term *= x / (a + n);
        sum += term;
    }
    return sum * std::exp(a * std::log(x) - x - std::lgamma(a));
}

/// 1 - the same by its continued fraction (Abramowitz and Stegun 6.5.31), evaluated forwards
/// (Lentz's method).
double gamma_by_fraction(double a, double x) {
    constexpr double kTiny = std::numeric_limits<double>::min() / kRounding;
    double b = x + 1.0 - a;
    double c = 1.0 / kTiny;
    double d = 1.0 / b;
    double value = d;
    for (int n = 1; n < kMostTerms; ++n) {
        const double factor = -n * (n - a);
        b += 2.0;
        d = 1.0 / (factor * d + b);
        c = b + factor / c;
        value *= c * d;
        if (std::abs(c * d - 1.0) < kRounding) {
            break;
        }
    }
    return value * std::exp(a * std::log(x) - x - std::lgamma(a));
}

double chi_square_probability(double value, double degrees) {
    const double a = degrees / 2.0;
    const double x = value / 2.0;
    return x < a + 1.0 ? gamma_by_series(a, x) : 1.0 - gamma_by_fraction(a, x);
}

} // namespace

double chi_square_quantile(double probability, int degrees_of_freedom) {
    if (!(probability > 0.0) || degrees_of_freedom < 1) {
        return 0.0;
    }
    const double degrees = degrees_of_freedom;
    double low = 0.0;
    double high = degrees + 1.0;
    while (chi_square_probability(high, degrees) < probability && std::isfinite(high)) {
        low = high;
        high *= 2.0;
    }
    // Halving is slow and sure; sixty steps exhaust a double.
    for (int step = 0; step < 64; ++step) {
        const double middle = (low + high) / 2.0;
        (chi_square_probability(middle, degrees) < probability ? low : high) = middle;
    }
    return (low + high) / 2.0;
}

} // namespace throwline::survey
