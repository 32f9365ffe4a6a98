#include "sheet/recce_drawing.h"

#include "plan/places.h"
#include "sheet/symbols.h"
#include "survey/to_plan.h"

#include <algorithm>

namespace throwline::sheet {

namespace {

/// Kept free around a picture for what is lettered outside the room.
constexpr double kAround_mm = 9.0;

plan::Plan outline_of(const survey::RecceResult& result) {
    plan::Plan plan;
    for (std::size_t i = 0; i < result.corner_count(); ++i) {
        plan.room.outline.push_back(result.points[i].at);
    }
    plan.room.walls.resize(plan.room.outline.size());
    for (plan::Wall& wall : plan.room.walls) {
        wall.thickness = Length::millimetres(100);
    }
    return plan;
}

PlanFrame frame_in(const Extent& extent, const Vec2& size_mm) {
    const Vec2 room_mm = (size_mm - Vec2::Constant(2.0 * kAround_mm)).cwiseMax(1.0);
    const Vec2 size = extent.size().cwiseMax(0.1);
    PlanFrame frame;
    frame.mm_per_m = std::min(room_mm.x() / size.x(), room_mm.y() / size.y());
    const Vec2 middle = (extent.low + extent.high) / 2.0;
    frame.origin_mm = {size_mm.x() / 2.0 - frame.mm(middle.x()),
                       size_mm.y() / 2.0 + frame.mm(middle.y())};
    return frame;
}

} // namespace

RecceDrawing recce_drawing_of(const plan::Plan& plan, survey::RecceResult result) {
    RecceDrawing drawing;
    drawing.units = plan.units;
    drawing.axes = axes_on(plan.room, result);
    auto read = survey::plan_of(result, plan.title, plan.units);
    drawing.room = plan::moved(read ? std::move(read->plan) : outline_of(result),
                               drawing.axes.origin, Angle::radians(drawing.axes.turn_rad));
    drawing.result = std::move(result);
    return drawing;
}

void draw_recce_room(Board& board, const RecceDrawing& drawing,
                     const catalogue::Catalogue& catalogue) {
    draw_room(board, drawing.room);
    draw_scenery(board, drawing.room, catalogue);
    for (LabelRequest& label : board.labels) {
        label.may_drop = true;
    }
    draw_outlets(board, drawing.room);
    draw_recce(board, drawing.result, drawing.axes, drawing.units);
}

Extent extent_of_recce(const RecceDrawing& drawing) {
    Extent extent;
    for (const Vec2& corner : outer_outline(drawing.room.room)) {
        extent.include(corner);
    }
    for (const survey::SurveyedPoint& point : drawing.result.points) {
        extent.include(drawing.axes.on_plan(point.at));
    }
    return extent;
}

Drawing recce_picture(const RecceDrawing& drawing, const catalogue::Catalogue& catalogue,
                      const TextMeasure& measure, const Vec2& size_mm) {
    const PlanFrame frame = frame_in(extent_of_recce(drawing), size_mm);
    LabelField field{{0.0, 0.0, size_mm.x(), size_mm.y()}, measure};
    Board board{frame, field};
    draw_recce_room(board, drawing, catalogue);
    KeyList key{size_mm.x(), 0.0, measure};
    set_lettering(board.labels, field, key,
                  board.layers[static_cast<std::size_t>(PlanLayer::lettering)]);
    Drawing picture;
    picture.width_mm = size_mm.x();
    picture.height_mm = size_mm.y();
    for (int layer = 0; layer < kPlanLayers; ++layer) {
        Marks& marks = board.layers[static_cast<std::size_t>(layer)];
        if (!marks.empty()) {
            picture.layers.push_back(
                {std::string{name_of(static_cast<PlanLayer>(layer))}, std::move(marks)});
        }
    }
    return picture;
}

} // namespace throwline::sheet
