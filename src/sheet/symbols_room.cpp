#include "sheet/symbols.h"
#include "sheet/wall_side.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::sheet {

namespace {

constexpr double kPoche = 0.38;
/// Drawn thickness of a door's leaf (common practice, no source).
constexpr double kLeaf_m = 0.04;

/// Where the outer faces of two neighbouring walls meet.
Vec2 outer_corner(const WallSide& before, const WallSide& after) {
    const double turn = cross(before.along, after.along);
    if (std::abs(turn) < 1e-6) { // One straight wall in two parts.
        return after.outer(0.0);
    }
    const Vec2 start = before.outer(0.0);
    const double share = cross(after.outer(0.0) - start, after.along) / turn;
    return start + before.along * share;
}

struct Gap {
    double from_m = 0.0;
    double to_m = 0.0;
};

std::vector<Gap> gaps_in(const plan::Room& room, std::size_t wall, double length_m) {
    std::vector<Gap> gaps;
    for (const plan::Opening& opening : room.openings) {
        if (opening.wall == static_cast<int>(wall)) {
            gaps.push_back({std::clamp(opening.from_start.m(), 0.0, length_m),
                            std::clamp((opening.from_start + opening.width).m(), 0.0, length_m)});
        }
    }
    std::sort(gaps.begin(), gaps.end(),
              [](const Gap& a, const Gap& b) { return a.from_m < b.from_m; });
    return gaps;
}

/// One solid length of wall; at the room's corners it ends on the mitre.
void draw_piece(Board& board, const Vec2& inner_a, const Vec2& inner_b, const Vec2& outer_b,
                const Vec2& outer_a, bool end_at_a, bool end_at_b) {
    const PlanFrame& frame = board.frame;
    const Pen built = pen(Ink::built, kBuilt_mm);
    const std::vector<Vec2> corners{frame.at(inner_a), frame.at(inner_b), frame.at(outer_b),
                                    frame.at(outer_a)};
    board.add(PlanLayer::built, outline(corners, no_pen(), solid(Ink::built, kPoche)),
              Crowd::never);
    board.add(PlanLayer::built, line(corners[0], corners[1], built), Crowd::never);
    board.add(PlanLayer::built, line(corners[3], corners[2], built), Crowd::never);
    if (end_at_a) {
        board.add(PlanLayer::built, line(corners[0], corners[3], built));
    }
    if (end_at_b) {
        board.add(PlanLayer::built, line(corners[1], corners[2], built));
    }
}

void draw_wall(Board& board, const plan::Room& room, const Polygon& outer, std::size_t index) {
    const WallSide side = side_of(room, index);
    const std::vector<Gap> gaps = gaps_in(room, index, side.length_m);
    double from_m = 0.0;
    for (std::size_t i = 0; i <= gaps.size(); ++i) {
        const bool first = i == 0;
        const bool last = i == gaps.size();
        const double to_m = last ? side.length_m : gaps[i].from_m;
        if (to_m > from_m) {
            draw_piece(board, side.inner(from_m), side.inner(to_m),
                       last ? outer[(index + 1) % outer.size()] : side.outer(to_m),
                       first ? outer[index] : side.outer(from_m), !first, !last);
        }
        from_m = last ? from_m : std::max(from_m, gaps[i].to_m);
    }
}

/// Where a leaf hangs and how it stands when open.
struct OpenLeaf {
    Vec2 hinge = Vec2::Zero();
    /// Direction of the shut leaf from the hinge, and of the wide open one.
    double shut_rad = 0.0;
    double open_rad = 0.0;
};

OpenLeaf leaf_of(const WallSide& side, const plan::Opening& opening, const plan::Swing& swing) {
    const double hinge_m =
        (swing.hinge_at_start ? opening.from_start : opening.from_start + opening.width).m();
    const Vec2 shut = swing.hinge_at_start ? side.along : Vec2{-side.along};
    const Vec2 towards = swing.inward ? Vec2{-side.outward} : side.outward;
    OpenLeaf leaf;
    leaf.hinge = swing.inward ? side.inner(hinge_m) : side.outer(hinge_m);
    leaf.shut_rad = angle_of(shut);
    const double sign = cross(shut, towards) > 0.0 ? 1.0 : -1.0;
    leaf.open_rad = leaf.shut_rad + sign * swing.widest.rad();
    return leaf;
}

void draw_leaf(Board& board, const WallSide& side, const plan::Opening& opening) {
    const OpenLeaf leaf = leaf_of(side, opening, *opening.swing);
    const ThingFrame thing{board.frame, leaf.hinge, leaf.open_rad};
    board.add(PlanLayer::built,
              outline(thing.box(0.0, -kLeaf_m / 2.0, opening.width.m(), kLeaf_m / 2.0),
                      pen(Ink::built, kFine_mm), solid(Ink::paper)),
              Crowd::firm);
    board.add(PlanLayer::built,
              open_path(arc_points(board.frame.at(leaf.hinge), board.frame.mm(opening.width.m()),
                                   leaf.shut_rad, leaf.open_rad),
                        pen(Ink::built, kConstruction_mm)),
              Crowd::firm);
}

void draw_opening(Board& board, const plan::Room& room, const plan::Opening& opening) {
    const WallSide side = side_of(room, static_cast<std::size_t>(opening.wall));
    const double from_m = opening.from_start.m();
    const double to_m = (opening.from_start + opening.width).m();
    const auto across = [&](double share, const Pen& with) {
        const Vec2 out = side.outward * (side.thickness_m * share);
        board.add(PlanLayer::built,
                  line(board.frame.at(side.inner(from_m) + out),
                       board.frame.at(side.inner(to_m) + out), with),
                  Crowd::never);
    };
    if (opening.kind == plan::OpeningKind::window) {
        across(0.0, pen(Ink::built, kFine_mm));
        across(0.5, pen(Ink::built, kConstruction_mm));
        across(1.0, pen(Ink::built, kFine_mm));
        board.used.insert(LegendEntry::window);
    } else {
        across(0.0, pen(Ink::built, kConstruction_mm, LinePattern::dash));
        across(1.0, pen(Ink::built, kConstruction_mm, LinePattern::dash));
    }
    if (opening.swing) {
        draw_leaf(board, side, opening);
        board.used.insert(LegendEntry::door);
    }
    LabelRequest label;
    label.anchor = board.frame.at(side.outer((from_m + to_m) / 2.0));
    label.half_mm = Vec2::Constant(1.2);
    label.lines = {{opening.id.name}};
    label.may_drop = !opening.way_out;
    if (opening.way_out) {
        label.lines.push_back({"keep clear: way out", true});
    }
    board.labels.push_back(label);
}

bool wall_is_known(const plan::Room& room, const plan::Opening& opening) {
    return opening.wall >= 0 && static_cast<std::size_t>(opening.wall) < room.outline.size();
}

} // namespace

Polygon outer_outline(const plan::Room& room) {
    Polygon outer;
    const std::size_t count = room.outline.size();
    for (std::size_t i = 0; i < count; ++i) {
        outer.push_back(outer_corner(side_of(room, (i + count - 1) % count), side_of(room, i)));
    }
    return outer;
}

std::optional<Vec2> door_leaf_end(const plan::Room& room, const plan::Opening& opening) {
    if (!opening.swing || !wall_is_known(room, opening)) {
        return std::nullopt;
    }
    const OpenLeaf leaf =
        leaf_of(side_of(room, static_cast<std::size_t>(opening.wall)), opening, *opening.swing);
    return leaf.hinge + unit_at(leaf.open_rad) * opening.width.m();
}

void draw_room(Board& board, const plan::Plan& plan) {
    const plan::Room& room = plan.room;
    if (room.outline.size() < 3) {
        return;
    }
    const Polygon outer = outer_outline(room);
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        draw_wall(board, room, outer, i);
    }
    board.used.insert(LegendEntry::wall);
    for (const plan::Opening& opening : room.openings) {
        if (wall_is_known(room, opening)) {
            draw_opening(board, room, opening);
        }
    }
}

} // namespace throwline::sheet
