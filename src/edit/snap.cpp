#include "edit/snap.h"

#include "edit/snap_question.h"

#include <cmath>

namespace throwline::edit {

namespace {

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
    return SnapQuestion{impl_->index, settings, impl_->units, point, from}.answer();
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
