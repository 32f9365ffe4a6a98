#include "sheet/changes_shown.h"

#include "sheet/clouds.h"

#include <algorithm>

namespace throwline::sheet {

void draw_changes(Board& board, const SheetInput& input, const SheetOptions& options,
                  const Selection& selection) {
    const bool whole = options.shots.empty() && options.beat.empty();
    const std::vector<plan::Difference> changes =
        whole ? options.changes : changes_of(options.changes, selection);
    draw_clouds(board, {changes, *input.analysis.plan, input.catalogue, options.revision});
}

std::vector<plan::Difference> changes_of(std::span<const plan::Difference> changes,
                                         const Selection& selection) {
    const auto is_shown = [&](const plan::ChangedThing& thing) {
        if (thing.kind == plan::ThingKind::mark) {
            return std::any_of(
                selection.beats.begin(), selection.beats.end(),
                [&](const auto* scene) { return scene->beat->id.name == thing.beat; });
        }
        if (thing.kind == plan::ThingKind::shot) {
            return std::any_of(
                selection.shots.begin(), selection.shots.end(),
                [&](const auto* scene) { return scene->shot->id.name == thing.name; });
        }
        return thing.kind != plan::ThingKind::person && thing.kind != plan::ThingKind::camera
               && thing.kind != plan::ThingKind::beat;
    };
    std::vector<plan::Difference> shown{changes.begin(), changes.end()};
    for (plan::Difference& change : shown) {
        std::erase_if(change.things, [&](const auto& thing) { return !is_shown(thing); });
    }
    std::erase_if(shown, [](const plan::Difference& change) { return change.things.empty(); });
    return shown;
}

} // namespace throwline::sheet
