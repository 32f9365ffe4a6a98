#pragma once

#include "sheet/plan_frame.h"
#include "sheet/scale_choice.h"

namespace throwline::sheet {

/// How a sheet is divided. Landscape: a column at the right with findings, legend and title block,
/// a strip under the plan with rulers and cautions. Portrait: the column becomes a band at the
/// foot.
struct Page {
    double width_mm = 0.0;
    double height_mm = 0.0;
    /// Within the margins.
    Box frame;
    /// For the plan with its lettering.
    Box field;
    /// Scale bars, check rulers, cautions.
    Box strip;
    Box findings;
    Box legend;
    Box title;
};

/// What the page divides itself by.
struct PageNeeds {
    double margin_mm = 10.0;
    double strip_height_mm = 30.0;
    /// 0 for a sheet without one.
    double legend_height_mm = 40.0;
};

/// Height of the title block.
inline constexpr double kTitleHeight_mm = 50.0;
/// Kept free around the plan in its field for letters, sizes and findings.
inline constexpr double kPlanMargin_mm = 14.0;

/// Width of the column of a landscape sheet, and of each part of a portrait sheet's band.
double column_width_mm(double sheet_width_mm, Orientation orientation, double margin_mm);
/// Height of a portrait sheet's band.
double band_height_mm(double sheet_height_mm);

Page divided_page(const catalogue::Paper& paper, Orientation orientation, const PageNeeds& needs);

} // namespace throwline::sheet
