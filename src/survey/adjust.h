#pragma once

#include "base/result.h"
#include "survey/network.h"

/// Weighted least squares over the readings of a tape survey (Gauss-Newton; textbook method of
/// adjustment computations, from memory).
namespace throwline::survey {

/// What the adjustment says of one observation.
struct ObservationResult {
    /// The value that fits the adjusted points.
    double adjusted = 0.0;
    /// adjusted - observed
    double residual = 0.0;
    /// Share of an error in this reading that shows in its residual, 0 .. 1.
    double redundancy = 0.0;
    /// residual / (sigma sqrt(redundancy)); nothing when the redundancy is too small to divide by.
    std::optional<double> standardised;
    /// Least error that would be found (Baarda, alpha 0.001, power 0.80); nothing as above.
    std::optional<double> detectable;
};

/// Redundancy under which a reading is called not really checked.
inline constexpr double kHardlyChecked = 0.1;
/// Limits of |standardised|: at which a reading is taken for wrong, and at which it is worth a look
/// (alpha 0.001 and 0.05).
inline constexpr double kWrong = 3.2905;
inline constexpr double kWorthALook = 1.960;

/// Standard error ellipse of a point, metres and radians.
struct PointError {
    double sigma_x = 0.0;
    double sigma_y = 0.0;
    double covariance_xy = 0.0;
    double semi_major = 0.0;
    double semi_minor = 0.0;
    /// Of the longer axis, anticlockwise from +x.
    double major_angle_rad = 0.0;
};

enum class GlobalTest { nothing_checked, passes, doubtful, fails };

struct Adjustment {
    /// One a point; point 0 at the origin, point 1 on +x.
    std::vector<Vec2> points;
    std::vector<PointError> errors;
    /// One an observation, in order; those left out as wrong have redundancy 1, what they should
    /// have read as `adjusted`, and their strength as `standardised`.
    std::vector<ObservationResult> observations;
    int degrees_of_freedom = 0;
    /// Weighted sum of squares of the residuals, and its square root over the degrees of freedom
    /// (1 when nothing is checked).
    double weighted_sum = 0.0;
    double unit_weight_error = 1.0;
    GlobalTest test = GlobalTest::nothing_checked;
    int iterations = 0;
};

/// Why a network has no single shape.
struct Undetermined {
    /// Points that can still move against the others, in order.
    std::vector<int> loose;
    /// How many more distances it takes at least.
    int needed = 1;
    /// Pairs of points between which more distances would settle it. Where one is needed: each of
    /// these alone does, best first. Where more are: all of these together do, the best first.
    std::vector<std::pair<int, int>> wanted;
    /// Two shapes fit as well (a mirror image of a part), as opposed to a part that moves freely.
    bool two_shapes = false;
    /// Left empty here: whoever knows the names of the points words it.
    std::string sentence;
};

/// A reading taken for wrong; the strongest first.
struct Suspect {
    int observation = 0;
    /// By how many standard errors, its own and the others' together, it differs from what all
    /// others say: |standardised| of it when the other suspects are left out.
    double strength = 0.0;
    /// What it should probably have read, from all the others, and that value's standard error.
    double probable = 0.0;
    double probable_sigma = 0.0;
    /// Other observations that explain the disagreement as well (within 2 %); one cannot be told
    /// from the other.
    std::vector<int> or_else;
};

struct Solution {
    /// Without the suspects.
    Adjustment adjustment;
    /// With all observations, as first computed. Where a reading is so wrong that no shape fits it,
    /// the points are those of `adjustment`, with all residuals there.
    Adjustment with_all;
    std::vector<Suspect> suspects;
    /// No reading explains it: the test still fails with all that can be spared left out.
    bool unexplained = false;
};

/// Adjusts from given first values. Nothing when the normal equations are singular there or the
/// iteration does not settle.
std::optional<Adjustment> adjusted(const Network& network, std::span<const Vec2> start);

/// What the readings say of points that are given (in the datum), without moving them. Nothing when
/// the normal equations are singular there.
std::optional<Adjustment> assessed(const Network& network, std::span<const Vec2> points);

/// Finds the shape from the readings alone, adjusts it, and sets aside readings that are wrong, one
/// at a time, the worst first; a room with two wrong readings and enough others still finds both.
/// Errors are not the user's reading mistakes but what is missing: `Undetermined`.
tl::expected<Solution, Undetermined> solved(const Network& network);

/// Quantile of the chi-square distribution: the value that is not exceeded with `probability`.
double chi_square_quantile(double probability, int degrees_of_freedom);

} // namespace throwline::survey
