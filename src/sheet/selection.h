#pragma once

#include "checks/check.h"
#include "sheet/sheet_options.h"

#include <vector>

/// What a sheet shows of a production.
namespace throwline::sheet {

/// Which beats and shots a sheet shows, in the order of the plan.
struct Selection {
    std::vector<const checks::BeatScene*> beats;
    std::vector<const checks::ShotScene*> shots;
};

/// The beats and shots that the options ask for. Errors: a shot or beat that is not in the plan,
/// with the nearest name.
Result<Selection> selected(const checks::Analysis& analysis, const SheetOptions& options);

/// Findings about the selected shots and beats, and those about none; empty when the options leave
/// findings out.
std::vector<const checks::Finding*> selected_findings(const checks::Analysis& analysis,
                                                      const SheetOptions& options);

/// Every lamp as it stands in the first beat shown in which it burns, else as on `stage`.
std::vector<stage::PlacedLamp> lamps_shown(const stage::Stage& stage, const Selection& selection);

} // namespace throwline::sheet
