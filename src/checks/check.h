#pragma once

#include "checks/finding.h"
#include "stage/shot_view.h"
#include "stage/stage.h"

#include <functional>
#include <span>
#include <stop_token>

namespace throwline::checks {

/// One shot at one of its beats, with everything on its stage.
struct ShotScene {
    const plan::Shot* shot = nullptr;
    const plan::Beat* beat = nullptr;
    stage::Stage stage;
    /// Nothing when the shot cannot be resolved (nobody on the floor to look at).
    std::optional<stage::ShotView> view;
    /// The frame on a grid of cells, made once for all checks that read it.
    stage::FrameHits hits;
};

/// One beat without regard to any shot.
struct BeatScene {
    const plan::Beat* beat = nullptr;
    stage::Stage stage;
};

/// What a check may read. All of it lives as long as the check runs.
struct CheckInput {
    const plan::Plan& plan;
    const catalogue::Catalogue& catalogue;
    std::span<const ShotScene> shots;
    std::span<const BeatScene> beats;
};

/// A check is a value: what it looks for, where the rule comes from, and a pure function.
struct Check {
    std::string_view id;
    std::string_view title;
    /// The rule in a plain sentence.
    std::string_view rule;
    std::string_view source;
    std::vector<Finding> (*run)(const CheckInput& input, const std::stop_token& stop);
};

/// Every check, in the order in which they are explained to a reader: camera, light, floor, power.
/// Adding one is a file and a line in its family's table.
std::vector<Check> all_checks();

/// Everything known about one plan. `plan` is what it was made from, so that a stale one can be
/// told.
struct Analysis {
    plan::PlanPtr plan;
    std::vector<ShotScene> shots;
    /// Those of the plan; of a plan without any, one without a name.
    std::vector<BeatScene> beats;
    std::vector<Finding> findings;
};

/// Raises every shot and beat, runs every check, sorts worst first. Nothing when stopped. The
/// result is the same for any number of threads. `went_on` is told the share done, 0..1, now and
/// then, from any thread, one call at a time.
std::optional<Analysis> analyse(plan::PlanPtr plan, const catalogue::Catalogue& catalogue,
                                const std::stop_token& stop = {},
                                const std::function<void(double)>& went_on = {});

} // namespace throwline::checks
