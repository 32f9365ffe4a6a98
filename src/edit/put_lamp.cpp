#include "edit/lamp_stand.h"
#include "edit/new_names.h"
#include "edit/on_paper.h"
#include "edit/placing.h"
#include "edit/put_parts.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// A pipe holds a lamp that is put down no farther from it, where there is no grid.
constexpr double kPipeReach_m = 0.75;
constexpr Length kUsualDrop = Length::metres(0.3);
/// A lamp on a stand with nobody to light is aimed this far up the page, at the height of a face.
constexpr double kAhead_m = 3.0;
constexpr double kFaceHeight_m = 1.5;

/// The place on the grid in whose square a lamp was put, or the pipe that is near enough to hold
/// it; of both the nearer. Nothing when neither is.
std::optional<plan::LampMount> hung_near(const plan::Plan& plan, const Vec2& at) {
    std::optional<plan::LampMount> best;
    double least_m = kPipeReach_m;
    for (const plan::Pipe& pipe : plan.pipes) {
        const double away_m = distance_to_segment(at, pipe.from, pipe.to);
        if (away_m <= least_m) {
            least_m = away_m;
            best = mount_near(
                plan, plan::PipeHang{pipe.id, {}, std::min(kUsualDrop, pipe.height / 2.0)}, at);
        }
    }
    if (!plan.grid) {
        return best;
    }
    const plan::GridHang any{plan::grid_name(0, 0), std::min(kUsualDrop, plan.grid->height / 2.0)};
    const plan::LampMount hung = mount_near(plan, any, at);
    const auto point = plan::grid_point(*plan.grid, std::get<plan::GridHang>(hung).position);
    if (!point) {
        return best;
    }
    // Half a pitch each way, however the grid is turned.
    const double half_square_m = std::hypot(plan.grid->pitch_x.m(), plan.grid->pitch_y.m()) / 2.0;
    const double away_m = (*point - at).norm();
    return away_m <= half_square_m && (!best || away_m <= least_m) ? hung : best;
}

Result<plan::LampMount> mount_for(const Context& context, const catalogue::Instrument& instrument,
                                  const Vec2& at) {
    if (instrument.kind == catalogue::InstrumentKind::practical) {
        return plan::PracticalMount{at, Length::metres(1.0)};
    }
    if (const auto hung = hung_near(context.plan, at)) {
        return *hung;
    }
    if (const auto stand = stand_at(context.catalogue, at)) {
        return *stand;
    }
    return failure("the Stores have no stand for a lamp; hang it from a pipe");
}

/// At the nearest of the cast; with nobody there, straight ahead from a stand, straight down from a
/// pipe.
plan::Aim aim_for(const Context& context, const plan::LampMount& mount, const Vec2& at) {
    if (std::holds_alternative<plan::PracticalMount>(mount)) {
        return {};
    }
    if (const auto person = nearest_of_cast(context.plan, context.now.beat, at)) {
        return plan::ThingName{*person};
    }
    const Vec2 ahead = at + Vec2{0.0, kAhead_m};
    return std::holds_alternative<plan::StandMount>(mount) && is_on_paper(ahead)
               ? plan::Aim{raised(ahead, kFaceHeight_m)}
               : plan::Aim{};
}

} // namespace

Result<Step> put_lamp(const Context& context, const std::string& name, const Vec2& at) {
    const catalogue::Instrument* instrument = context.catalogue.instrument(name);
    if (instrument == nullptr) {
        return failure(fmt::format("the Stores have no lamp {}", name));
    }
    const Result<plan::LampMount> mount = mount_for(context, *instrument, at);
    if (!mount) {
        return tl::unexpected{mount.error()};
    }
    plan::Lamp lamp;
    lamp.id.name = new_name(context.plan, "lamp 1");
    lamp.instrument = instrument->name;
    lamp.mount = *mount;
    lamp.aim = aim_for(context, *mount, at);
    if (std::holds_alternative<plan::PracticalMount>(*mount)) {
        lamp.role = plan::LampRole::practical;
    }
    const bool hangs = std::holds_alternative<plan::GridHang>(*mount)
                       || std::holds_alternative<plan::PipeHang>(*mount);
    Step step{fmt::format("{} {}", hangs ? "Hang" : "Put down", lamp.id.name),
              context.plan,
              {{Kind::lamp, lamp.id.name, 0}}};
    step.plan.lamps.push_back(std::move(lamp));
    return step;
}

} // namespace throwline::edit
