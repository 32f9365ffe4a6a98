#pragma once

#include "sheet/page.h"
#include "sheet/sheet_options.h"
#include "sheet/symbols.h"

#include <span>
#include <string>
#include <vector>

/// What stands on a sheet besides the plan: title block, legend, findings, rulers, cautions.
namespace throwline::sheet {

/// Lines between the parts of the page, and its frame.
void draw_page_lines(Marks& marks, const Page& page);

struct TitleBlock {
    const plan::Plan& plan;
    const SheetOptions& options;
    std::string scale_name;
    std::string paper_name;
    Orientation orientation = Orientation::landscape;
    bool with_north = true;
    /// Said where the scale is not one of the standard set, for no scale rule has it.
    bool standard_scale = true;
};
void draw_title_block(Marks& marks, const Box& box, const TitleBlock& title,
                      const TextMeasure& measure);

/// A needle towards true north. `bearing` is that of north on the page, clockwise from up.
void draw_north(Marks& marks, const Vec2& centre, double radius_mm, Angle bearing);

/// Height that a legend takes in a given width: `most_mm` where that is enough for closer rows and
/// without what a reader knows anyway.
double legend_height_mm(const std::set<LegendEntry>& used, double width_mm, double most_mm);
void draw_legend(Marks& marks, const Box& box, const std::set<LegendEntry>& used);

/// Findings that say the same of the same things in several shots or beats, worst first; the first
/// of them speaks for all.
struct FindingGroup {
    const checks::Finding* first = nullptr;
    /// "shot 2A", "beat 3": where else.
    std::vector<std::string> also;
    /// All of them, the first too.
    std::vector<const checks::Finding*> members;
    /// In the list of all findings of the plan, from 1.
    int number = 0;
};
/// What it says, and where else.
std::string matter_of(const FindingGroup& group);
/// The same, and why the crew lives with it.
std::string words_for(const FindingGroup& group);
/// Numbered in their order.
std::vector<FindingGroup> grouped(const std::vector<const checks::Finding*>& findings);
/// Some of a plan's findings, with the numbers that they have among all of them, so that a number
/// means the same on every sheet and in every list.
std::vector<FindingGroup> grouped(const std::vector<const checks::Finding*>& findings,
                                  const checks::Analysis& analysis);

/// What a panel of findings holds.
struct FindingsShown {
    std::vector<NumberedFinding> findings;
    /// Groups that found no room, and how many of them are errors.
    int left_out = 0;
    int errors_left_out = 0;
};
/// Letters as many findings as the box takes; the last line tells how many are left out.
FindingsShown draw_findings_panel(Marks& marks, const Box& box,
                                  const std::vector<FindingGroup>& findings,
                                  const TextMeasure& measure);

/// Bars of round lengths at the drawing's scale, in metres and in feet; and lengths of paper, 100
/// mm and 4 in, that show with a ruler whether the print is true.
void draw_rulers(Marks& marks, const Box& box, const PlanFrame& frame, UnitSystem units);
/// The check length across the direction of the other, along the left edge.
void draw_upright_ruler(Marks& marks, const Vec2& foot);

double cautions_height_mm(const std::vector<std::string>& cautions, double width_mm,
                          const TextMeasure& measure);
void draw_cautions(Marks& marks, const Box& box, const std::vector<std::string>& cautions,
                   const TextMeasure& measure);
/// Height of the part of the strip that the rulers take.
inline constexpr double kRulersHeight_mm = 24.0;

} // namespace throwline::sheet
