#include "plan/places.h"

#include "plan/isometry.h"

namespace throwline::plan {

namespace {

void place(Beat& beat, const Isometry& to) {
    for (auto& [person, change] : beat.marks) {
        if (auto* mark = std::get_if<Mark>(&change)) {
            place(*mark, to);
        }
    }
}

void place_house(Plan& plan, const Isometry& to) {
    // A bearing is clockwise, all other angles anticlockwise.
    plan.site.north = -to.own_turn(-plan.site.north);
    to.place(plan.room.outline);
    if (plan.grid) {
        place(*plan.grid, to);
    }
    for (Pipe& pipe : plan.pipes) {
        to.place(pipe.from);
        to.place(pipe.to);
    }
    for (Circuit& circuit : plan.circuits) {
        to.place(circuit.outlets);
    }
    if (plan.underlay) {
        to.place(plan.underlay->at_a);
        to.place(plan.underlay->at_b);
        plan.underlay->mirrored = plan.underlay->mirrored != to.mirror;
    }
}

Plan placed(Plan plan, const Isometry& to) {
    place_house(plan, to);
    for (Scenery& scenery : plan.scenery) {
        place(scenery.shape, to);
    }
    for (Beat& beat : plan.beats) {
        place(beat, to);
    }
    for (Camera& camera : plan.cameras) {
        if (camera.home) {
            to.place(*camera.home);
        }
    }
    for (Shot& shot : plan.shots) {
        place(shot, to);
    }
    for (Boom& boom : plan.booms) {
        place(boom, to);
    }
    for (Lamp& lamp : plan.lamps) {
        place(lamp, to);
    }
    return plan;
}

} // namespace

Plan moved(const Plan& plan, const Vec2& by, Angle turn) {
    return placed(plan, {.mirror = false, .turn = turn, .by = by});
}

Plan mirrored(const Plan& plan) {
    return placed(plan, {.mirror = true, .turn = {}, .by = Vec2::Zero()});
}

} // namespace throwline::plan
