#pragma once

#include "sheet/section_cut.h"

#include <vector>

/// What a section shows of the things on the stage.
namespace throwline::sheet {

/// One part of a thing as it is seen from the cut: along it and up, metres.
struct Silhouette {
    stage::OwnerKind kind = stage::OwnerKind::scenery;
    stage::Part part = stage::Part::body;
    int owner = -1;
    /// Convex; two points for a part seen edge on.
    Polygon outline;
    /// From the cut to its middle.
    double ahead_m = 0.0;
};

/// Everything but the room that reaches ahead of the cut and begins within its depth, furthest
/// first. Scenery that the cut runs through is shown from the cut on; people, cameras, lamps and
/// booms that it runs through are shown whole.
std::vector<Silhouette> silhouettes(const SectionCut& cut);

/// Names of owners of a kind that stand behind the cut or beyond its depth.
std::vector<std::string> not_shown(const SectionCut& cut, stage::OwnerKind kind);

/// A piece of scenery that the cut runs through: the rectangle of the cut, along it and up.
struct CutPiece {
    const stage::PlacedScenery* piece = nullptr;
    CutStretch stretch;
};
std::vector<CutPiece> cut_pieces(const SectionCut& cut);

} // namespace throwline::sheet
