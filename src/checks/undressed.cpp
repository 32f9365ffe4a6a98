#include "checks/undressed.h"

#include "checks/framing.h"

#include <algorithm>
#include <map>

namespace throwline::checks {

namespace {

/// Backings over the frame with their grid.
struct BackingGrid {
    int columns = 0;
    int rows = 0;
    std::vector<Backing> cells;

    std::size_t index(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns)
               + static_cast<std::size_t>(column);
    }
    bool is_dressed(int column, int row) const {
        return cells[index(column, row)] == Backing::dressed;
    }
};

BackingGrid backing_grid(const ShotScene& scene) {
    BackingGrid grid{scene.hits.columns, scene.hits.rows, {}};
    grid.cells.reserve(scene.hits.cells.size());
    for (const std::optional<stage::Hit>& hit : scene.hits.cells) {
        grid.cells.push_back(backing_of(scene.stage, hit));
    }
    return grid;
}

/// First and last cell of a row or column that bounds it; -1 when none does.
struct Span {
    int first = -1;
    int last = -1;

    void include(int at) {
        first = first < 0 ? at : first;
        last = at;
    }
};

struct DressedSpans {
    std::vector<Span> rows;
    std::vector<Span> columns;
    /// Without the floor: what is open above a bare floor is not open above a set.
    std::vector<Span> upright_columns;
};

DressedSpans dressed_spans(const ShotScene& scene, const BackingGrid& grid) {
    DressedSpans spans;
    spans.rows.resize(static_cast<std::size_t>(grid.rows));
    spans.columns.resize(static_cast<std::size_t>(grid.columns));
    spans.upright_columns = spans.columns;
    for (int row = 0; row < grid.rows; ++row) {
        for (int column = 0; column < grid.columns; ++column) {
            if (!grid.is_dressed(column, row)) {
                continue;
            }
            spans.rows[static_cast<std::size_t>(row)].include(column);
            spans.columns[static_cast<std::size_t>(column)].include(row);
            const int solid = scene.hits.cells[grid.index(column, row)]->solid;
            if (scene.stage.solids[static_cast<std::size_t>(solid)].part != stage::Part::floor) {
                spans.upright_columns[static_cast<std::size_t>(column)].include(row);
            }
        }
    }
    return spans;
}

/// Nearest edge to which an undressed cell is joined; distances in shares of the frame.
FrameSide side_of(const BackingGrid& grid, const DressedSpans& spans, int column, int row) {
    const Span& in_row = spans.rows[static_cast<std::size_t>(row)];
    const Span& in_column = spans.columns[static_cast<std::size_t>(column)];
    const Span& upright = spans.upright_columns[static_cast<std::size_t>(column)];
    const double across = (column + 0.5) / grid.columns;
    const double down = (row + 0.5) / grid.rows;
    // Where nothing is dressed all along the row, the cell belongs to what is open above or below.
    FrameSide side = in_row.first >= 0 ? FrameSide::middle
                     : down < 0.5      ? FrameSide::top
                                       : FrameSide::bottom;
    double nearest = 2.0;
    const auto offer = [&](FrameSide offered, bool joined, double distance) {
        if (joined && distance < nearest) {
            side = offered;
            nearest = distance;
        }
    };
    offer(FrameSide::left, in_row.first >= 0 && column < in_row.first, across);
    offer(FrameSide::right, in_row.first >= 0 && column > in_row.last, 1.0 - across);
    offer(FrameSide::top, upright.first >= 0 && row < upright.first, down);
    offer(FrameSide::bottom, in_column.first >= 0 && row > in_column.last, 1.0 - down);
    return side;
}

std::vector<int> by_count(const std::map<int, int>& counts) {
    std::vector<int> owners;
    for (const auto& [owner, count] : counts) {
        owners.push_back(owner);
    }
    std::stable_sort(owners.begin(), owners.end(),
                     [&](int a, int b) { return counts.at(a) > counts.at(b); });
    return owners;
}

} // namespace

Backing backing_of(const stage::Stage& stage, const std::optional<stage::Hit>& hit) {
    if (!hit) {
        return Backing::undressed;
    }
    const stage::Solid& solid = stage.solids[static_cast<std::size_t>(hit->solid)];
    switch (solid.kind) {
    case stage::OwnerKind::room:
    case stage::OwnerKind::scenery:
        return solid.dressed && solid.part != stage::Part::flat_back ? Backing::dressed
                                                                     : Backing::undressed;
    case stage::OwnerKind::cast:
    case stage::OwnerKind::crew:
    case stage::OwnerKind::camera:
    case stage::OwnerKind::lamp:
    case stage::OwnerKind::boom:
        return Backing::in_front;
    }
    return Backing::in_front;
}

Undressed undressed_in(const ShotScene& scene) {
    const BackingGrid grid = backing_grid(scene);
    const DressedSpans spans = dressed_spans(scene, grid);
    const double cell = 1.0 / std::max<double>(1.0, static_cast<double>(grid.cells.size()));
    Undressed result;
    result.cells.resize(grid.cells.size());
    std::map<int, int> counts;
    for (int row = 0; row < grid.rows; ++row) {
        for (int column = 0; column < grid.columns; ++column) {
            const std::size_t index = grid.index(column, row);
            if (grid.cells[index] != Backing::undressed) {
                continue;
            }
            const FrameSide side = side_of(grid, spans, column, row);
            result.cells[index] = side;
            result.shares[static_cast<std::size_t>(side)] += cell;
            result.share += cell;
            if (const std::optional<stage::Hit>& hit = scene.hits.cells[index]) {
                ++counts[hit->owner];
            }
        }
    }
    result.owners = by_count(counts);
    return result;
}

} // namespace throwline::checks
