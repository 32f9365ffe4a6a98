#include "base/parallel.h"
#include "base/progress.h"
#include "checks/check.h"

#include <algorithm>

namespace throwline::checks {

namespace {

/// Cells over the frame: a cell is under one percent of the picture's width, so that a stand's
/// column at the far wall is still met; what is smaller has finer rays of its own.
constexpr int kFrameColumns = 128;
constexpr int kFrameRows = 72;

std::vector<ShotScene> shots_in_order(const plan::Plan& plan) {
    std::vector<ShotScene> scenes;
    for (const plan::Shot& shot : plan.shots) {
        for (const plan::Id<plan::Beat>& id : shot.beats) {
            if (const plan::Beat* beat = plan::find(plan, id)) {
                ShotScene& scene = scenes.emplace_back();
                scene.shot = &shot;
                scene.beat = beat;
            }
        }
    }
    return scenes;
}

/// A plan without beats is looked at all the same, at one without a name: furniture in front of a
/// way out is in front of it before anybody has a mark.
std::vector<BeatScene> beats_in_order(const plan::Plan& plan) {
    static const plan::Beat kNoBeat;
    std::vector<BeatScene> scenes(std::max<std::size_t>(plan.beats.size(), 1));
    scenes.front().beat = &kNoBeat;
    for (std::size_t i = 0; i < plan.beats.size(); ++i) {
        scenes[i].beat = &plan.beats[i];
    }
    return scenes;
}

void raise_shot(ShotScene& scene, const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    scene.stage = stage::raise(plan, catalogue, scene.beat->id, scene.shot->id);
    scene.view = stage::view_of(plan, catalogue, scene.stage, *scene.shot);
    if (scene.view) {
        scene.hits = stage::hits_over_frame(scene.stage, *scene.view, kFrameColumns, kFrameRows);
    }
}

void mark_accepted(std::vector<Finding>& findings, const plan::Plan& plan) {
    for (Finding& finding : findings) {
        for (const plan::Acceptance& acceptance : plan.accepted) {
            if (covers(acceptance, finding)) {
                finding.accepted = acceptance.reason;
                break;
            }
        }
    }
}

std::vector<Finding> run_all(const std::vector<Check>& checks, const CheckInput& input,
                             Progress& progress, const std::stop_token& stop) {
    std::vector<std::vector<Finding>> found(checks.size());
    parallel_for(
        checks.size(),
        [&](std::size_t i) {
            found[i] = checks[i].run(input, stop);
            progress.step_done();
        },
        stop);
    std::vector<Finding> findings;
    for (std::vector<Finding>& part : found) {
        findings.insert(findings.end(), std::make_move_iterator(part.begin()),
                        std::make_move_iterator(part.end()));
    }
    return findings;
}

} // namespace

std::optional<Analysis> analyse(plan::PlanPtr plan, const catalogue::Catalogue& catalogue,
                                const std::stop_token& stop,
                                const std::function<void(double)>& went_on) {
    Analysis analysis;
    analysis.plan = std::move(plan);
    const plan::Plan& p = *analysis.plan;
    analysis.shots = shots_in_order(p);
    analysis.beats = beats_in_order(p);
    const std::vector<Check> checks = all_checks();
    const std::size_t shot_count = analysis.shots.size();
    Progress progress{shot_count + analysis.beats.size() + checks.size(), went_on};
    parallel_for(
        shot_count + analysis.beats.size(),
        [&](std::size_t i) {
            if (i < shot_count) {
                raise_shot(analysis.shots[i], p, catalogue);
            } else {
                BeatScene& scene = analysis.beats[i - shot_count];
                scene.stage = stage::raise(p, catalogue, scene.beat->id);
            }
            progress.step_done();
        },
        stop);
    if (stop.stop_requested()) {
        return std::nullopt;
    }
    const CheckInput input{p, catalogue, analysis.shots, analysis.beats};
    analysis.findings = run_all(checks, input, progress, stop);
    if (stop.stop_requested()) {
        return std::nullopt;
    }
    mark_accepted(analysis.findings, p);
    sort_worst_first(analysis.findings);
    return analysis;
}

} // namespace throwline::checks
