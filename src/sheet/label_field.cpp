#include "sheet/label_field.h"

#include "sheet/text_box.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace throwline::sheet {

namespace {

/// How far beyond the thing places are tried.
constexpr std::array kDistances_mm{0.5,  1.2,  2.0,  3.2,   4.6,   6.2,   8.5,
                                   11.0, 14.0, 18.0, 22.0,  27.0,  33.0,  40.0,
                                   50.0, 62.0, 78.0, 100.0, 130.0, 165.0, 200.0};
/// Price of a millimetre of distance against a cell of crossed line.
constexpr double kPerMillimetre = 4.0;
/// A leader is read worse than words near by.
constexpr double kLeader = 10.0;
constexpr double kLeaderAcrossLeader = 40.0;
constexpr double kLeaderUnderLetters = 1500.0;
/// Beside is read before above and below, and these before the corners.
constexpr double kOffTheMiddle = 3.0;
constexpr double kAboveOrBelow = 1.5;
/// Clear paper around letters.
constexpr double kAir_mm = 0.45;

/// The middle of the side of a box that looks at a point.
Vec2 near_side(const Box& box, const Vec2& point) {
    const Vec2 centre = box.centre();
    if (point.x() < box.left) {
        return {box.left, centre.y()};
    }
    if (point.x() > box.right()) {
        return {box.right(), centre.y()};
    }
    return {point.x(), point.y() < centre.y() ? box.top : box.bottom()};
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

PlacedBox placed_at(const BoxRequest& request, const Vec2& centre) {
    const Vec2& size_mm = request.size_mm;
    PlacedBox placed;
    placed.box = {centre.x() - size_mm.x() / 2.0, centre.y() - size_mm.y() / 2.0, size_mm.x(),
                  size_mm.y()};
    placed.to_the_left = centre.x() < request.anchor.x() - size_mm.x() / 4.0;
    placed.leader_to = near_side(placed.box, request.anchor);
    placed.leader_from = edge_towards(request.anchor, request.half_mm, placed.leader_to);
    return placed;
}

/// Places along one side of a ring, from its middle outwards: -1 to 1.
int places_along(double length_mm, double away_mm) {
    const double step_mm = std::max(1.3, 0.3 * away_mm);
    return std::clamp(static_cast<int>(std::ceil(length_mm / step_mm)), 2, 16);
}

} // namespace

LabelField::LabelField(const Box& area, const TextMeasure& measure)
    : crowd_{area}, settled_{area}, measure_{&measure} {}

void LabelField::cover(const Mark& mark, Crowd crowd) {
    if (const auto* path = std::get_if<Path>(&mark)) {
        crowd_.cover(*path, crowd);
    } else if (const auto* round = std::get_if<Circle>(&mark)) {
        crowd_.cover(*round, crowd);
    } else if (const auto* text = std::get_if<Text>(&mark);
               text != nullptr && crowd != Crowd::none) {
        take(text_box(*text, *measure_));
    }
}

void LabelField::take(const Box& box) {
    settled_.add(box);
}

std::optional<double> LabelField::crowding(const Box& box) {
    return settled_.overlaps(box) ? std::nullopt : crowd_.under(box);
}

std::optional<double> LabelField::box_cost(const Box& box, bool under_lettering) {
    if (part_ && !part_->holds(box)) {
        return std::nullopt;
    }
    const Box air = box.inset(-kAir_mm);
    const std::optional<double> drawn = crowding(air);
    if (drawn && settled_.is_crossed(air)) {
        return under_lettering ? std::optional{*drawn + kLeaderUnderLetters} : std::nullopt;
    }
    return drawn;
}

std::optional<double> LabelField::leader_cost(const PlacedBox& placed, bool under_lettering) const {
    if (!placed.has_leader) {
        return 0.0;
    }
    const int letters = settled_.boxes_across(placed.leader_from, placed.leader_to);
    if (letters > 0 && !under_lettering) {
        return std::nullopt;
    }
    return kLeader + letters * kLeaderUnderLetters
           + kLeaderAcrossLeader * settled_.lines_across(placed.leader_from, placed.leader_to)
           + crowd_.across(placed.leader_from, placed.leader_to);
}

void LabelField::try_ring(const BoxRequest& request, double away_mm,
                          std::optional<PlacedBox>& best) {
    const Vec2 reach = request.half_mm + Vec2::Constant(away_mm) + request.size_mm / 2.0;
    const bool has_leader = request.always_leader || away_mm > kLeaderFrom_mm;
    for (const int axis : {0, 1}) { // Beside, then above and below.
        const int across = 1 - axis;
        const int count = places_along(2.0 * reach[across], away_mm);
        for (int k = 0; k <= count; ++k) {
            // 0, then to both sides in turn.
            const double share = (k + 1) / 2 * 2.0 / count * (k % 2 == 0 ? -1.0 : 1.0);
            for (const double side : {1.0, -1.0}) {
                Vec2 centre = request.anchor;
                centre[axis] += side * reach[axis];
                centre[across] += share * reach[across];
                const double far = away_mm * kPerMillimetre + std::abs(share) * kOffTheMiddle
                                   + (axis == 1 ? kAboveOrBelow : 0.0);
                if (best && far >= best->cost) {
                    continue;
                }
                PlacedBox placed = placed_at(request, centre);
                placed.has_leader = has_leader;
                const auto hidden = box_cost(placed.box, request.under_lettering);
                if (!hidden || (best && far + *hidden >= best->cost)) {
                    continue;
                }
                const auto leader = leader_cost(placed, request.under_lettering);
                if (leader && (!best || far + *hidden + *leader < best->cost)) {
                    placed.over_lines = *hidden > 0.0;
                    placed.cost = far + *hidden + *leader;
                    best = placed;
                }
            }
        }
    }
}

std::optional<PlacedBox> LabelField::best_place(const BoxRequest& request) {
    std::optional<PlacedBox> best = best_inside(request);
    for (const double away_mm : kDistances_mm) {
        if (away_mm > request.farthest_mm || (best && best->cost < away_mm * kPerMillimetre)) {
            break;
        }
        try_ring(request, away_mm, best);
    }
    if (best && !std::isfinite(best->cost)) {
        return std::nullopt;
    }
    return best;
}

std::optional<PlacedBox> LabelField::best_inside(const BoxRequest& request) {
    const Vec2 slack_mm = request.half_mm - request.size_mm / 2.0 - Vec2::Constant(kAir_mm);
    if (!request.inside || slack_mm.minCoeff() < 0.0) {
        return std::nullopt;
    }
    // Off the middle as well, where a person or a beam may leave more room.
    std::optional<PlacedBox> best;
    for (const double across : {0.0, -1.0, -0.5, 0.5, 1.0}) {
        for (const double down : {0.0, 1.0, 0.5, -0.5, -1.0}) {
            PlacedBox placed =
                placed_at(request, request.anchor + slack_mm.cwiseProduct(Vec2{across, down}));
            placed.to_the_left = false;
            const auto cost = box_cost(placed.box, request.under_lettering);
            if (cost && (!best || *cost < best->cost)) {
                placed.over_lines = *cost > 0.0;
                placed.cost = *cost;
                best = placed;
            }
        }
    }
    return best;
}

void LabelField::settle(const PlacedBox& placed) {
    settled_.add(placed.box);
    if (placed.has_leader) {
        settled_.add_line(placed.leader_from, placed.leader_to);
    }
}

void LabelField::release(const PlacedBox& placed) {
    settled_.remove(placed.box);
    if (placed.has_leader) {
        settled_.remove_line(placed.leader_from, placed.leader_to);
    }
}

std::optional<PlacedBox> LabelField::find(const BoxRequest& request) {
    std::optional<PlacedBox> best = best_place(request);
    if (best) {
        settle(*best);
    }
    return best;
}

int LabelField::near_places(const BoxRequest& request) {
    int count = best_inside(request) ? 1 : 0;
    for (const double away_mm : kDistances_mm) {
        if (away_mm > kNear_mm) {
            break;
        }
        const Vec2 reach = request.half_mm + Vec2::Constant(away_mm) + request.size_mm / 2.0;
        for (const Vec2& way : {Vec2{1, 0}, Vec2{-1, 0}, Vec2{0, 1}, Vec2{0, -1}, Vec2{1, 1},
                                Vec2{1, -1}, Vec2{-1, 1}, Vec2{-1, -1}}) {
            const PlacedBox placed = placed_at(request, request.anchor + way.cwiseProduct(reach));
            count += box_cost(placed.box, false) ? 1 : 0;
        }
    }
    return count;
}

} // namespace throwline::sheet
