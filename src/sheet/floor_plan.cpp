#include "sheet/floor_plan.h"

#include "checks/cautions.h"
#include "sheet/changes_shown.h"
#include "sheet/symbols.h"

namespace throwline::sheet {

namespace {

void draw_plan(Board& board, const SheetInput& input, std::span<const stage::PlacedLamp> lamps,
               const Selection& selection, const Extent& extent, const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    if (options.ground) {
        draw_ground(board, plan);
    }
    draw_room(board, plan);
    draw_scenery(board, plan, input.catalogue);
    if (options.pools) {
        draw_pools(board, plan, lamps);
    }
    if (options.coverage) {
        draw_coverage(board, plan, selection);
    }
    draw_people(board, plan, selection);
    draw_cameras(board, plan, selection);
    draw_lamps(board, plan, lamps);
    draw_booms(board, plan, selection);
    draw_outlets(board, plan);
    letter_grid(board, plan, extent);
    draw_overall_sizes(board, plan, extent);
}

} // namespace

Result<Drawing> floor_plan_sheet(const SheetInput& input, const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    if (plan.room.outline.size() < 3) {
        return failure("the plan has no room to draw");
    }
    const Result<Selection> selection = selected(input.analysis, options);
    if (!selection) {
        return tl::unexpected{selection.error()};
    }
    stage::Stage bare;
    const stage::Stage& stage = stage_shown(input, *selection, bare);
    const std::vector<stage::PlacedLamp> lamps = lamps_shown(stage, *selection);
    ScaledSheet sheet;
    sheet.extent = extent_of(plan, stage, *selection);
    sheet.draw = [&](Board& board) {
        draw_plan(board, input, lamps, *selection, sheet.extent, options);
        draw_changes(board, input, options, *selection);
    };
    sheet.findings = selected_findings(input.analysis, options);
    sheet.cautions = checks::cautions_for(plan);
    sheet.tells_larger = true;
    return composed(input, options, sheet);
}

Result<std::vector<SheetJob>> floor_plan_jobs(const SheetInput& input,
                                              const SheetOptions& /*options*/) {
    return std::vector<SheetJob>{{"Floor plan", [input](const SheetOptions& options) {
                                      return floor_plan_sheet(input, options);
                                  }}};
}

} // namespace throwline::sheet
