#include "sheet/floor_plan.h"

#include "checks/cautions.h"
#include "sheet/changes_shown.h"
#include "sheet/symbols.h"

namespace throwline::sheet {

namespace {

void draw_plan(Board& board, const SheetInput& input, const PlanShown& shown,
               const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    const auto& [selection, lamps, extent] = shown;
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
    const Result<PlanShown> shown = plan_shown(input, options);
    if (!shown) {
        return tl::unexpected{shown.error()};
    }
    ScaledSheet sheet;
    sheet.extent = shown->extent;
    sheet.draw = [&](Board& board) {
        draw_plan(board, input, *shown, options);
        draw_changes(board, input, options, shown->selection);
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
