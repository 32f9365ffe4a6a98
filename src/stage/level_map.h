#pragma once

#include "base/progress.h"
#include "stage/level_layer.h"
#include "stage/stage.h"

#include <optional>
#include <stop_token>
#include <vector>

namespace throwline::stage {

/// Where levels are wanted: points on a level plane at a height.
struct LevelQuestion {
    double height_m = 0.0;
    /// At most this far apart; wider where the room would take more points than the limit.
    double spacing_m = 0.1;
    /// The lens that what is lit is turned to; nothing for what faces straight up.
    std::optional<Vec3> towards{};

    bool operator==(const LevelQuestion&) const = default;
};

/// Most points across and up.
inline constexpr int kMostColumns = 400;
inline constexpr int kMostRows = 300;

/// Levels on a grid of points over the room, row by row from the lower left; 0 outside the room.
struct LevelMap {
    Vec2 low = Vec2::Zero();
    double spacing_m = 0.1;
    double height_m = 0.0;
    int columns = 0;
    int rows = 0;
    std::vector<double> levels_lx;

    /// What it was made from, so that the next one need not begin anew.
    LevelQuestion question;
    Polygon room;
    /// One a lamp, in the order of the stage.
    std::vector<LampLayer> layers;
    std::vector<OwnerShape> shapes;

    Vec2 at(int column, int row) const {
        return low + spacing_m * Vec2{static_cast<double>(column), static_cast<double>(row)};
    }
};

/// Level from all lamps that burn on the stage, which must have rays. Of a map made before only
/// what may differ is made anew: the layers of lamps that changed, and in those of others the
/// points behind things that changed; the result is the same as without it, but for rays that graze
/// an edge within a few micrometres. `went_on` is told how much of the light is worked out. Nothing
/// when stopped, or when there is no room.
std::optional<LevelMap> level_map(const Stage& stage, std::span<const Vec2> room,
                                  const LevelQuestion& question, const LevelMap* previous = nullptr,
                                  const std::stop_token& stop = {}, const WentOn& went_on = {});

} // namespace throwline::stage
