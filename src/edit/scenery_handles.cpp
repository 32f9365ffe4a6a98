#include "edit/floor_handles.h"

#include "edit/flat_widths.h"
#include "edit/placing.h"
#include "plan/places.h"

#include <algorithm>
#include <fmt/format.h>
#include <numbers>

namespace throwline::edit {

namespace {

/// How far before its front the handle stands that turns a piece.
constexpr double kBeforeFront_m = 0.3;
/// Shorter than this is a slip of the hand.
constexpr double kLeastLength_m = 0.02;
/// As the reader has it: points of cloth are apart, outlines have an area.
constexpr double kSamePoint_m = 0.001;
constexpr double kSmallest_m2 = 1e-4;
/// Flats of one run; more is a slip.
constexpr std::size_t kMostFlats = 200;

/// Turn of a piece of scenery; nothing for one that has ends or is round.
std::optional<Angle> turn_of(const plan::SceneryShape& shape) {
    if (const auto* piece = std::get_if<plan::StockPiece>(&shape)) {
        return piece->turn;
    }
    if (const auto* box = std::get_if<plan::BoxPiece>(&shape)) {
        return box->turn;
    }
    if (const auto* riser = std::get_if<plan::Riser>(&shape)) {
        return riser->turn;
    }
    return std::nullopt;
}

std::vector<Vec2> corners_of(const plan::SceneryShape& shape) {
    if (const auto* run = std::get_if<plan::FlatRun>(&shape)) {
        return {run->from, end_of(*run)};
    }
    if (const auto* drape = std::get_if<plan::Drape>(&shape)) {
        return drape->along;
    }
    if (const auto* prism = std::get_if<plan::PrismPiece>(&shape)) {
        return prism->outline;
    }
    return {};
}

/// A run that keeps one end, seen from there: flats are put on or taken off at the other.
Result<plan::FlatRun> stretched(plan::FlatRun run, int end, const Vec2& to,
                                const FlatSizes& sizes) {
    const Vec2 fixed = end == 0 ? end_of(run) : run.from;
    const Vec2 way = end == 0 ? Vec2{fixed - to} : Vec2{to - fixed};
    if (way.norm() < kLeastLength_m) {
        return failure("drag farther from the other end");
    }
    run.heading = Angle::radians(angle_of(way));
    if (end == 0) {
        std::reverse(run.widths.begin(), run.widths.end());
    }
    run.widths = refitted(std::move(run.widths), way.norm(), sizes);
    if (end == 0) {
        std::reverse(run.widths.begin(), run.widths.end());
        run.from = fixed - unit_at(run.heading.rad()) * run.total_width().m();
    }
    if (run.widths.size() > kMostFlats) {
        return failure(fmt::format("a run has at most {} flats", kMostFlats));
    }
    return run;
}

bool has_short_leg(const std::vector<Vec2>& points) {
    for (std::size_t i = 1; i < points.size(); ++i) {
        if ((points[i] - points[i - 1]).norm() < kSamePoint_m) {
            return true;
        }
    }
    return false;
}

Result<void> move_corner(std::vector<Vec2>& corners, int index, const Vec2& to, bool is_closed) {
    if (index < 0 || static_cast<std::size_t>(index) >= corners.size()) {
        return failure("that corner is not there any more");
    }
    corners[static_cast<std::size_t>(index)] = to;
    const bool closes_short = is_closed && (corners.front() - corners.back()).norm() < kSamePoint_m;
    if (has_short_leg(corners) || closes_short) {
        return failure("another corner is there");
    }
    if (is_closed && (crosses_itself(corners) || area(corners) < kSmallest_m2)) {
        return failure("its sides would cross");
    }
    return {};
}

} // namespace

std::vector<Handle> scenery_handles(const Context& context, const Thing& thing) {
    std::vector<Handle> handles;
    const plan::Scenery* piece = plan::find(context.plan, plan::Id<plan::Scenery>{thing.name});
    if (piece == nullptr) {
        return handles;
    }
    for (const Vec2& corner : corners_of(piece->shape)) {
        const int index = static_cast<int>(handles.size());
        handles.push_back({thing, HandleKind::corner, index, corner});
    }
    const std::optional<Angle> turn = turn_of(piece->shape);
    const Polygon outline = plan::footprint(*piece, context.catalogue);
    if (turn && !outline.empty()) {
        // The front looks to -y of its own.
        const Vec2 ahead = unit_at(turn->rad() - std::numbers::pi / 2.0);
        const Vec2 middle = centroid(outline);
        double front_m = 0.0;
        for (const Vec2& corner : outline) {
            front_m = std::max(front_m, ahead.dot(corner - middle));
        }
        handles.push_back(
            {thing, HandleKind::turn, 0, middle + ahead * (front_m + kBeforeFront_m)});
    }
    return handles;
}

Result<Step> drag_scenery_corner(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Change {}", handle.thing.name), context.plan, {}};
    plan::SceneryShape& shape = find(step.plan, plan::Id<plan::Scenery>{handle.thing.name})->shape;
    Result<void> done = failure(fmt::format("{} has no corners to drag", handle.thing.name));
    if (auto* run = std::get_if<plan::FlatRun>(&shape)) {
        const FlatSizes sizes = flat_sizes(context.catalogue, context.plan.units);
        done = stretched(*run, handle.index, to, sizes).map([&](plan::FlatRun set) {
            *run = std::move(set);
        });
    } else if (auto* drape = std::get_if<plan::Drape>(&shape)) {
        done = move_corner(drape->along, handle.index, to, false);
    } else if (auto* prism = std::get_if<plan::PrismPiece>(&shape)) {
        done = move_corner(prism->outline, handle.index, to, true);
    }
    return done ? Result<Step>{std::move(step)} : tl::unexpected{done.error()};
}

} // namespace throwline::edit
