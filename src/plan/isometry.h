#pragma once

#include "plan/plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::plan {

/// A place as somebody would write it, to the nearest nanometre: what was typed in steps comes out
/// as their sum, 0.3 and not 0.30000000000000004.
inline Vec2 tidied(const Vec2& place_m) {
    constexpr double kNanometres = 1e9;
    return {std::round(place_m.x() * kNanometres) / kNanometres,
            std::round(place_m.y() * kNanometres) / kNanometres};
}

/// A way to put things elsewhere without changing their shape: seen in a mirror along the y
/// axis if so wished, then turned about the origin, then moved.
struct Isometry {
    bool mirror = false;
    Angle turn;
    Vec2 by = Vec2::Zero();

    Vec2 point(const Vec2& p) const {
        const Vec2 seen = mirror ? Vec2{-p.x(), p.y()} : p;
        return tidied(rotated(seen, turn.rad()) + by);
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

// Each puts a part of a plan where the isometry says; heights and names stay. Flats keep their
// dressed side, as seen in the mirror; a lamp's barn doors change sides in it.
void place(FlatRun& run, const Isometry& to);
void place(StockPiece& piece, const Isometry& to);
void place(BoxPiece& piece, const Isometry& to);
void place(Riser& piece, const Isometry& to);
void place(CylinderPiece& piece, const Isometry& to);
void place(PrismPiece& piece, const Isometry& to);
void place(Drape& drape, const Isometry& to);
void place(Grid& grid, const Isometry& to);
void place(Mark& mark, const Isometry& to);
void place(Aim& aim, const Isometry& to);
void place(Shot& shot, const Isometry& to);
void place(Lamp& lamp, const Isometry& to);
void place(Boom& boom, const Isometry& to);
/// Of whatever shape.
void place(SceneryShape& shape, const Isometry& to);

} // namespace throwline::plan
