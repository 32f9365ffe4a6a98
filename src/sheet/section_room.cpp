#include "sheet/section_room.h"

#include "sheet/wall_side.h"

#include <algorithm>
#include <cmath>

namespace throwline::sheet {

namespace {

/// Walls at less than this to the line of sight are seen edge on.
constexpr double kEdgeOn = 0.02;

double wall_height_m(const plan::Room& room, std::size_t wall) {
    const double height_m = wall < room.walls.size() ? room.walls[wall].height.m() : 0.0;
    return height_m > 0.0 ? height_m : room.height.m();
}

std::vector<Vec2> upright(const Board& board, double low_s_m, double high_s_m, double low_z_m,
                          double high_z_m) {
    return {board.frame.at(Vec2{low_s_m, low_z_m}), board.frame.at(Vec2{high_s_m, low_z_m}),
            board.frame.at(Vec2{high_s_m, high_z_m}), board.frame.at(Vec2{low_s_m, high_z_m})};
}

void draw_opening_ahead(Board& board, const plan::Opening& opening, const CutStretch& seen) {
    const std::vector<Vec2> corners =
        upright(board, seen.from_m, seen.to_m, opening.sill.m(), opening.head.m());
    board.add(PlanLayer::built, outline(corners, pen(Ink::built, kFine_mm), solid(Ink::paper)),
              Crowd::light);
    if (opening.kind == plan::OpeningKind::window) {
        const Vec2 middle = (corners[0] + corners[1]) / 2.0;
        board.add(PlanLayer::built, line(middle, middle + (corners[3] - corners[0]),
                                         pen(Ink::built, kConstruction_mm)));
    }
    LabelRequest label;
    label.anchor = (corners[0] + corners[2]) / 2.0;
    label.half_mm = (corners[2] - corners[0]).cwiseAbs() / 2.0;
    label.inside = true;
    label.lines = {{opening.id.name}};
    label.may_drop = true;
    board.labels.push_back(label);
}

/// The part between two places along a wall, along the cut.
CutStretch stretch_of(const SectionCut& cut, const WallSide& side, double from_m, double to_m) {
    const double a = cut.along_m(side.inner(from_m));
    const double b = cut.along_m(side.inner(to_m));
    return {std::min(a, b), std::max(a, b)};
}

void hatch_cut(Board& board, std::vector<Vec2> corners) {
    board.add(PlanLayer::built, outline(corners, no_pen(), solid(Ink::paper)));
    board.add(PlanLayer::built,
              outline(std::move(corners), pen(Ink::built, kBuilt_mm),
                      hatched(Ink::built, Hatch::diagonal, 0.7)),
              Crowd::never);
}

void draw_window_cut(Board& board, const CutStretch& stretch, double low_m, double high_m) {
    for (const double share : {0.35, 0.65}) {
        const double s_m = stretch.from_m + share * (stretch.to_m - stretch.from_m);
        board.add(PlanLayer::built,
                  line(board.frame.at(Vec2{s_m, low_m}), board.frame.at(Vec2{s_m, high_m}),
                       pen(Ink::built, kFine_mm)),
                  Crowd::firm);
    }
}

void draw_wall_cut(Board& board, const plan::Room& room, const WallCut& wall) {
    const double top_m = wall_height_m(room, wall.wall);
    const auto& [from_m, to_m] = wall.stretch;
    double solid_from_m = 0.0;
    for (const plan::Opening* opening : wall.openings) {
        const double sill_m = std::min(opening->sill.m(), top_m);
        if (sill_m > solid_from_m) {
            hatch_cut(board, upright(board, from_m, to_m, solid_from_m, sill_m));
        }
        solid_from_m = std::max(solid_from_m, std::min(opening->head.m(), top_m));
        if (opening->kind == plan::OpeningKind::window) {
            draw_window_cut(board, wall.stretch, sill_m, solid_from_m);
        }
    }
    if (top_m > solid_from_m) {
        hatch_cut(board, upright(board, from_m, to_m, solid_from_m, top_m));
    }
}

} // namespace

std::vector<WallAhead> walls_ahead(const SectionCut& cut, const plan::Room& room) {
    std::vector<WallAhead> walls;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const WallSide side = side_of(room, i);
        const double start_m = cut.ahead_m(side.from);
        const double rise = side.along.dot(cut.ahead);
        if (std::abs(side.along.dot(cut.along)) < kEdgeOn || side.length_m <= 0.0) {
            continue;
        }
        WallAhead wall{i, 0.0, side.length_m, 0.0, side.outward.dot(cut.ahead) > 0.0};
        if (std::abs(rise) > 1e-9) {
            const double at_cut_m = -start_m / rise;
            const double at_depth_m = (cut.depth_m - start_m) / rise;
            wall.from_m = std::max(wall.from_m, std::min(at_cut_m, at_depth_m));
            wall.to_m = std::min(wall.to_m, std::max(at_cut_m, at_depth_m));
        } else if (start_m < 0.0 || start_m > cut.depth_m) {
            continue;
        }
        wall.ahead_m = start_m + rise * (wall.from_m + wall.to_m) / 2.0;
        if (wall.to_m > wall.from_m) {
            walls.push_back(wall);
        }
    }
    std::stable_sort(walls.begin(), walls.end(),
                     [](const WallAhead& a, const WallAhead& b) { return a.ahead_m > b.ahead_m; });
    return walls;
}

void draw_wall_ahead(Board& board, const SectionCut& cut, const plan::Room& room,
                     const WallAhead& wall) {
    const WallSide side = side_of(room, wall.wall);
    for (const CutStretch& seen : seen_parts(cut, stretch_of(cut, side, wall.from_m, wall.to_m))) {
        board.add(
            PlanLayer::built,
            outline(upright(board, seen.from_m, seen.to_m, 0.0, wall_height_m(room, wall.wall)),
                    pen(Ink::built, kConstruction_mm), solid(Ink::paper)),
            Crowd::light);
    }
    for (const plan::Opening& opening : room.openings) {
        const double from_m = std::clamp(opening.from_start.m(), wall.from_m, wall.to_m);
        const double to_m =
            std::clamp((opening.from_start + opening.width).m(), wall.from_m, wall.to_m);
        if (!wall.faces_cut || opening.wall != static_cast<int>(wall.wall) || to_m <= from_m) {
            continue;
        }
        for (const CutStretch& seen : seen_parts(cut, stretch_of(cut, side, from_m, to_m))) {
            draw_opening_ahead(board, opening, seen);
        }
    }
}

std::vector<WallCut> walls_cut(const SectionCut& cut, const plan::Room& room) {
    std::vector<WallCut> walls;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const WallSide side = side_of(room, i);
        const double ahead_from = cut.ahead_m(side.from);
        const double ahead_to = cut.ahead_m(side.to);
        if ((ahead_from <= 0.0) == (ahead_to <= 0.0)) {
            continue;
        }
        const double at_m = side.length_m * ahead_from / (ahead_from - ahead_to);
        const double inner_m = cut.along_m(side.inner(at_m));
        const double slope = side.outward.dot(cut.along);
        // Walls that the cut nearly follows would be drawn endlessly thick.
        const double through_m =
            side.thickness_m / std::max(0.25, std::abs(slope)) * (slope < 0.0 ? -1.0 : 1.0);
        WallCut wall{
            i,
            {std::min(inner_m, inner_m + through_m), std::max(inner_m, inner_m + through_m)},
            {}};
        for (const plan::Opening& opening : room.openings) {
            if (opening.wall == static_cast<int>(i) && at_m >= opening.from_start.m()
                && at_m <= (opening.from_start + opening.width).m()) {
                wall.openings.push_back(&opening);
            }
        }
        std::sort(wall.openings.begin(), wall.openings.end(),
                  [](const plan::Opening* a, const plan::Opening* b) { return a->sill < b->sill; });
        walls.push_back(std::move(wall));
    }
    return walls;
}

void draw_room_cut(Board& board, const SectionCut& cut, const plan::Room& room) {
    const std::vector<WallCut> walls = walls_cut(cut, room);
    const double slab_m = kSlab_mm / board.frame.mm_per_m;
    for (const CutStretch& stretch : cut.inside) {
        CutStretch floor = stretch;
        for (const WallCut& wall : walls) { // Floor and ceiling go on under and over the walls.
            const double near_m = 1e-6;
            if (std::abs(wall.stretch.to_m - stretch.from_m) < near_m) {
                floor.from_m = wall.stretch.from_m;
            }
            if (std::abs(wall.stretch.from_m - stretch.to_m) < near_m) {
                floor.to_m = wall.stretch.to_m;
            }
        }
        hatch_cut(board, upright(board, floor.from_m, floor.to_m, -slab_m, 0.0));
        hatch_cut(board, upright(board, floor.from_m, floor.to_m, room.height.m(),
                                 room.height.m() + slab_m));
    }
    for (const WallCut& wall : walls) {
        draw_wall_cut(board, room, wall);
    }
}

double room_top_m(const plan::Room& room) {
    double top_m = room.height.m();
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        top_m = std::max(top_m, wall_height_m(room, i));
    }
    return top_m;
}

} // namespace throwline::sheet
