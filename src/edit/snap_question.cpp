#include "edit/snap_question.h"

#include "base/length_text.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// A line begins on a side that is no farther from it than this.
constexpr double kOnSide_m = 0.01;
/// Lines whose directions differ by a smaller sine never cross where somebody could see it.
constexpr double kParallel = 1e-6;
/// Lengths that lines are drawn to; the finest that is no smaller than the reach is taken.
constexpr Length kEvenMetric[]{Length::metres(0.05), Length::metres(0.1), Length::metres(0.5),
                               Length::metres(1), Length::metres(5)};
constexpr Length kEvenImperial[]{Length::inches(3), Length::inches(6), Length::feet(1),
                                 Length::feet(4), Length::feet(16)};

double even_step_m(UnitSystem units, double reach_m) {
    const auto& steps = units == UnitSystem::metric ? kEvenMetric : kEvenImperial;
    for (const Length step : steps) {
        if (step.m() >= reach_m) {
            return step.m();
        }
    }
    return 0.0;
}

/// Where two lines cross; nothing when they are parallel.
std::optional<Vec2> crossing(const SnapRay& a, const SnapRay& b) {
    const double sine = cross(a.along, b.along);
    if (std::abs(sine) < kParallel) {
        return std::nullopt;
    }
    return a.from + a.along * (cross(b.from - a.from, b.along) / sine);
}

SnapRay ray_of(const SnapSide& side) {
    return {side.from, (side.to - side.from).normalized(), side.words};
}

} // namespace

void SnapQuestion::offer(std::optional<Snap>& best, Snap snap) const {
    if (in_reach(snap.at) && (!best || away_m(snap.at) < away_m(best->at))) {
        best = std::move(snap);
    }
}

/// Lines from where the drag began: along the page, and along and square to sides it began on.
std::vector<SnapRay> SnapQuestion::rays_from_start() const {
    std::vector<SnapRay> rays;
    if (!from || !settings.right_angles || !((point - *from).norm() > settings.reach_m)) {
        return rays;
    }
    for (const SnapSide* side : index.sides_near(*from, kOnSide_m)) {
        const SnapRay along = ray_of(*side);
        rays.push_back({*from, turned_left(along.along), fmt::format("square to {}", side->words)});
        rays.push_back({*from, along.along, fmt::format("along {}", side->words)});
    }
    rays.push_back({*from, Vec2::UnitX(), "straight across"});
    rays.push_back({*from, Vec2::UnitY(), "straight up"});
    return rays;
}

void SnapQuestion::offer_crossings(std::optional<Snap>& best) const {
    std::vector<SnapRay> rays;
    for (const SnapSide* side : index.sides_near(point, settings.reach_m)) {
        rays.push_back(ray_of(*side));
    }
    const std::size_t sides = rays.size();
    for (SnapRay& ray : rays_from_start()) {
        if (in_reach(ray.nearest(point))) {
            rays.push_back(std::move(ray));
        }
    }
    // Of lines from the start only those with a side: they all cross each other at the start.
    for (std::size_t i = 0; i < sides; ++i) {
        for (std::size_t j = i + 1; j < rays.size(); ++j) {
            if (const std::optional<Vec2> at = crossing(rays[i], rays[j]); at && in_reach(*at)) {
                offer(best, {*at,
                             SnapKind::crossing,
                             fmt::format("{} and {}", rays[i].words, rays[j].words),
                             {}});
            }
        }
    }
}

std::optional<Snap> SnapQuestion::at_point() const {
    std::optional<Snap> best;
    for (const SnapPoint* near : index.points_near(point, settings.reach_m)) {
        const bool wanted = (near->kind == SnapKind::end && settings.ends)
                            || (near->kind == SnapKind::pipe_position && settings.pipes);
        if (wanted) {
            offer(best, {near->at, near->kind, near->words, {}});
        }
    }
    if (settings.ends) {
        offer_crossings(best);
    }
    return best;
}

std::optional<Snap> SnapQuestion::at_middle() const {
    std::optional<Snap> best;
    for (const SnapPoint* near : index.points_near(point, settings.reach_m)) {
        if (near->kind == SnapKind::middle && settings.middles) {
            offer(best, {near->at, near->kind, near->words, {}});
        }
    }
    return best;
}

std::optional<Snap> SnapQuestion::on_side() const {
    std::optional<Snap> best;
    if (!settings.walls) {
        return best;
    }
    for (const SnapSide* side : index.sides_near(point, settings.reach_m)) {
        offer(best, {side->nearest(point),
                     SnapKind::on_wall,
                     fmt::format("on {}", side->words),
                     {{side->from, side->to}}});
    }
    return best;
}

/// On a line from the start, and above or beside a point elsewhere: that closes rooms squarely.
std::optional<Snap> SnapQuestion::squared_and_aligned(const SnapRay& ray) const {
    std::optional<Snap> best;
    if (!settings.alignments) {
        return best;
    }
    for (const Eigen::Index axis : {0, 1}) {
        const SnapPoint* other = index.in_line(point, axis, settings.reach_m);
        if (other == nullptr) {
            continue;
        }
        const SnapRay across{other->at, axis == 0 ? Vec2::UnitY() : Vec2::UnitX(), {}};
        if (const std::optional<Vec2> at = crossing(ray, across)) {
            offer(best, {*at,
                         SnapKind::aligned,
                         fmt::format("{}, in line with {}", ray.words, other->words),
                         {{*from, *at}, {other->at, *at}}});
        }
    }
    return best;
}

/// On a line from the start, at an even length of it when one is in reach.
Snap SnapQuestion::evened(const SnapRay& ray) const {
    const Vec2 on_ray = ray.nearest(point);
    const double step_m = even_step_m(units, settings.reach_m);
    if (step_m > 0.0) {
        const Vec2 way = on_ray - *from;
        const double even_m = std::round(way.norm() / step_m) * step_m;
        const Vec2 at = *from + way.normalized() * even_m;
        if (even_m > 0.0 && in_reach(at)) {
            return {at,
                    SnapKind::even_length,
                    fmt::format("{}, {}", ray.words, shown(Length::metres(even_m), units)),
                    {{*from, at}}};
        }
    }
    return {on_ray, SnapKind::right_angle, ray.words, {{*from, on_ray}}};
}

std::optional<Snap> SnapQuestion::squared() const {
    const SnapRay* best = nullptr;
    const std::vector<SnapRay> rays = rays_from_start();
    for (const SnapRay& ray : rays) {
        const double ray_m = away_m(ray.nearest(point));
        if (ray_m <= settings.reach_m
            && (best == nullptr || ray_m < away_m(best->nearest(point)))) {
            best = &ray;
        }
    }
    if (best == nullptr) {
        return std::nullopt;
    }
    const std::optional<Snap> both = squared_and_aligned(*best);
    return both ? both : evened(*best);
}

/// Above or beside points elsewhere; both at once where both are in reach.
std::optional<Snap> SnapQuestion::aligned() const {
    if (!settings.alignments) {
        return std::nullopt;
    }
    Snap snap{point, SnapKind::aligned, {}, {}};
    std::vector<const SnapPoint*> others;
    for (const Eigen::Index axis : {0, 1}) {
        if (const SnapPoint* other = index.in_line(point, axis, settings.reach_m)) {
            snap.at[axis] = other->at[axis];
            snap.words +=
                fmt::format("{}{}", others.empty() ? "in line with " : " and ", other->words);
            others.push_back(other);
        }
    }
    for (const SnapPoint* other : others) {
        snap.lines.push_back({other->at, snap.at});
    }
    return others.empty() ? std::nullopt : std::optional{std::move(snap)};
}

std::optional<Snap> SnapQuestion::on_square() const {
    std::optional<Snap> best;
    if (settings.pitch_m > 0.0) {
        const Vec2 square = (point / settings.pitch_m).array().round().matrix() * settings.pitch_m;
        offer(best, {square, SnapKind::grid_pitch, "square of the floor", {}});
    }
    return best;
}

std::optional<Snap> SnapQuestion::even_length() const {
    if (!from || !settings.right_angles || !((point - *from).norm() > settings.reach_m)) {
        return std::nullopt;
    }
    const SnapRay ray{*from, (point - *from).normalized(), "from the start"};
    Snap snap = evened(ray);
    return snap.kind == SnapKind::even_length ? std::optional{std::move(snap)} : std::nullopt;
}

std::optional<Snap> SnapQuestion::answer() const {
    using Ask = std::optional<Snap> (SnapQuestion::*)() const;
    constexpr Ask kStrongestFirst[]{&SnapQuestion::at_point,   &SnapQuestion::at_middle,
                                    &SnapQuestion::on_side,    &SnapQuestion::squared,
                                    &SnapQuestion::aligned,    &SnapQuestion::on_square,
                                    &SnapQuestion::even_length};
    for (const Ask ask : kStrongestFirst) {
        if (std::optional<Snap> snap = (this->*ask)()) {
            return snap;
        }
    }
    return std::nullopt;
}

} // namespace throwline::edit
