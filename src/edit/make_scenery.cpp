#include "edit/make.h"
#include "edit/new_names.h"

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
/// Smaller than this nobody meant to draw.
constexpr double kLeastSide_m = 0.02;

struct FlatSizes {
    Length wide;
    Length narrow;
    Length height;
};

/// The common studio flats: 4 ft and 2 ft by 8 ft, and their metric likes.
FlatSizes flat_sizes(UnitSystem units) {
    if (units == UnitSystem::imperial) {
        return {Length::feet(4), Length::feet(2), Length::feet(8)};
    }
    return {Length::metres(1.2), Length::metres(0.6), Length::metres(2.4)};
}

/// Flats whose widths together come nearest to a length: wide ones, then one narrow.
std::vector<Length> widths_for(double length_m, const FlatSizes& sizes) {
    const auto halves = std::max<long>(1, std::lround(length_m / sizes.narrow.m()));
    std::vector<Length> widths(static_cast<std::size_t>(halves / 2), sizes.wide);
    if (halves % 2 == 1) {
        widths.push_back(sizes.narrow);
    }
    return widths;
}

/// The run that a new one from a place in a direction goes on from.
plan::FlatRun* run_before(plan::Plan& plan, const Vec2& from, Angle heading, std::string& name) {
    for (plan::Scenery& piece : plan.scenery) {
        auto* run = std::get_if<plan::FlatRun>(&piece.shape);
        if (run == nullptr) {
            continue;
        }
        const Vec2 end = run->from + unit_at(run->heading.rad()) * run->total_width().m();
        const double turn_rad = std::abs(wrapped(run->heading.rad() - heading.rad()));
        if ((end - from).norm() <= kJoin_m && turn_rad <= kJoinTurn.rad()) {
            name = piece.id.name;
            return run;
        }
    }
    return nullptr;
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
    const double length_m = (to - from).norm();
    if (length_m < kLeastSide_m) {
        return failure("drag from where the flats begin to where they end");
    }
    const FlatSizes sizes = flat_sizes(context.plan.units);
    const std::vector<Length> widths = widths_for(length_m, sizes);
    if (widths.size() > kMostFlats) {
        return failure(fmt::format("a run has at most {} flats", kMostFlats));
    }
    const Angle heading = Angle::radians(angle_of(to - from));
    Step step{{}, context.plan, {}};
    std::string name;
    if (plan::FlatRun* run = run_before(step.plan, from, heading, name)) {
        if (run->widths.size() + widths.size() > kMostFlats) {
            return failure(fmt::format("a run has at most {} flats", kMostFlats));
        }
        run->widths.insert(run->widths.end(), widths.begin(), widths.end());
        step.name = fmt::format("Add flats to {}", name);
        step.made = {{Kind::scenery, name, 0}};
        return step;
    }
    plan::FlatRun run;
    run.from = from;
    run.heading = heading;
    run.widths = widths;
    run.height = sizes.height;
    return added(context, run, "flats");
}

Result<Step> drape_drawn(const Context& context, std::span<const Vec2> points) {
    if (points.size() < 2) {
        return failure("a drape needs two places or more");
    }
    plan::Drape drape;
    drape.along.assign(points.begin(), points.end());
    drape.height = context.plan.room.height.m() > 0.0
                       ? std::min(context.plan.room.height, Length::metres(3.6))
                       : Length::metres(3.0);
    return added(context, drape, "drape");
}

Result<Step> pipe_drawn(const Context& context, const Vec2& from, const Vec2& to) {
    if ((to - from).norm() < kLeastSide_m) {
        return failure("drag from one end of the pipe to the other");
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
    const Length height =
        context.plan.room.height.m() > 0.0 ? context.plan.room.height : Length::metres(2.4);
    return added(context, plan::CylinderPiece{centre, radius * 2.0, height}, "column");
}

} // namespace throwline::edit
