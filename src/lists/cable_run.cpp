#include "lists/cable_run.h"

#include "base/polygon.h"
#include "checks/opening_place.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace throwline::lists {

namespace {

/// A point of the room's outline: how far it is along it, and from a point of the floor.
struct AtWall {
    double along_m = 0.0;
    double off_m = std::numeric_limits<double>::max();
};

AtWall nearest_wall(const plan::Room& room, const Vec2& point) {
    AtWall best;
    double before_m = 0.0;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const Vec2& from = room.outline[i];
        const Vec2 way = room.outline[(i + 1) % room.outline.size()] - from;
        const double length_m = way.norm();
        const double share =
            length_m > 0.0 ? std::clamp((point - from).dot(way) / (length_m * length_m), 0.0, 1.0)
                           : 0.0;
        const double off_m = (point - from - share * way).norm();
        if (off_m < best.off_m) {
            best = {before_m + share * length_m, off_m};
        }
        before_m += length_m;
    }
    return best;
}

double length_round(const plan::Room& room) {
    double sum_m = 0.0;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        sum_m += (room.outline[(i + 1) % room.outline.size()] - room.outline[i]).norm();
    }
    return sum_m;
}

/// A way round the room from one place of its outline to another, in walking order.
struct Stretch {
    double from_m = 0.0;
    double length_m = 0.0;
};

Stretch shorter_way(double a_m, double b_m, double round_m) {
    const double on_m = std::fmod(b_m - a_m + round_m, round_m);
    return on_m <= round_m - on_m ? Stretch{a_m, on_m} : Stretch{b_m, round_m - on_m};
}

/// Something to walk through whose foot is on the floor, somewhere along the stretch.
bool is_passed(const plan::Room& room, const plan::Opening& opening, const Stretch& stretch,
               double round_m) {
    if (opening.kind == plan::OpeningKind::window) {
        return false;
    }
    const Vec2 middle = checks::place_of(room, opening).middle();
    const double at_m = nearest_wall(room, middle).along_m;
    return std::fmod(at_m - stretch.from_m + round_m, round_m) <= stretch.length_m;
}

double square_way_m(const plan::Plan& plan, const Vec2& from, const Vec2& to) {
    const double turn_rad = plan.grid ? plan.grid->turn.rad() : 0.0;
    const Vec2 way = rotated(to - from, -turn_rad);
    return std::abs(way.x()) + std::abs(way.y());
}

/// Height of the pipe that a lamp hangs from; nothing for one that does not hang.
std::optional<Length> pipe_height(const plan::Plan& plan, const plan::Lamp& lamp) {
    if (std::holds_alternative<plan::GridHang>(lamp.mount) && plan.grid) {
        return plan.grid->height;
    }
    if (const auto* hang = std::get_if<plan::PipeHang>(&lamp.mount)) {
        const plan::Pipe* pipe = plan::find(plan, hang->pipe);
        return pipe != nullptr ? std::optional{pipe->height} : std::nullopt;
    }
    return std::nullopt;
}

CableRun run_from(const plan::Plan& plan, const plan::Lamp& lamp, const Vec3& point,
                  const Vec2& outlet) {
    CableRun run;
    run.outlet = outlet;
    const Vec2 floor = floor_of(point);
    if (const std::optional<Length> pipe = pipe_height(plan, lamp)) {
        run.level_m = square_way_m(plan, outlet, floor);
        run.rise_m = std::abs((*pipe - kOutletHeight).m()) + std::abs(pipe->m() - point.z());
        return run;
    }
    const AtWall start = nearest_wall(plan.room, outlet);
    if (start.off_m > kAtTheWall.m()) {
        run.way = CableWay::over_floor;
        run.level_m = square_way_m(plan, outlet, floor);
        run.rise_m = std::abs(point.z());
        return run;
    }
    const AtWall end = nearest_wall(plan.room, floor);
    const double round_m = length_round(plan.room);
    const Stretch stretch = shorter_way(start.along_m, end.along_m, round_m);
    run.way = CableWay::along_walls;
    run.level_m = stretch.length_m + start.off_m + end.off_m;
    run.rise_m = kOutletHeight.m() + std::abs(point.z());
    for (const plan::Opening& opening : plan.room.openings) {
        if (is_passed(plan.room, opening, stretch, round_m)) {
            run.passes.push_back(&opening);
        }
    }
    return run;
}

} // namespace

std::string_view name_of(CableWay way) {
    switch (way) {
    case CableWay::overhead:
        return "overhead";
    case CableWay::along_walls:
        return "along the walls";
    case CableWay::over_floor:
        return "over the floor";
    }
    return {};
}

std::optional<CableRun> cable_run(const plan::Plan& plan, const plan::Lamp& lamp) {
    const plan::Circuit* circuit = plan::find(plan, lamp.circuit);
    const std::optional<Vec3> point = plan::lamp_point(plan, lamp);
    std::optional<CableRun> best;
    if (circuit == nullptr || !point) {
        return best;
    }
    for (const Vec2& outlet : circuit->outlets) {
        CableRun run = run_from(plan, lamp, *point, outlet);
        if (!best || run.length_m() < best->length_m()) {
            best = std::move(run);
        }
    }
    return best;
}

Length with_slack(const CableRun& run, UnitSystem units) {
    return Length::metres(run.length_m() * (1.0 + kSlackShare)) + tails_in(units);
}

} // namespace throwline::lists
