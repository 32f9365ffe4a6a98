#include "sheet/label_field.h"

#include "base/polygon.h"
#include "sheet/hatch.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace throwline::sheet {

namespace {

constexpr double kCell_mm = 0.5;
/// Steps along a line when it is entered into the cells; under a cell, so that none is skipped.
constexpr double kStep_mm = 0.4;
constexpr int kDirections = 16;
/// How far beyond the anchor's clear radius places are tried.
constexpr std::array kDistances_mm{0.6,  2.5,  5.0,  8.0,  12.0,  17.0,  23.0,  30.0,
                                   40.0, 52.0, 66.0, 82.0, 100.0, 125.0, 155.0, 190.0};
/// A label that may be dropped is dropped beyond this, and leaders begin here.
constexpr double kNear_mm = 6.0;
constexpr double kLeaderFrom_mm = 2.0;
/// Price of a millimetre of distance against a cell of crossed line.
constexpr double kPerMillimetre = 4.0;
/// Price of a cell of a symbol or wall under a leader.
constexpr double kLeaderOverSymbol = 16.0;
constexpr double kLeaderUnderLetters = 60.0;
/// Clear paper around letters.
constexpr double kAir_mm = 0.5;

unsigned short weight_of(Crowd crowd) {
    switch (crowd) {
    case Crowd::none:
        return 0;
    case Crowd::light:
        return 1;
    case Crowd::firm:
        return 3;
    case Crowd::never:
        return 200;
    }
    return 0;
}

/// Points over a box that touch every cell under it, its far edges too.
std::vector<Vec2> points_over(const Box& box) {
    const int columns = static_cast<int>(std::ceil(box.width / kCell_mm));
    const int rows = static_cast<int>(std::ceil(box.height / kCell_mm));
    std::vector<Vec2> points;
    points.reserve(static_cast<std::size_t>(columns + 1) * static_cast<std::size_t>(rows + 1));
    for (int row = 0; row <= rows; ++row) {
        for (int column = 0; column <= columns; ++column) {
            points.emplace_back(std::min(box.left + kCell_mm * column, box.right()),
                                std::min(box.top + kCell_mm * row, box.bottom()));
        }
    }
    return points;
}

/// The middle of the side of a box that looks at a point.
Vec2 near_side(const Box& box, const Vec2& point) {
    const Vec2 centre = box.centre();
    if (point.x() < box.left) {
        return {box.left, centre.y()};
    }
    if (point.x() > box.right()) {
        return {box.right(), centre.y()};
    }
    return {std::clamp(point.x(), box.left, box.right()),
            point.y() < centre.y() ? box.top : box.bottom()};
}

/// Pale paper under words, so that lines break off at them.
Path knocked_out(const Box& box) {
    const Box air = box.inset(-0.3);
    return outline({{air.left, air.top},
                    {air.right(), air.top},
                    {air.right(), air.bottom()},
                    {air.left, air.bottom()}},
                   no_pen(), solid(Ink::paper, 0.72));
}

/// From the middle of a box of half size `half_mm` towards a point, the place where it is left.
Vec2 edge_towards(const Vec2& anchor, const Vec2& half_mm, const Vec2& point) {
    const Vec2 towards = point - anchor;
    double share = 1.0;
    for (const int axis : {0, 1}) {
        if (std::abs(towards[axis]) > half_mm[axis]) {
            share = std::min(share, half_mm[axis] / std::abs(towards[axis]));
        }
    }
    return share < 1.0 ? Vec2{anchor + towards * share} : point;
}

PlacedBox candidate(const Vec2& anchor, const Vec2& half_mm, double away_mm, double angle_rad,
                    const Vec2& size_mm) {
    const Vec2 direction = paper_direction(angle_rad);
    const Vec2 reach = half_mm + Vec2{away_mm, away_mm} + size_mm / 2.0;
    const Vec2 centre = anchor + direction.cwiseProduct(reach);
    PlacedBox placed;
    placed.box = {centre.x() - size_mm.x() / 2.0, centre.y() - size_mm.y() / 2.0, size_mm.x(),
                  size_mm.y()};
    placed.to_the_left = centre.x() < anchor.x() - size_mm.x() / 4.0;
    placed.leader_to = near_side(placed.box, anchor);
    placed.leader_from = edge_towards(anchor, half_mm, placed.leader_to);
    return placed;
}

} // namespace

LabelField::LabelField(const Box& area, const TextMeasure& measure)
    : area_{area}, measure_{measure},
      columns_{std::max(1, static_cast<int>(std::ceil(area.width / kCell_mm)))},
      rows_{std::max(1, static_cast<int>(std::ceil(area.height / kCell_mm)))},
      cells_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_)) {}

LabelField::Cell* LabelField::cell_at(const Vec2& point) {
    const int column = static_cast<int>(std::floor((point.x() - area_.left) / kCell_mm));
    const int row = static_cast<int>(std::floor((point.y() - area_.top) / kCell_mm));
    if (column < 0 || row < 0 || column >= columns_ || row >= rows_) {
        return nullptr;
    }
    return &cells_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_)
                   + static_cast<std::size_t>(column)];
}

void LabelField::cover_point(const Vec2& point, Crowd crowd) {
    if (Cell* cell = cell_at(point)) {
        cell->crowd = std::max(cell->crowd, weight_of(crowd));
        cell->symbol = cell->symbol || crowd == Crowd::never;
    }
}

void LabelField::cover_line(std::span<const Vec2> points, bool closed, Crowd crowd) {
    const std::size_t sides = closed ? points.size() : points.size() - 1;
    for (std::size_t i = 0; i < sides; ++i) {
        const Vec2& from = points[i];
        const Vec2& to = points[(i + 1) % points.size()];
        const int steps = static_cast<int>(std::ceil((to - from).norm() / kStep_mm)) + 1;
        for (int k = 0; k <= steps; ++k) {
            cover_point(from + (to - from) * (static_cast<double>(k) / steps), crowd);
        }
    }
}

void LabelField::cover_inside(std::span<const Vec2> points, Crowd crowd) {
    for (const auto& [from, to] : hatch_lines(points, 0.0, kStep_mm)) {
        cover_line(std::array{from, to}, false, crowd);
    }
}

void LabelField::cover(const Mark& mark, Crowd crowd) {
    if (crowd == Crowd::none) {
        return;
    }
    if (const auto* path = std::get_if<Path>(&mark); path != nullptr && path->points.size() > 1) {
        cover_line(path->points, path->closed, crowd);
        if (path->closed && crowd == Crowd::never) {
            cover_inside(path->points, crowd);
        }
    }
    if (const auto* round = std::get_if<Circle>(&mark)) {
        const Polygon sides = circle(round->centre, round->radius_mm);
        cover_line(sides, true, crowd);
        if (crowd == Crowd::never) {
            cover_inside(sides, crowd);
        }
    }
    if (const auto* text = std::get_if<Text>(&mark)) {
        const double width_mm = measure_.width_mm(text->text, text->height_mm, text->bold);
        const double share = text->anchor == TextAnchor::start    ? 0.0
                             : text->anchor == TextAnchor::middle ? 0.5
                                                                  : 1.0;
        take({text->at.x() - share * width_mm, text->at.y() - text->height_mm, width_mm,
              text->height_mm * (1.0 + kDescent)});
    }
}

void LabelField::take(const Box& box) {
    for (const Vec2& point : points_over(box)) {
        if (Cell* cell = cell_at(point)) {
            cell->lettered = true;
        }
    }
}

std::optional<double> LabelField::crowding(const Box& box) {
    if (!area_.holds(box)) {
        return std::nullopt;
    }
    double sum = 0.0;
    for (const Vec2& point : points_over(box)) {
        const Cell* cell = cell_at(point);
        if (cell == nullptr || cell->symbol || cell->lettered) {
            return std::nullopt;
        }
        sum += cell->crowd;
    }
    return sum;
}

std::optional<double> LabelField::leader_crowding(const PlacedBox& placed, bool under_lettering) {
    const Vec2& from = placed.leader_from;
    const Vec2& to = placed.leader_to;
    double sum = 0.0;
    const int steps = static_cast<int>((to - from).norm() / kStep_mm);
    for (int k = 1; k < steps; ++k) {
        const Cell* cell = cell_at(from + (to - from) * (static_cast<double>(k) / steps));
        if (cell == nullptr || (cell->lettered && !under_lettering)) {
            return std::nullopt;
        }
        sum += cell->lettered ? kLeaderUnderLetters
               : cell->symbol ? kLeaderOverSymbol
                              : cell->crowd;
    }
    return sum;
}

std::optional<PlacedBox> LabelField::find(const BoxRequest& request) {
    std::optional<PlacedBox> best;
    double least = 0.0;
    for (const double away_mm : kDistances_mm) {
        if ((request.may_drop && away_mm > kNear_mm)
            || (best && least < away_mm * kPerMillimetre)) {
            break;
        }
        for (int k = 0; k < kDirections; ++k) {
            const double angle_rad = 2.0 * std::numbers::pi * k / kDirections;
            PlacedBox placed =
                candidate(request.anchor, request.half_mm, away_mm, angle_rad, request.size_mm);
            placed.has_leader = request.always_leader || away_mm > kLeaderFrom_mm;
            const auto box_cost = crowding(placed.box.inset(-kAir_mm));
            const auto leader_cost = placed.has_leader
                                         ? leader_crowding(placed, request.under_lettering)
                                         : std::optional{0.0};
            if (!box_cost || !leader_cost) {
                continue;
            }
            placed.over_lines = *box_cost > 0.0;
            const double cost = *box_cost + *leader_cost + away_mm * kPerMillimetre;
            if (!best || cost < least) {
                best = placed;
                least = cost;
            }
        }
    }
    if (best) {
        settle(*best);
    }
    return best;
}

std::optional<PlacedBox> LabelField::find_inside(const LabelRequest& request, const Vec2& size_mm) {
    const Vec2 slack_mm = request.half_mm - size_mm / 2.0 - Vec2::Constant(kAir_mm);
    if (!request.inside || slack_mm.minCoeff() < 0.0) {
        return std::nullopt;
    }
    // Left and right of the middle as well, where a person or a beam may leave more room.
    std::optional<PlacedBox> best;
    double least = 0.0;
    for (const double across : {0.0, -1.0, 1.0}) {
        for (const double down : {0.0, 1.0, -1.0}) {
            const Vec2 low =
                request.anchor + slack_mm.cwiseProduct(Vec2{across, down}) - size_mm / 2.0;
            PlacedBox placed;
            placed.box = {low.x(), low.y(), size_mm.x(), size_mm.y()};
            const auto cost = crowding(placed.box);
            if (cost && (!best || *cost < least)) {
                placed.over_lines = *cost > 0.0;
                best = placed;
                least = *cost;
            }
        }
    }
    if (best) {
        settle(*best);
    }
    return best;
}

void LabelField::settle(const PlacedBox& placed) {
    take(placed.box);
    if (placed.has_leader) {
        cover_line(std::array{placed.leader_from, placed.leader_to}, false, Crowd::firm);
    }
}

bool LabelField::letter(const LabelRequest& request, Marks& marks) {
    const std::span<const LabelLine> lines{request.lines};
    return set_down(request, lines, false, marks) || set_down(request, lines, true, marks)
           || set_down(request, lines.first(1), false, marks)
           || set_down(request, lines.first(1), true, marks);
}

bool LabelField::set_down(const LabelRequest& request, std::span<const LabelLine> lines,
                          bool under_lettering, Marks& marks) {
    double width_mm = 0.0;
    for (const LabelLine& words : lines) {
        width_mm = std::max(width_mm, measure_.width_mm(words.text, request.height_mm, words.bold));
    }
    const double pitch_mm = request.height_mm * kLinePitch_mm / kLetter_mm;
    const double height_mm =
        request.height_mm * (1.0 + kDescent) + pitch_mm * (static_cast<double>(lines.size()) - 1.0);
    const Vec2 size_mm{width_mm, height_mm};
    auto placed = find_inside(request, size_mm);
    if (!placed) {
        placed = find({request.anchor, request.half_mm, size_mm, request.may_drop,
                       request.always_leader, under_lettering});
    }
    if (!placed) {
        return false;
    }
    if (placed->over_lines) {
        marks.emplace_back(knocked_out(placed->box));
    }
    if (placed->has_leader) {
        marks.emplace_back(
            line(placed->leader_from, placed->leader_to, pen(request.ink, kConstruction_mm)));
    }
    const Box& box = placed->box;
    double baseline_mm = box.top + request.height_mm;
    for (const LabelLine& words : lines) {
        marks.emplace_back(Text{words.text,
                                {placed->to_the_left ? box.right() : box.left, baseline_mm},
                                request.height_mm,
                                placed->to_the_left ? TextAnchor::end : TextAnchor::start,
                                0.0,
                                words.bold,
                                Ink::lettering});
        baseline_mm += pitch_mm;
    }
    return true;
}

} // namespace throwline::sheet
