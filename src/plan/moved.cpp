#include "plan/places.h"

#include <algorithm>
#include <numbers>

namespace throwline::plan {

namespace {

/// A way to put the whole plan elsewhere without changing its shape: seen in a mirror along the y
/// axis if so wished, then turned about the origin, then moved.
struct Isometry {
    bool mirror = false;
    Angle turn;
    Vec2 by = Vec2::Zero();

    Vec2 point(const Vec2& p) const {
        const Vec2 seen = mirror ? Vec2{-p.x(), p.y()} : p;
        return rotated(seen, turn.rad()) + by;
    }
    Vec3 point(const Vec3& p) const { return raised(point(floor_of(p)), p.z()); }
    /// A direction on the plan.
    Angle direction(Angle angle) const {
        return (mirror ? Angle::radians(std::numbers::pi) - angle : angle) + turn;
    }
    /// The turn of something whose left half is the mirror of its right half.
    Angle own_turn(Angle angle) const { return (mirror ? -angle : angle) + turn; }

    void place(Vec2& p) const { p = point(p); }
    void place(std::vector<Vec2>& points) const {
        for (Vec2& p : points) {
            p = point(p);
        }
    }
};

void place(FlatRun& run, const Isometry& to) {
    if (!to.mirror) {
        to.place(run.from);
        run.heading = to.direction(run.heading);
        return;
    }
    // The dressed face looks left of the heading, so the mirrored run starts from the other end.
    const Vec2 end = run.from + unit_at(run.heading.rad()) * run.total_width().m();
    run.from = to.point(end);
    run.heading = to.own_turn(run.heading);
    std::reverse(run.widths.begin(), run.widths.end());
}

/// Boxes, risers and stock: a place and a turn.
template <class Piece>
    requires requires(Piece piece) {
        piece.at;
        piece.turn;
    }
void place(Piece& piece, const Isometry& to) {
    to.place(piece.at);
    piece.turn = to.own_turn(piece.turn);
}

void place(CylinderPiece& piece, const Isometry& to) {
    to.place(piece.at);
}

void place(PrismPiece& piece, const Isometry& to) {
    to.place(piece.outline);
}

void place(Drape& drape, const Isometry& to) {
    to.place(drape.along);
}

void place(Grid& grid, const Isometry& to) {
    to.place(grid.origin);
    grid.turn = to.own_turn(grid.turn);
    // Letters now run to the left; positions keep their names.
    grid.pitch_x = to.mirror ? -grid.pitch_x : grid.pitch_x;
}

void place(Mark& mark, const Isometry& to) {
    to.place(mark.at);
    to.place(mark.path);
    if (auto* angle = std::get_if<Angle>(&mark.faces)) {
        *angle = to.direction(*angle);
    } else if (auto* point = std::get_if<Vec2>(&mark.faces)) {
        to.place(*point);
    }
}

void place(Beat& beat, const Isometry& to) {
    for (auto& [person, change] : beat.marks) {
        if (auto* mark = std::get_if<Mark>(&change)) {
            place(*mark, to);
        }
    }
}

void place(Aim& aim, const Isometry& to) {
    if (auto* point = std::get_if<Vec3>(&aim)) {
        *point = to.point(*point);
    }
}

void place(Shot& shot, const Isometry& to) {
    to.place(shot.at);
    to.place(shot.moves);
    place(shot.aim, to);
}

void place(Lamp& lamp, const Isometry& to) {
    place(lamp.aim, to);
    if (auto* stand = std::get_if<StandMount>(&lamp.mount)) {
        to.place(stand->at);
    } else if (auto* practical = std::get_if<PracticalMount>(&lamp.mount)) {
        to.place(practical->at);
    }
    if (to.mirror) {
        std::swap(lamp.cut.left, lamp.cut.right);
    }
}

void place(Boom& boom, const Isometry& to) {
    to.place(boom.operator_at);
    to.place(boom.microphone);
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
        std::visit([&](auto& shape) { place(shape, to); }, scenery.shape);
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
