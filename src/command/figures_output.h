#pragma once

#include "checks/mark_light.h"
#include "checks/shot_figures.h"
#include "command/json_value.h"

#include <string>
#include <vector>

/// How the figures of shots and marks are printed.
namespace throwline::command {

/// One shot at one beat: what it takes in, and the light on each of its subjects.
struct ShotRow {
    checks::ShotFigures figures;
    std::vector<checks::MarkLight> marks;
    /// The lamps and owners that `marks` count.
    const stage::Stage* stage = nullptr;
};

/// A block of lines a shot: lens, frame and focus; then each subject with size, what is seen of it,
/// its light, and the lamps that light it, strongest first.
std::string figures_text(const std::vector<ShotRow>& rows, UnitSystem units);

/// {"shots": [{"shot", "beat", "camera", "focal_mm", "stop", ..., "subjects": [{"person",
/// "distance_m", ..., "light": {..., "lamps": [...]}}]}]}. SI units and degrees; null for what has
/// no answer.
JsonValue::Object figures_json(const std::vector<ShotRow>& rows);

} // namespace throwline::command
