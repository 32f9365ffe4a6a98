#include "sheet/selection.h"

#include "sheet/unknown_name.h"

#include <algorithm>
#include <set>

namespace throwline::sheet {

namespace {

Result<void> check_names(const plan::Plan& plan, const SheetOptions& options) {
    for (const plan::Id<plan::Shot>& shot : options.shots) {
        if (plan::find(plan, shot) == nullptr) {
            return no_such("shot", shot.name,
                           names_of(plan.shots, [](const auto& other) { return other.id.name; }));
        }
    }
    if (!options.beat.empty() && plan::find(plan, options.beat) == nullptr) {
        return no_such("beat", options.beat.name,
                       names_of(plan.beats, [](const auto& other) { return other.id.name; }));
    }
    return {};
}

bool wants_shot(const SheetOptions& options, const plan::Id<plan::Shot>& shot) {
    return options.shots.empty()
           || std::find(options.shots.begin(), options.shots.end(), shot) != options.shots.end();
}

bool wants_beat(const SheetOptions& options, const plan::Id<plan::Beat>& beat) {
    return options.beat.empty() || options.beat == beat;
}

} // namespace

Result<Selection> selected(const checks::Analysis& analysis, const SheetOptions& options) {
    if (const auto checked = check_names(*analysis.plan, options); !checked) {
        return tl::unexpected{checked.error()};
    }
    Selection selection;
    std::set<std::string> beats_of_shots;
    for (const checks::ShotScene& scene : analysis.shots) {
        if (wants_shot(options, scene.shot->id) && wants_beat(options, scene.beat->id)) {
            selection.shots.push_back(&scene);
            beats_of_shots.insert(scene.beat->id.name);
        }
    }
    for (const checks::BeatScene& scene : analysis.beats) {
        if (wants_beat(options, scene.beat->id)
            && (options.shots.empty() || beats_of_shots.contains(scene.beat->id.name))) {
            selection.beats.push_back(&scene);
        }
    }
    return selection;
}

std::vector<const checks::Finding*> selected_findings(const checks::Analysis& analysis,
                                                      const SheetOptions& options) {
    std::vector<const checks::Finding*> findings;
    for (const checks::Finding& finding : analysis.findings) {
        if (options.findings && (finding.shot.empty() || wants_shot(options, finding.shot))
            && (finding.beat.empty() || wants_beat(options, finding.beat))) {
            findings.push_back(&finding);
        }
    }
    return findings;
}

std::vector<stage::PlacedLamp> lamps_shown(const stage::Stage& stage, const Selection& selection) {
    std::vector<stage::PlacedLamp> lamps = stage.lamps;
    for (stage::PlacedLamp& lamp : lamps) {
        for (const checks::BeatScene* scene : selection.beats) {
            const stage::PlacedLamp* other = scene->stage.lamp(lamp.lamp);
            if (lamp.beam.peak_cd <= 0.0 && other != nullptr && other->beam.peak_cd > 0.0) {
                lamp = *other;
            }
        }
    }
    return lamps;
}

} // namespace throwline::sheet
