#include "checks/run_on.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace throwline::checks {

namespace {

/// More set than this is no advice.
constexpr double kMostExtent_m = 30.0;
/// A line that meets the side of the frame at less than this slope never fills it in practice.
constexpr double kLeastSlope = 1e-3;

/// An end of a run, and the unit direction in which it would go on.
struct RunEnd {
    Vec2 at = Vec2::Zero();
    Vec2 onward = Vec2::UnitX();
};

std::array<RunEnd, 2> ends_of(const plan::FlatRun& run) {
    const Vec2 along = unit_at(run.heading.rad());
    return {RunEnd{run.from, -along}, RunEnd{run.from + along * run.total_width().m(), along}};
}

/// Inward normals on the plan of the upright planes through the lens at the frame's sides.
std::array<Vec2, 2> side_normals(const stage::ShotView& view) {
    const Vec2 ahead = floor_of(view.frame.axes().forward).normalized();
    const Vec2 right = -turned_left(ahead);
    return {Vec2(right + view.frame.tan_half_h() * ahead),
            Vec2(-right + view.frame.tan_half_h() * ahead)};
}

/// How far a run goes on from its end until it has passed both sides of the frame, in front of the
/// lens; nothing when it never does.
std::optional<double> extent_to_fill(const RunEnd& end, const stage::ShotView& view) {
    const Vec2 lens = floor_of(view.pose.lens);
    const Vec2 ahead = floor_of(view.frame.axes().forward).normalized();
    double extent_m = 0.0;
    for (const Vec2& normal : side_normals(view)) {
        const double slope = normal.dot(end.onward);
        if (std::abs(slope) < kLeastSlope) {
            return std::nullopt;
        }
        const double crossing_m = normal.dot(lens - end.at) / slope;
        const bool before_lens = (end.at + end.onward * crossing_m - lens).dot(ahead) > 0.0;
        if (crossing_m <= 0.0 || crossing_m > kMostExtent_m || !before_lens) {
            return std::nullopt;
        }
        extent_m = std::max(extent_m, crossing_m);
    }
    return extent_m;
}

} // namespace

std::optional<MoreSet> run_that_would_back(const plan::Plan& plan, const stage::Stage& stage,
                                           const stage::ShotView& view) {
    std::optional<MoreSet> least;
    for (const stage::PlacedScenery& placed : stage.scenery) {
        const plan::Scenery* scenery = plan::find(plan, placed.scenery);
        const auto* run =
            scenery == nullptr ? nullptr : std::get_if<plan::FlatRun>(&scenery->shape);
        if (run == nullptr || !scenery->dressed) {
            continue;
        }
        for (const RunEnd& end : ends_of(*run)) {
            const std::optional<double> extent = extent_to_fill(end, view);
            if (extent && (!least || *extent < least->extent.m())) {
                least = MoreSet{placed.owner, Length::metres(*extent), raised(end.at, 0.0)};
            }
        }
    }
    return least;
}

} // namespace throwline::checks
