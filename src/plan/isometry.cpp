#include "plan/isometry.h"

namespace throwline::plan {

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

namespace {

/// Boxes, risers and stock: a place and a turn.
template <class Piece>
void place_turned(Piece& piece, const Isometry& to) {
    to.place(piece.at);
    piece.turn = to.own_turn(piece.turn);
}

} // namespace

void place(StockPiece& piece, const Isometry& to) {
    place_turned(piece, to);
}

void place(BoxPiece& piece, const Isometry& to) {
    place_turned(piece, to);
}

void place(Riser& piece, const Isometry& to) {
    place_turned(piece, to);
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

void place(SceneryShape& shape, const Isometry& to) {
    std::visit([&](auto& any) { place(any, to); }, shape);
}

} // namespace throwline::plan
