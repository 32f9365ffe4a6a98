#include "stage/level_map.h"

#include "base/parallel.h"
#include "stage/light_at.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace throwline::stage {

namespace {

/// Points that one thread takes at a time.
constexpr std::size_t kPiece = 2048;
/// With more changes than this it is quicker to begin anew than to look for what lies behind.
constexpr std::size_t kMostChanges = 48;
/// Light is worked out this far beside a point of the grid, towards the middle of the room. Plans
/// are full of round figures, and so is the grid: a ray that lies in the plane of a face passes it
/// or not as the rays asked with it fall. Far more than single precision is off, far less than a
/// ray's own offset; unlike across and up, so that 45 degrees are left as well.
const Vec2 kBeside_m{5e-5, 3e-5};

struct Grid {
    LevelMap map;
    /// Indices of points inside the room.
    std::vector<std::size_t> inside;
    std::vector<Vec3> points;
    /// One for all, or one a point.
    std::vector<Vec3> normals;
};

Vec2 beside(const Vec2& at, const Vec2& middle) {
    return {at.x() + std::copysign(kBeside_m.x(), middle.x() - at.x()),
            at.y() + std::copysign(kBeside_m.y(), middle.y() - at.y())};
}

void add_points(Grid& grid, std::span<const Vec2> room, const Vec2& middle,
                const LevelQuestion& question) {
    for (int row = 0; row < grid.map.rows; ++row) {
        for (int column = 0; column < grid.map.columns; ++column) {
            const Vec2 at = grid.map.at(column, row);
            if (contains(room, at)) {
                grid.inside.push_back(static_cast<std::size_t>(row * grid.map.columns + column));
                grid.points.push_back(raised(beside(at, middle), question.height_m));
            }
        }
    }
    if (!question.towards) {
        grid.normals = {Vec3::UnitZ()};
        return;
    }
    for (const Vec3& point : grid.points) {
        grid.normals.emplace_back((*question.towards - point).stableNormalized());
    }
}

Grid grid_over(std::span<const Vec2> room, const LevelQuestion& question) {
    Vec2 low = room.front();
    Vec2 high = room.front();
    for (const Vec2& corner : room) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    Grid grid;
    const Vec2 size = high - low;
    grid.map.question = question;
    grid.map.room.assign(room.begin(), room.end());
    grid.map.spacing_m =
        std::max({question.spacing_m, size.x() / (kMostColumns - 1), size.y() / (kMostRows - 1)});
    grid.map.low = low;
    grid.map.height_m = question.height_m;
    grid.map.columns = static_cast<int>(size.x() / grid.map.spacing_m) + 1;
    grid.map.rows = static_cast<int>(size.y() / grid.map.spacing_m) + 1;
    add_points(grid, room, (low + high) / 2.0, question);
    return grid;
}

/// Points whose light from one lamp must be worked out.
struct Open {
    int lamp = 0;
    std::vector<std::size_t> points;
};

/// The layer of a lamp as it is now in a map made before; nothing when that has none.
const LampLayer* layer_in(const LevelMap& map, const LampLayer& now) {
    for (const LampLayer& other : map.layers) {
        if (other.lamp == now.lamp && other.state == now.state) {
            return &other;
        }
    }
    return nullptr;
}

void begin_layer(LampLayer& layer, Open& open, const Grid& grid, const PlacedLamp& lamp,
                 const LampLayer* known, std::span<const ChangedBox> changes) {
    if (known != nullptr) {
        layer.levels_lx = known->levels_lx;
        open.points = points_behind(changes, lamp, grid.points);
        return;
    }
    layer.levels_lx.assign(grid.points.size(), 0.0);
    open.points.resize(grid.points.size());
    std::iota(open.points.begin(), open.points.end(), std::size_t{0});
}

/// Begins the layers, with what of the previous ones still holds; tells what does not.
std::vector<Open> begin_layers(Grid& grid, const Stage& stage, const LevelMap* previous,
                               const std::stop_token& stop) {
    const bool same_grid = previous != nullptr && previous->question == grid.map.question
                           && previous->room == grid.map.room;
    const std::vector<ChangedBox> changes =
        same_grid ? changed_boxes(previous->shapes, grid.map.shapes) : std::vector<ChangedBox>{};
    const bool is_of_use = same_grid && changes.size() <= kMostChanges;
    std::vector<Open> open(stage.lamps.size());
    grid.map.layers.resize(stage.lamps.size());
    const auto begin = [&](std::size_t i) {
        const PlacedLamp& lamp = stage.lamps[i];
        LampLayer& layer = grid.map.layers[i];
        layer.lamp = lamp.lamp;
        layer.state = state_of(lamp);
        open[i].lamp = static_cast<int>(i);
        if (lamp.beam.peak_cd > 0.0) {
            begin_layer(layer, open[i], grid, lamp,
                        is_of_use ? layer_in(*previous, layer) : nullptr, changes);
        }
    };
    parallel_for(stage.lamps.size(), begin, stop);
    return open;
}

/// A stretch of one lamp's open points.
struct Piece {
    const Open* open = nullptr;
    std::size_t begin = 0;
    std::size_t end = 0;
};

std::vector<Piece> pieces_of(const std::vector<Open>& open) {
    std::vector<Piece> pieces;
    for (const Open& todo : open) {
        for (std::size_t begin = 0; begin < todo.points.size(); begin += kPiece) {
            pieces.push_back({&todo, begin, std::min(begin + kPiece, todo.points.size())});
        }
    }
    return pieces;
}

void light_piece(Grid& grid, const Stage& stage, const Piece& piece) {
    std::vector<Vec3> points;
    std::vector<Vec3> normals;
    for (std::size_t i = piece.begin; i < piece.end; ++i) {
        const std::size_t point = piece.open->points[i];
        points.push_back(grid.points[point]);
        if (grid.normals.size() > 1) {
            normals.push_back(grid.normals[point]);
        }
    }
    const std::vector<double> levels =
        levels_from(stage, piece.open->lamp, points, normals.empty() ? grid.normals : normals);
    LampLayer& layer = grid.map.layers[static_cast<std::size_t>(piece.open->lamp)];
    for (std::size_t i = 0; i < levels.size(); ++i) {
        layer.levels_lx[piece.open->points[piece.begin + i]] = levels[i];
    }
}

void sum_layers(Grid& grid) {
    grid.map.levels_lx.assign(
        static_cast<std::size_t>(grid.map.columns) * static_cast<std::size_t>(grid.map.rows), 0.0);
    for (const LampLayer& layer : grid.map.layers) {
        for (std::size_t i = 0; i < layer.levels_lx.size(); ++i) {
            grid.map.levels_lx[grid.inside[i]] += layer.levels_lx[i];
        }
    }
}

} // namespace

std::optional<LevelMap> level_map(const Stage& stage, std::span<const Vec2> room,
                                  const LevelQuestion& question, const LevelMap* previous,
                                  const std::stop_token& stop, const WentOn& went_on) {
    if (room.size() < 3) {
        return std::nullopt;
    }
    Grid grid = grid_over(room, question);
    grid.map.shapes = shapes_of(stage);
    const std::vector<Open> open = begin_layers(grid, stage, previous, stop);
    const std::vector<Piece> pieces = pieces_of(open);
    Progress progress{std::max<std::size_t>(pieces.size(), 1), went_on};
    parallel_for(
        pieces.size(),
        [&](std::size_t i) {
            light_piece(grid, stage, pieces[i]);
            progress.step_done();
        },
        stop);
    if (stop.stop_requested()) {
        return std::nullopt;
    }
    sum_layers(grid);
    return std::move(grid.map);
}

} // namespace throwline::stage
