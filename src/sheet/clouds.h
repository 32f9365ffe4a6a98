#pragma once

#include "catalogue/catalogue.h"
#include "plan/differences.h"
#include "sheet/board.h"

#include <span>
#include <string>

/// Revision clouds: scalloped outlines around what changed since an older plan, each with a
/// triangle that carries the letter of the revision (common drafting practice, no source).
namespace throwline::sheet {

/// What is clouded on a sheet.
struct Clouded {
    std::span<const plan::Difference> changes;
    /// The newer plan, with the catalogue that knows the sizes of its stock.
    const plan::Plan& plan;
    const catalogue::Catalogue& catalogue;
    /// Stands in the triangles when it is no longer than three characters.
    std::string revision;
};

/// Clouds where each thing is now, or was when it is gone; those that touch are one. What has no
/// place, is the whole room or the grid, or hardly moved, has none. Lettering keeps off the clouds
/// where it can, and off the triangles always.
void draw_clouds(Board& board, const Clouded& clouded);

/// The boxes of paper that the changes take up, millimetres.
std::vector<Box> changed_boxes(const PlanFrame& frame, const Clouded& clouded);

/// One scallop of a cloud, from a corner to the next, bulging to the right as seen on paper.
std::vector<Vec2> scallop(const Vec2& from, const Vec2& to);
/// A triangle around a middle with a revision's letter.
void add_revision_triangle(Marks& marks, const Vec2& centre, const std::string& revision);

} // namespace throwline::sheet
