#pragma once

#include "checks/check.h"

#include <array>
#include <optional>
#include <vector>

namespace throwline::checks {

/// Where in the frame something undressed shows.
enum class FrameSide { left, right, top, bottom, middle };
inline constexpr std::array<FrameSide, 5> kFrameSides{
    FrameSide::left, FrameSide::right, FrameSide::top, FrameSide::bottom, FrameSide::middle};

/// What a cell of the frame shows: people and gear stand in front of either.
enum class Backing { dressed, undressed, in_front };
Backing backing_of(const stage::Stage& stage, const std::optional<stage::Hit>& hit);

/// The undressed part of a frame, cell by cell of FrameHits.
struct Undressed {
    /// Share of the frame at each side, in the order of kFrameSides.
    std::array<double, 5> shares{};
    double share = 0.0;
    /// Side of each cell; nothing for cells that are not undressed. Row by row.
    std::vector<std::optional<FrameSide>> cells;
    /// Owners that show, most first; what is out of the room has none.
    std::vector<int> owners;
};

/// A cell belongs to the frame edge that it is joined to along its row or column by nothing
/// dressed, the nearest one when there are several; cells with set on all four sides are in the
/// middle.
Undressed undressed_in(const ShotScene& scene);

/// How much farther a piece of set would have to go on, in its own line, to fill the frame on a
/// side.
struct MoreSet {
    int owner = -1;
    Length extent;
    /// The present edge.
    Vec3 edge = Vec3::Zero();
};
/// Nothing for the bottom and the middle, where no scenery stands next to the gap, or where going
/// on in its line would never fill the frame.
std::optional<MoreSet> more_set_for(const ShotScene& scene, const stage::ShotView& view,
                                    const Undressed& undressed, FrameSide side);

} // namespace throwline::checks
