#pragma once

#include "base/polygon.h"
#include "edit/handles.h"
#include "edit/snap.h"
#include "ui/floor/floor_view.h"
#include "ui/look/look.h"

#include <QPointF>
#include <QRectF>
#include <QString>
#include <QStringList>

class QPainter;

/// Marks on top of the floor: light, in the hue of choosing, told from the drawing by their form.
namespace throwline::ui {

struct MarkInk {
    const FloorView& view;
    Theme theme = Theme::light;
};

/// Around what is chosen; dashed when it is locked.
void paint_choice(QPainter& painter, const MarkInk& ink, const Polygon& outline, bool is_locked);
/// Around what a click would choose.
void paint_under_pointer(QPainter& painter, const MarkInk& ink, const Polygon& outline);
/// A handle in the form of what it does; filled when the pointer is on it. `stem_from`: the thing's
/// place, when a line from there belongs to it.
void paint_handle(QPainter& painter, const MarkInk& ink, const edit::Handle& handle,
                  const std::optional<Vec2>& stem_from, bool is_pointed_at);
/// Whether a line from the thing to the handle belongs to it.
bool has_stem(edit::HandleKind kind);
/// What draws a place: its lines, and a mark at it.
void paint_snap(QPainter& painter, const MarkInk& ink, const edit::Snap& snap, bool with_mark);
/// A box around several; its sides have barbs across when it takes also what it touches.
void paint_marquee(QPainter& painter, const MarkInk& ink, const Vec2& from, const Vec2& to,
                   bool touched);
/// A line being drawn, with its points.
void paint_being_drawn(QPainter& painter, const MarkInk& ink, const std::vector<Vec2>& points,
                       bool closed);
/// A line with a tick at each end and its length lettered along it.
void paint_measure(QPainter& painter, const MarkInk& ink, const Vec2& from, const Vec2& to,
                   const QString& text);
/// How far that is along one axis: a dotted line with its length, where there is room for it.
void paint_leg(QPainter& painter, const MarkInk& ink, const Vec2& from, const Vec2& to,
               const QString& text);
/// Words on a slip of paper near a place, within `inside`.
void paint_slip(QPainter& painter, Theme theme, const QPointF& near_px, const QStringList& lines,
                const QRectF& inside, bool is_refusal);
/// Around what a finding is about: a double ring that stands still.
void paint_pointed_at(QPainter& painter, const MarkInk& ink, const Vec2& at, const QColor& hue);
/// A way on foot: dotted, ticked in the direction of walking.
void paint_walk(QPainter& painter, const MarkInk& ink, const std::vector<Vec2>& points);

} // namespace throwline::ui
