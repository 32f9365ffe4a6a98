#include "edit/camera_handles.h"
#include "edit/placing.h"
#include "photometry/beam_model.h"
#include "plan/places.h"
#include "stage/moment.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// Height of a face, at which an aim at an empty floor begins (common practice, no source).
constexpr double kFaceHeight_m = 1.5;

double radius_at_m(Angle beam, double throw_m) {
    // Half of more than 160 degrees has no rim on a floor.
    return throw_m * std::tan(std::min(beam.rad() / 2.0, 1.4));
}

} // namespace

std::optional<AimedLamp> aimed_now(const Context& context, const plan::Lamp& lamp) {
    const std::optional<Vec3> point = plan::lamp_point(context.plan, lamp);
    const catalogue::Instrument* instrument = context.catalogue.instrument(lamp.instrument);
    if (!point || instrument == nullptr) {
        return std::nullopt;
    }
    const stage::Moment moment{context.plan, context.catalogue, context.now.beat, context.now.shot};
    AimedLamp aimed;
    aimed.point = *point;
    aimed.target = stage::lamp_target(moment, lamp).value_or(raised(floor_of(*point), 0.0));
    const double throw_m = (aimed.target - *point).norm();
    aimed.radius_m = radius_at_m(photometry::beam_at_focus(*instrument, lamp.focus).beam, throw_m);
    const auto [least, most] = std::minmax(instrument->spot.beam, instrument->flood.beam);
    aimed.least_radius_m = radius_at_m(least, throw_m);
    aimed.most_radius_m = radius_at_m(most, throw_m);
    aimed.has_range = instrument->flood.beam != instrument->spot.beam;
    return aimed;
}

std::vector<Handle> lamp_handles(const Context& context, const Thing& thing) {
    const plan::Lamp* lamp = plan::find(context.plan, plan::Id<plan::Lamp>{thing.name});
    const auto aimed = lamp == nullptr ? std::nullopt : aimed_now(context, *lamp);
    if (!aimed) {
        return {};
    }
    std::vector<Handle> handles{{thing, HandleKind::aim, 0, floor_of(aimed->target)}};
    if (aimed->has_range) {
        // Square to the throw, so that it does not lie on the axis.
        const Vec2 throw_way = floor_of(aimed->target) - floor_of(aimed->point);
        const Vec2 aside =
            throw_way.norm() > 0.01 ? Vec2{-turned_left(throw_way.normalized())} : Vec2::UnitX();
        handles.push_back(
            {thing, HandleKind::pool, 0, floor_of(aimed->target) + aside * aimed->radius_m});
    }
    return handles;
}

Result<Step> drag_lamp(const Context& context, const Handle& handle, const Vec2& to,
                       const std::optional<Thing>& onto) {
    const plan::Id<plan::Lamp> id{handle.thing.name};
    const plan::Lamp* lamp = plan::find(context.plan, id);
    const auto aimed = lamp == nullptr ? std::nullopt : aimed_now(context, *lamp);
    if (!aimed) {
        return failure(fmt::format("{} is not there any more", handle.thing.name));
    }
    Step step{fmt::format("Aim {}", id.name), context.plan, {}};
    plan::Lamp& set = *find(step.plan, id);
    if (handle.kind == HandleKind::aim) {
        const bool had_aim = !std::holds_alternative<std::monostate>(lamp->aim);
        set.aim = aim_at(to, had_aim ? aimed->target.z() : kFaceHeight_m, onto, id.name);
        return step;
    }
    const catalogue::Instrument& instrument = *context.catalogue.instrument(lamp->instrument);
    const double throw_m = std::max((aimed->target - aimed->point).norm(), 0.01);
    const double radius_m = (to - floor_of(aimed->target)).norm();
    const double wanted_rad = 2.0 * std::atan(radius_m / throw_m);
    const double range_rad = (instrument.flood.beam - instrument.spot.beam).rad();
    if (range_rad == 0.0) {
        return failure(fmt::format("a {} has one beam angle", instrument.name));
    }
    step.name = fmt::format("Flood or spot {}", id.name);
    const double share = (wanted_rad - instrument.spot.beam.rad()) / range_rad;
    set.focus = std::round(100.0 * std::clamp(share, 0.0, 1.0)) / 100.0;
    return step;
}

} // namespace throwline::edit
