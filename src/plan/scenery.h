#pragma once

#include "plan/site.h"

#include <variant>

namespace throwline::plan {

/// Flats side by side in a straight run. The dressed face looks to the left of the heading and
/// stands on the line through `from`; the thickness lies behind it, to the right.
struct FlatRun {
    Vec2 from = Vec2::Zero();
    /// Direction in which the run goes on from `from`.
    Angle heading;
    std::vector<Length> widths;
    Length height;
    Length thickness = Length::millimetres(50);

    Length total_width() const;
    bool operator==(const FlatRun&) const = default;
};

/// A catalogue stock item, centred on `at`, its width along its own x.
struct StockPiece {
    std::string item;
    Vec2 at = Vec2::Zero();
    Angle turn;

    bool operator==(const StockPiece&) const = default;
};

struct BoxPiece {
    Vec2 at = Vec2::Zero();
    Length width;
    Length depth;
    Length height;
    Angle turn;

    bool operator==(const BoxPiece&) const = default;
};

struct CylinderPiece {
    Vec2 at = Vec2::Zero();
    Length diameter;
    Length height;

    bool operator==(const CylinderPiece&) const = default;
};

struct PrismPiece {
    Polygon outline;
    Length height;

    bool operator==(const PrismPiece&) const = default;
};

/// A platform that people, cameras and scenery stand on.
struct Riser {
    Vec2 at = Vec2::Zero();
    Length width;
    Length depth;
    Length height;
    Angle turn;

    bool operator==(const Riser&) const = default;
};

/// Cloth along a line of points.
struct Drape {
    std::vector<Vec2> along;
    Length height;

    bool operator==(const Drape&) const = default;
};

using SceneryShape =
    std::variant<FlatRun, StockPiece, BoxPiece, CylinderPiece, PrismPiece, Riser, Drape>;

struct Scenery {
    Id<Scenery> id;
    SceneryShape shape;
    /// Underside above the floor.
    Length elevation;
    std::string finish;
    /// Whether a shot may see it. Back faces of flats count as undressed whatever this says.
    bool dressed = true;
    Extra extra;

    bool operator==(const Scenery&) const = default;
};

} // namespace throwline::plan
