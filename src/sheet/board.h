#pragma once

#include "sheet/lettering.h"

#include <array>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace throwline::sheet {

/// Layers of a floor plan in the order in which they are laid down.
enum class PlanLayer {
    underlay,
    ground,
    pools,
    coverage,
    built,
    standing,
    people,
    cameras,
    lamps,
    sound,
    power,
    findings,
    lettering,
    frame
};
inline constexpr int kPlanLayers = 14;
std::string_view name_of(PlanLayer layer);

/// What the legend can explain; in the order in which it does.
enum class LegendEntry {
    wall,
    door,
    window,
    flat,
    furniture,
    riser,
    drape,
    person,
    walk,
    camera,
    coverage,
    hung_lamp,
    standing_lamp,
    practical,
    pool,
    boom,
    outlet,
    pipe,
    error,
    caution,
    note,
    revised
};

/// The drawing while it is being made: marks by layer, words that still want a place, and what has
/// been used so far.
struct Board {
    const PlanFrame& frame;
    LabelField& field;
    std::array<Marks, kPlanLayers> layers{};
    std::vector<LabelRequest> labels{};
    std::set<LegendEntry> used{};
    /// What lies beyond this is cut off; a sheet that shows all of its plan has none.
    std::optional<Box> window{};

    /// Whether a place on paper is shown.
    bool shows(const Vec2& point) const { return !window || window->contains(point); }
    /// Draws what has been laid down on a layer so far weaker, so that the rest stands out.
    void draw_back(PlanLayer layer, double share);
    /// Lays down a mark; lettering keeps off it as `crowd` says.
    void add(PlanLayer layer, Mark mark, Crowd crowd = Crowd::none);
};

} // namespace throwline::sheet
