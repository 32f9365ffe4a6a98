#pragma once

#include "sheet/board.h"
#include "sheet/furniture.h"
#include "sheet/page.h"
#include "sheet/selection.h"

#include <functional>

/// What every sheet that is true to scale has in common: the paper, the scale, the place of the
/// drawing, and what stands around it.
namespace throwline::sheet {

/// What a sheet is made from.
struct SheetInput {
    const checks::Analysis& analysis;
    const catalogue::Catalogue& catalogue;
    const TextMeasure& measure;
};

/// Paper kept free around a drawing for what is written beside it.
struct Surround {
    double left_mm = kPlanMargin_mm;
    double right_mm = kPlanMargin_mm;
    double above_mm = kPlanMargin_mm;
    double below_mm = kPlanMargin_mm;
};

/// What is particular to one kind of sheet.
struct ScaledSheet {
    /// Everything that must be on the sheet, metres: a plan from above, or along and up.
    Extent extent;
    Surround surround;
    /// Lays the marks down and asks for lettering.
    std::function<void(Board&)> draw;
    /// Numbered, lettered in the panel and marked on the drawing.
    std::vector<const checks::Finding*> findings;
    /// What the panel holds in place of findings; lays its own marks.
    std::function<void(Marks&, const Box&)> panel;
    /// Cautions in the strip, as sentences.
    std::vector<std::string> cautions;
    /// What stands before the findings in their part of the panel; lays its own marks and returns
    /// what it leaves for them.
    std::function<Box(Marks&, const Box&)> before_findings;
    /// The extent is a piece of something larger: what lies beyond the field is cut off.
    bool is_cutout = false;
    /// Without a legend its part of the panel goes to the findings.
    bool with_legend = true;
    /// Whether north is shown in the title block: not on a section.
    bool with_north = true;
    /// Whether the drawing tells what larger scales would take.
    bool tells_larger = false;
};

/// The finished sheet. Errors: an unknown paper or scale, or a drawing that fits neither the sheet
/// nor, when the options allow tiles, a hundred of them.
Result<Drawing> composed(const SheetInput& input, const SheetOptions& options,
                         const ScaledSheet& sheet);

/// The paper that the options ask for; errors as of paper_named().
Result<catalogue::Paper> paper_of(const SheetOptions& options,
                                  const catalogue::Catalogue& catalogue);

/// "A3 landscape"
std::string paper_text(const catalogue::Paper& paper, Orientation orientation);

/// The stage that lamps and scenery are drawn from: that of the first beat shown, else one without
/// a beat, which is put into `bare`.
const stage::Stage& stage_shown(const SheetInput& input, const Selection& selection,
                                stage::Stage& bare);

/// What a sheet of the whole plan seen from above shows.
struct PlanShown {
    Selection selection;
    /// As in lamps_shown().
    std::vector<stage::PlacedLamp> lamps;
    Extent extent;
};

/// Errors: a plan without a room, or options that name what is not there.
Result<PlanShown> plan_shown(const SheetInput& input, const SheetOptions& options);

} // namespace throwline::sheet
