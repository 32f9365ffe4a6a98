#include "stage/level_map.h"

#include "base/parallel.h"
#include "stage/light_at.h"

#include <algorithm>
#include <cmath>

namespace throwline::stage {

namespace {

struct Grid {
    LevelMap map;
    /// Indices of points inside the room.
    std::vector<std::size_t> inside;
    std::vector<Vec3> points;
};

Grid grid_over(std::span<const Vec2> room, const LevelQuestion& question) {
    Vec2 low = room.front();
    Vec2 high = room.front();
    for (const Vec2& corner : room) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    Grid grid;
    const Vec2 size = high - low;
    grid.map.spacing_m =
        std::max({question.spacing_m, size.x() / (kMostColumns - 1), size.y() / (kMostRows - 1)});
    grid.map.low = low;
    grid.map.height_m = question.height_m;
    grid.map.columns = static_cast<int>(size.x() / grid.map.spacing_m) + 1;
    grid.map.rows = static_cast<int>(size.y() / grid.map.spacing_m) + 1;
    for (int row = 0; row < grid.map.rows; ++row) {
        for (int column = 0; column < grid.map.columns; ++column) {
            const Vec2 at = grid.map.at(column, row);
            if (contains(room, at)) {
                grid.inside.push_back(static_cast<std::size_t>(row * grid.map.columns + column));
                grid.points.push_back(raised(at, question.height_m));
            }
        }
    }
    return grid;
}

} // namespace

std::optional<LevelMap> level_map(const Stage& stage, std::span<const Vec2> room,
                                  const LevelQuestion& question, const std::stop_token& stop) {
    if (room.size() < 3) {
        return std::nullopt;
    }
    Grid grid = grid_over(room, question);
    const std::vector<Vec3> up{Vec3::UnitZ()};
    std::vector<std::vector<double>> layers(stage.lamps.size());
    parallel_for(
        stage.lamps.size(),
        [&](std::size_t lamp) {
            if (stage.lamps[lamp].beam.peak_cd > 0.0) {
                layers[lamp] = levels_from(stage, static_cast<int>(lamp), grid.points, up);
            }
        },
        stop);
    if (stop.stop_requested()) {
        return std::nullopt;
    }
    grid.map.levels_lx.assign(
        static_cast<std::size_t>(grid.map.columns) * static_cast<std::size_t>(grid.map.rows), 0.0);
    for (const std::vector<double>& layer : layers) {
        for (std::size_t i = 0; i < layer.size(); ++i) {
            grid.map.levels_lx[grid.inside[i]] += layer[i];
        }
    }
    return grid.map;
}

} // namespace throwline::stage
