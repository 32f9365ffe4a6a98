#include "sheet/page.h"

#include <algorithm>

namespace throwline::sheet {

namespace {

Page landscape(Page page, const PageNeeds& needs) {
    const Box& frame = page.frame;
    const double column_mm =
        column_width_mm(page.width_mm, Orientation::landscape, needs.margin_mm);
    const double left_mm = frame.right() - column_mm;
    const double plan_width_mm = frame.width - column_mm;
    page.strip = {frame.left, frame.bottom() - needs.strip_height_mm, plan_width_mm,
                  needs.strip_height_mm};
    page.field = {frame.left, frame.top, plan_width_mm, frame.height - needs.strip_height_mm};
    page.title = {left_mm, frame.bottom() - kTitleHeight_mm, column_mm, kTitleHeight_mm};
    const double legend_mm =
        std::min(needs.legend_height_mm, frame.height - kTitleHeight_mm - 20.0);
    page.legend = {left_mm, page.title.top - legend_mm, column_mm, legend_mm};
    page.findings = {left_mm, frame.top, column_mm, page.legend.top - frame.top};
    return page;
}

Page portrait(Page page, const PageNeeds& needs) {
    const Box& frame = page.frame;
    const double band_mm = band_height_mm(page.height_mm);
    const double part_mm = column_width_mm(page.width_mm, Orientation::portrait, needs.margin_mm);
    const double band_top_mm = frame.bottom() - band_mm;
    page.strip = {frame.left, band_top_mm - needs.strip_height_mm, frame.width,
                  needs.strip_height_mm};
    page.field = {frame.left, frame.top, frame.width, page.strip.top - frame.top};
    const double legend_mm = needs.legend_height_mm > 0.0 ? part_mm : 0.0;
    page.findings = {frame.left, band_top_mm, frame.width - part_mm - legend_mm, band_mm};
    page.legend = {page.findings.right(), band_top_mm, legend_mm, band_mm};
    page.title = {page.legend.right(), band_top_mm, part_mm, band_mm};
    return page;
}

} // namespace

double column_width_mm(double sheet_width_mm, Orientation orientation, double margin_mm) {
    if (orientation == Orientation::landscape) {
        return std::clamp(0.25 * sheet_width_mm, 66.0, 105.0);
    }
    return std::clamp((sheet_width_mm - 2.0 * margin_mm) / 3.0, 45.0, 90.0);
}

double band_height_mm(double sheet_height_mm) {
    return std::clamp(0.28 * sheet_height_mm, 80.0, 125.0);
}

Page divided_page(const catalogue::Paper& paper, Orientation orientation, const PageNeeds& needs) {
    const double shorter = std::min(paper.width.mm(), paper.height.mm());
    const double longer = std::max(paper.width.mm(), paper.height.mm());
    Page page;
    page.width_mm = orientation == Orientation::landscape ? longer : shorter;
    page.height_mm = orientation == Orientation::landscape ? shorter : longer;
    page.frame = Box{0.0, 0.0, page.width_mm, page.height_mm}.inset(needs.margin_mm);
    return orientation == Orientation::landscape ? landscape(page, needs) : portrait(page, needs);
}

} // namespace throwline::sheet
