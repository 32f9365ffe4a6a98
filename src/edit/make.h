#pragma once

#include "base/result.h"
#include "edit/thing.h"

#include <optional>
#include <span>
#include <string>

/// Edits that put something new on the floor. Names are found that nothing has yet ("chair 2").
namespace throwline::edit {

/// A room of these corners, drawn in walking order; replaces the room there was. Openings stay on
/// the walls that are still there, both ends within 1 cm; the step's name says which go. Lamps
/// clamped to walls go to the nearest. Height and finish of the old room, else 8 ft or 2.4 m.
Result<Step> room_drawn(const Context& context, std::span<const Vec2> corners);
/// A rectangular studio: room, and a pipe grid at a pitch (0 for none) in its middle, half a pitch
/// or more from the walls. Lamps of the old grid go to the nearest place, or onto stands.
struct Studio {
    Length width = Length::metres(12);
    Length depth = Length::metres(9);
    Length height = Length::metres(5);
    Length grid_height = Length::metres(4.2);
    Length pitch = Length::metres(1.2);
};
Result<Step> studio_made(const Context& context, const Studio& studio);
/// A corner put into a wall, `along_m` from its start.
Result<Step> corner_added(const Context& context, int wall, double along_m);

/// A door, window or plain opening whose middle is as near to `at` as its wall allows.
Result<Step> opening_added(const Context& context, plan::OpeningKind kind, const Vec2& at,
                           Length width);
/// Flats from one place towards another: as many of the stock widths (those of the catalogue, else
/// 4 ft, then 2 ft; 1.2 m, 0.6 m in metric plans; see flat_widths.h) as come nearest the length;
/// joins a run that ends within 2 cm of where this begins: the same piece when it goes on within 1
/// degree, else a new one that starts at that end. The dressed face to the left as drawn.
Result<Step> flats_drawn(const Context& context, const Vec2& from, const Vec2& to);
/// Cloth along points.
Result<Step> drape_drawn(const Context& context, std::span<const Vec2> points);
Result<Step> pipe_drawn(const Context& context, const Vec2& from, const Vec2& to);
/// A box, a platform.
Result<Step> box_drawn(const Context& context, const Vec2& corner, const Vec2& opposite,
                       bool riser);
/// A column.
Result<Step> cylinder_drawn(const Context& context, const Vec2& centre, Length radius);

/// Something from the Stores, by the table it stands in.
enum class Shelf { stock, person, camera, lamp, boom, outlet };
struct StoreItem {
    Shelf shelf = Shelf::stock;
    /// A catalogue name: a stock item; "cast" or "crew"; a lens for a camera; an instrument for a
    /// lamp; empty for boom; volts and amps are usual for an outlet, of the circuit named, or a new
    /// circuit when empty.
    std::string item;
};
/// Puts it down: a lamp onto the nearest grid position, within half a pitch each way, or pipe
/// within 0.75 m, else on a stand, practicals where they are put; aimed at the nearest of the cast,
/// else straight ahead from a stand (up the page) and straight down from a pipe. A camera with the
/// sensor most used of those its lens covers (else one of the kit, else the largest of 16:9), on a
/// tripod. A person on a mark in the beat of now (a first beat is made when there is none).
/// Furniture turned with its back to the nearest wall when that is near.
Result<Step> put_down(const Context& context, const StoreItem& item, const Vec2& at);

} // namespace throwline::edit
