#pragma once

#include "catalogue/catalogue.h"
#include "checks/check.h"
#include "plan/plan.h"
#include "sheet/drawing.h"
#include "sheet/sheet_options.h"
#include "ui/paint/paint.h"

#include <string>

namespace throwline::test {

/// The shipped tables.
const catalogue::Catalogue& sheet_catalogue();

/// Every character 0.8 of the height of capitals wide, so that golden texts do not hang on a font.
class EvenMeasure : public sheet::TextMeasure {
  public:
    double width_mm(const std::string& text, double height_mm, bool bold) const override;
};

/// One room, one person, one camera, two lamps.
plan::Plan small_plan();

/// A studio with a grid, a kitchen set, four people over three beats, three cameras with eight
/// shots and eighteen lamps.
plan::Plan full_plan(UnitSystem units = UnitSystem::metric);

/// Everything known about a plan.
checks::Analysis analysed(const plan::Plan& plan);

/// The floor plan of a production with the shipped tables.
Result<sheet::Drawing> floor_plan_of(const checks::Analysis& analysis,
                                     const sheet::SheetOptions& options,
                                     const sheet::TextMeasure& measure);

/// The session of the test program.
const paint::PaintSession& session();

} // namespace throwline::test
