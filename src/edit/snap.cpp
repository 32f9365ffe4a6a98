#include "edit/snap.h"

#include "base/length_text.h"
#include "edit/snap_index.h"

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

/// Of several points that are moved together the one wins that comes onto something; what only
/// lines up, or lies on a square, gives way.
int weakness_of(SnapKind kind) {
    switch (kind) {
    case SnapKind::end:
    case SnapKind::crossing:
    case SnapKind::pipe_position:
        return 0;
    case SnapKind::middle:
    case SnapKind::on_wall:
        return 1;
    case SnapKind::right_angle:
    case SnapKind::aligned:
    case SnapKind::grid_pitch:
    case SnapKind::even_length:
        return 2;
    }
    return 2;
}

/// A line without ends that a place can lie on.
struct Ray {
    Vec2 from = Vec2::Zero();
    Vec2 along = Vec2::UnitX();
    std::string words;

    Vec2 nearest(const Vec2& point) const { return from + along * along.dot(point - from); }
};

/// Where two lines cross; nothing when they are parallel.
std::optional<Vec2> crossing(const Ray& a, const Ray& b) {
    const double sine = cross(a.along, b.along);
    if (std::abs(sine) < kParallel) {
        return std::nullopt;
    }
    return a.from + a.along * (cross(b.from - a.from, b.along) / sine);
}

Ray ray_of(const SnapSide& side) {
    return {side.from, (side.to - side.from).normalized(), side.words};
}

/// One question, asked of what is indexed; each answer is one way in which a place can be drawn.
struct Question {
    const SnapIndex& index;
    const SnapSettings& settings;
    UnitSystem units;
    Vec2 point;
    std::optional<Vec2> from;

    double away_m(const Vec2& at) const { return (at - point).norm(); }
    bool in_reach(const Vec2& at) const { return away_m(at) <= settings.reach_m; }
    /// Puts a snap in the place of one that is farther away or absent.
    void offer(std::optional<Snap>& best, Snap snap) const;

    std::vector<Ray> rays_from_start() const;
    std::optional<Snap> at_point() const;
    std::optional<Snap> at_middle() const;
    std::optional<Snap> on_side() const;
    std::optional<Snap> squared() const;
    std::optional<Snap> squared_and_aligned(const Ray& ray) const;
    Snap evened(const Ray& ray) const;
    std::optional<Snap> aligned() const;
    std::optional<Snap> on_square() const;
    std::optional<Snap> even_length() const;
    std::optional<Snap> answer() const;

  private:
    void offer_crossings(std::optional<Snap>& best) const;
};

void Question::offer(std::optional<Snap>& best, Snap snap) const {
    if (in_reach(snap.at) && (!best || away_m(snap.at) < away_m(best->at))) {
        best = std::move(snap);
    }
}

/// Lines from where the drag began: along the page, and along and square to sides it began on.
std::vector<Ray> Question::rays_from_start() const {
    std::vector<Ray> rays;
    if (!from || !settings.right_angles || !((point - *from).norm() > settings.reach_m)) {
        return rays;
    }
    for (const SnapSide* side : index.sides_near(*from, kOnSide_m)) {
        const Ray along = ray_of(*side);
        rays.push_back({*from, turned_left(along.along), fmt::format("square to {}", side->words)});
        rays.push_back({*from, along.along, fmt::format("along {}", side->words)});
    }
    rays.push_back({*from, Vec2::UnitX(), "straight across"});
    rays.push_back({*from, Vec2::UnitY(), "straight up"});
    return rays;
}

void Question::offer_crossings(std::optional<Snap>& best) const {
    std::vector<Ray> rays;
    for (const SnapSide* side : index.sides_near(point, settings.reach_m)) {
        rays.push_back(ray_of(*side));
    }
    const std::size_t sides = rays.size();
    for (Ray& ray : rays_from_start()) {
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

std::optional<Snap> Question::at_point() const {
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

std::optional<Snap> Question::at_middle() const {
    std::optional<Snap> best;
    for (const SnapPoint* near : index.points_near(point, settings.reach_m)) {
        if (near->kind == SnapKind::middle && settings.middles) {
            offer(best, {near->at, near->kind, near->words, {}});
        }
    }
    return best;
}

std::optional<Snap> Question::on_side() const {
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
std::optional<Snap> Question::squared_and_aligned(const Ray& ray) const {
    std::optional<Snap> best;
    if (!settings.alignments) {
        return best;
    }
    for (const Eigen::Index axis : {0, 1}) {
        const SnapPoint* other = index.in_line(point, axis, settings.reach_m);
        if (other == nullptr) {
            continue;
        }
        const Ray across{other->at, axis == 0 ? Vec2::UnitY() : Vec2::UnitX(), {}};
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
Snap Question::evened(const Ray& ray) const {
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

std::optional<Snap> Question::squared() const {
    const Ray* best = nullptr;
    const std::vector<Ray> rays = rays_from_start();
    for (const Ray& ray : rays) {
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
std::optional<Snap> Question::aligned() const {
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

std::optional<Snap> Question::on_square() const {
    std::optional<Snap> best;
    if (settings.pitch_m > 0.0) {
        const Vec2 square = (point / settings.pitch_m).array().round().matrix() * settings.pitch_m;
        offer(best, {square, SnapKind::grid_pitch, "square of the floor", {}});
    }
    return best;
}

std::optional<Snap> Question::even_length() const {
    if (!from || !settings.right_angles || !((point - *from).norm() > settings.reach_m)) {
        return std::nullopt;
    }
    const Ray ray{*from, (point - *from).normalized(), "from the start"};
    Snap snap = evened(ray);
    return snap.kind == SnapKind::even_length ? std::optional{std::move(snap)} : std::nullopt;
}

std::optional<Snap> Question::answer() const {
    using Ask = std::optional<Snap> (Question::*)() const;
    constexpr Ask kStrongestFirst[]{
        &Question::at_point, &Question::at_middle, &Question::on_side,    &Question::squared,
        &Question::aligned,  &Question::on_square, &Question::even_length};
    for (const Ask ask : kStrongestFirst) {
        if (std::optional<Snap> snap = (this->*ask)()) {
            return snap;
        }
    }
    return std::nullopt;
}

} // namespace

class SnapField::Impl {
  public:
    Impl(const Context& context, std::span<const Thing> left_out)
        : index{context, left_out}, units{context.plan.units} {}

    SnapIndex index;
    UnitSystem units;
};

std::string_view name_of(SnapKind kind) {
    switch (kind) {
    case SnapKind::end:
        return "end";
    case SnapKind::middle:
        return "middle";
    case SnapKind::crossing:
        return "crossing";
    case SnapKind::pipe_position:
        return "position";
    case SnapKind::grid_pitch:
        return "square";
    case SnapKind::on_wall:
        return "on";
    case SnapKind::right_angle:
        return "square to";
    case SnapKind::aligned:
        return "in line with";
    case SnapKind::even_length:
        return "even length";
    }
    return "";
}

SnapField::SnapField(const Context& context, std::span<const Thing> left_out)
    : impl_{std::make_unique<Impl>(context, left_out)} {}
SnapField::~SnapField() = default;
SnapField::SnapField(SnapField&&) noexcept = default;
SnapField& SnapField::operator=(SnapField&&) noexcept = default;

std::optional<Snap> SnapField::snapped(const Vec2& point, const SnapSettings& settings,
                                       const std::optional<Vec2>& from) const {
    return Question{impl_->index, settings, impl_->units, point, from}.answer();
}

std::optional<Snap> SnapField::snapped_shift(std::span<const Vec2> points, const Vec2& by_m,
                                             const SnapSettings& settings) const {
    std::optional<Snap> best;
    std::pair<int, double> least{0, 0.0};
    for (const Vec2& point : points) {
        const Vec2 there = point + by_m;
        std::optional<Snap> snap = snapped(there, settings);
        if (!snap) {
            continue;
        }
        const std::pair<int, double> cost{weakness_of(snap->kind), (snap->at - there).norm()};
        if (!best || cost < least) {
            least = cost;
            snap->at = snap->at - point;
            best = std::move(snap);
        }
    }
    return best;
}

double usual_pitch_m(const plan::Plan& plan) {
    if (plan.grid && plan.grid->pitch_x.m() != 0.0) {
        return std::abs(plan.grid->pitch_x.m());
    }
    return plan.units == UnitSystem::metric ? 1.0 : Length::feet(4).m();
}

} // namespace throwline::edit
