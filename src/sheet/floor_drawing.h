#pragma once

#include "catalogue/catalogue.h"
#include "checks/check.h"
#include "plan/plan.h"
#include "sheet/drawing.h"
#include "sheet/plan_frame.h"
#include "sheet/reduced_pictures.h"

#include <memory>
#include <optional>
#include <set>
#include <stop_token>
#include <string>

/// The floor as the screen shows it: the marks of the floor plan, at any scale, cut to what is
/// looked at.
namespace throwline::sheet {

/// What is laid over the floor; each by itself.
struct Overlays {
    bool coverage = true;
    bool focus = false;
    bool sight_lines = false;
    bool beams = false;
    bool pools = true;
    bool levels = false;
    bool circuits = false;
    bool ways_out = false;
    bool findings = true;
    bool ground = true;
    bool sizes = true;
    bool lettering = true;
    bool underlay = true;

    bool operator==(const Overlays&) const = default;
};

/// Levels on the floor as a picture with contours, see level_picture.h.
struct LevelPicture;

struct FloorQuestion {
    const plan::Plan& plan;
    const catalogue::Catalogue& catalogue;
    plan::Id<plan::Beat> beat;
    plan::Id<plan::Shot> shot;
    /// Paper millimetres a metre of floor; lettering keeps its size on paper.
    double mm_per_m = 20.0;
    /// What is looked at, paper millimetres, y down, the plan's origin at (0, 0).
    Box window{};
    /// The part of the window that is in sight, when more is drawn than that: words about what
    /// stands in it stay in it.
    std::optional<Box> in_sight{};
    Overlays overlays{};
    /// Names of things that are not drawn: hidden ones, and those that a drag draws itself.
    std::set<std::string> left_out{};
    /// Only these are drawn, without room and ground, when it is not empty: for a drag.
    std::set<std::string> only{};
    /// Findings of the same plan to number on the floor; null for none.
    const checks::Analysis* analysis = nullptr;
    /// The picture beneath the plan, at its own size or reduced; none by itself.
    ReducedPicture underlay{};
    std::shared_ptr<const LevelPicture> levels = nullptr;
};

/// Marks by layer, paper millimetres with the plan's origin at (0, 0), so that panning needs no new
/// drawing. A plan without a room is drawn as the rest of it. Nothing when stopped.
std::optional<Drawing> floor_drawing(const FloorQuestion& question, const TextMeasure& measure,
                                     const std::stop_token& stop = {});

} // namespace throwline::sheet
