#include "edit/flat_widths.h"
#include "edit/make.h"
#include "edit/moves.h"
#include "edit/new_names.h"
#include "edit/on_paper.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::edit {

namespace {

/// A run goes on from another that ends no farther away, and is turned no farther.
constexpr double kJoin_m = 0.02;
const Angle kJoinTurn = Angle::degrees(1.0);
/// Flats of one run; more is a slip.
constexpr std::size_t kMostFlats = 200;
/// Points of cloth nearer than this are one point, as the reader has it.
constexpr double kSamePoint_m = 0.001;
/// Smaller than this nobody meant to draw.
constexpr double kLeastSide_m = 0.02;

std::string too_many_flats() {
    return fmt::format("a run has at most {} flats, and ends where the plan does", kMostFlats);
}

/// Whether flats in a direction go on in that of a run.
bool goes_on(const plan::FlatRun& run, Angle heading) {
    return std::abs(wrapped(run.heading.rad() - heading.rad())) <= kJoinTurn.rad();
}

/// The nearest run that ends where a new one begins; null when none does, or it is locked.
plan::Scenery* run_before(plan::Plan& plan, const Vec2& from) {
    plan::Scenery* nearest = nullptr;
    double least_m = kJoin_m;
    for (plan::Scenery& piece : plan.scenery) {
        const auto* run = std::get_if<plan::FlatRun>(&piece.shape);
        const double away_m = run == nullptr ? kJoin_m + 1.0 : (end_of(*run) - from).norm();
        if (away_m <= least_m && !is_locked(plan, {Kind::scenery, piece.id.name, 0})) {
            least_m = away_m;
            nearest = &piece;
        }
    }
    return nearest;
}

Result<Step> flats_joined(Step step, plan::Scenery& piece, const std::vector<Length>& widths) {
    auto& run = std::get<plan::FlatRun>(piece.shape);
    run.widths.insert(run.widths.end(), widths.begin(), widths.end());
    if (run.widths.size() > kMostFlats || !is_a_size(run.total_width())
        || !is_on_paper(end_of(run))) {
        return failure(too_many_flats());
    }
    step.name = fmt::format("Add flats to {}", piece.id.name);
    step.made = {{Kind::scenery, piece.id.name, 0}};
    return step;
}

Result<Step> added(const Context& context, plan::SceneryShape shape, const std::string& wanted) {
    Step step{{}, context.plan, {}};
    plan::Scenery piece;
    piece.shape = std::move(shape);
    piece.id.name = new_name(context.plan, wanted);
    step.name = fmt::format("New {}", piece.id.name);
    step.made = {{Kind::scenery, piece.id.name, 0}};
    step.plan.scenery.push_back(std::move(piece));
    return step;
}

} // namespace

Result<Step> flats_drawn(const Context& context, const Vec2& from, const Vec2& to) {
    if ((to - from).norm() < kLeastSide_m) {
        return failure("drag from where the flats begin to where they end");
    }
    if (!is_on_paper(from) || !is_on_paper(to)) {
        return failure(std::string{kOffPaper});
    }
    const FlatSizes sizes = flat_sizes(context.catalogue, context.plan.units);
    Step step{{}, context.plan, {}};
    plan::Scenery* before = run_before(step.plan, from);
    plan::FlatRun run;
    run.from = before == nullptr ? from : end_of(std::get<plan::FlatRun>(before->shape));
    run.heading = Angle::radians(angle_of(to - run.from));
    run.widths = widths_for((to - run.from).norm(), sizes);
    run.height = sizes.height;
    run.thickness = sizes.thickness;
    if (before != nullptr && goes_on(std::get<plan::FlatRun>(before->shape), run.heading)) {
        return flats_joined(std::move(step), *before, run.widths);
    }
    if (run.widths.size() > kMostFlats || !is_on_paper(end_of(run))) {
        return failure(too_many_flats());
    }
    return added(context, run, "flats");
}

Result<Step> drape_drawn(const Context& context, std::span<const Vec2> points) {
    if (!are_on_paper(points)) {
        return failure(std::string{kOffPaper});
    }
    plan::Drape drape;
    for (const Vec2& point : points) {
        if (drape.along.empty() || (point - drape.along.back()).norm() >= kSamePoint_m) {
            drape.along.push_back(point);
        }
    }
    if (drape.along.size() < 2) {
        return failure("a drape needs two places or more");
    }
    drape.height = context.plan.room.height.m() > 0.0
                       ? std::min(context.plan.room.height, Length::metres(3.6))
                       : Length::metres(3.0);
    return added(context, drape, "drape");
}

Result<Step> pipe_drawn(const Context& context, const Vec2& from, const Vec2& to) {
    if ((to - from).norm() < kLeastSide_m) {
        return failure("drag from one end of the pipe to the other");
    }
    if (!is_on_paper(from) || !is_on_paper(to) || !is_a_size(Length::metres((to - from).norm()))) {
        return failure(std::string{kOffPaper});
    }
    Step step{{}, context.plan, {}};
    plan::Pipe pipe;
    pipe.id.name = new_name(context.plan, "pipe");
    pipe.from = from;
    pipe.to = to;
    pipe.height = context.plan.grid ? context.plan.grid->height : Length::metres(3.0);
    if (context.plan.room.height.m() > 0.0) {
        pipe.height = std::min(pipe.height, context.plan.room.height);
    }
    step.name = fmt::format("New {}", pipe.id.name);
    step.made = {{Kind::pipe, pipe.id.name, 0}};
    step.plan.pipes.push_back(std::move(pipe));
    return step;
}

Result<Step> box_drawn(const Context& context, const Vec2& corner, const Vec2& opposite,
                       bool riser) {
    const Vec2 size = (opposite - corner).cwiseAbs();
    if (size.minCoeff() < kLeastSide_m) {
        return failure("drag from one corner to the opposite one");
    }
    const Vec2 middle = (corner + opposite) / 2.0;
    const Length width = Length::metres(size.x());
    const Length depth = Length::metres(size.y());
    if (!is_a_size(width) || !is_a_size(depth) || !is_on_paper(middle)) {
        return failure(std::string{kOffPaper});
    }
    if (riser) {
        return added(context, plan::Riser{middle, width, depth, Length::metres(0.2), {}},
                     "platform");
    }
    return added(context, plan::BoxPiece{middle, width, depth, Length::metres(0.75), {}}, "box");
}

Result<Step> cylinder_drawn(const Context& context, const Vec2& centre, Length radius) {
    if (radius.m() < kLeastSide_m / 2.0) {
        return failure("drag from the middle of the column to its rim");
    }
    if (!is_a_size(radius * 2.0) || !is_on_paper(centre)) {
        return failure(std::string{kOffPaper});
    }
    const Length height =
        context.plan.room.height.m() > 0.0 ? context.plan.room.height : Length::metres(2.4);
    return added(context, plan::CylinderPiece{centre, radius * 2.0, height}, "column");
}

} // namespace throwline::edit
