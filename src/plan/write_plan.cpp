#include "plan/read_plan.h"

#include "plan/write_parts.h"
#include "plan/write_values.h"

namespace throwline::plan {

namespace {

JsonOut pixel_out(const Vec2& pixel) {
    return JsonOut::array({out(pixel.x()), out(pixel.y())});
}

/// A part that is left out when all of it is as usual.
template <class Part>
void put_filled(JsonOut& object, std::string_view key, const Part& part) {
    JsonOut written_part = out(part);
    if (!written_part.is_empty()) {
        object.put(key, std::move(written_part));
    }
}

} // namespace

JsonOut out(const Underlay& underlay) {
    const Underlay usual;
    JsonOut object = JsonOut::object();
    put(object, "file", underlay.file);
    object.put("pixel_a", pixel_out(underlay.pixel_a));
    object.put("pixel_b", pixel_out(underlay.pixel_b));
    put(object, "at_a", underlay.at_a);
    put(object, "at_b", underlay.at_b);
    put_unless(object, "strength", underlay.strength, usual.strength);
    put_unless(object, "mirrored", underlay.mirrored, usual.mirrored);
    return object;
}

JsonOut out(const KitItem& item) {
    JsonOut object = JsonOut::object();
    put(object, "item", item.item);
    put(object, "count", item.count);
    return object;
}

JsonOut out(const Targets& targets) {
    const Targets usual;
    JsonOut object = JsonOut::object();
    put_unless(object, "meter_constant", targets.meter_constant, usual.meter_constant);
    put_unless(object, "exposure_tolerance_stops", targets.exposure_tolerance_stops,
               usual.exposure_tolerance_stops);
    put_unless(object, "lighting_ratio", targets.lighting_ratio, usual.lighting_ratio);
    put_unless(object, "visible_share", targets.visible_share, usual.visible_share);
    put_unless(object, "way_out_width", targets.way_out_width, usual.way_out_width);
    return object;
}

JsonOut out(const Acceptance& acceptance) {
    JsonOut object = JsonOut::object();
    put(object, "check", acceptance.check);
    put_unless(object, "shot", acceptance.shot, Id<Shot>{});
    put_some(object, "things", acceptance.things);
    put(object, "reason", acceptance.reason);
    return object;
}

JsonOut out(const Group& group) {
    JsonOut object = JsonOut::object();
    object.put("things", out(group.things));
    return object;
}

JsonOut out(const Arrangement& arrangement) {
    JsonOut object = JsonOut::object();
    put_some(object, "groups", arrangement.groups);
    put_some(object, "locked", arrangement.locked);
    put_some(object, "hidden", arrangement.hidden);
    return object;
}

std::string written(const Plan& plan) {
    JsonOut object = JsonOut::object();
    put(object, "format", Plan::kFormat);
    put(object, "title", plan.title);
    put(object, "units", plan.units);
    put_filled(object, "site", plan.site);
    if (!(plan.room == Room{})) {
        put(object, "room", plan.room);
    }
    put_some(object, "survey", plan.survey);
    put_some(object, "grid", plan.grid);
    put_some(object, "pipes", plan.pipes);
    put_some(object, "circuits", plan.circuits);
    put_some(object, "scenery", plan.scenery);
    put_some(object, "people", plan.people);
    put_some(object, "beats", plan.beats);
    put_some(object, "cameras", plan.cameras);
    put_some(object, "shots", plan.shots);
    put_some(object, "booms", plan.booms);
    put_some(object, "lamps", plan.lamps);
    put_some(object, "underlay", plan.underlay);
    put_some(object, "kit", plan.kit);
    put_filled(object, "targets", plan.targets);
    put_some(object, "accepted", plan.accepted);
    put_filled(object, "arrangement", plan.arrangement);
    put_extra(object, plan.extra);
    return object.laid_out();
}

} // namespace throwline::plan
