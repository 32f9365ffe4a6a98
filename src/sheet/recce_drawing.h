#pragma once

#include "sheet/composition.h"
#include "sheet/recce_marks.h"

/// The room as it was read, for its sheet and for the page on which the readings are typed.
namespace throwline::sheet {

struct RecceDrawing {
    survey::RecceResult result;
    SurveyAxes axes;
    /// Nothing but the room as read, in the plan's axes; its outline alone where something that a
    /// room needs was not read.
    plan::Plan room;
    UnitSystem units = UnitSystem::metric;
};
/// In the axes of a plan's room where that is the same room, and its units.
RecceDrawing recce_drawing_of(const plan::Plan& plan, survey::RecceResult result);

/// Room, what stands in it and outlets, with the readings over them.
void draw_recce_room(Board& board, const RecceDrawing& drawing,
                     const catalogue::Catalogue& catalogue);
Extent extent_of_recce(const RecceDrawing& drawing);

/// The same by itself, as large as it goes into a box of this size, millimetres; true to no scale.
Drawing recce_picture(const RecceDrawing& drawing, const catalogue::Catalogue& catalogue,
                      const TextMeasure& measure, const Vec2& size_mm);

} // namespace throwline::sheet
