#pragma once

#include "catalogue/catalogue.h"
#include "lists/table.h"
#include "plan/plan.h"
#include "sheet/room_sizes.h"

#include <string>
#include <vector>

/// Scenery as carpenters and setters need it: what is built, its size, and where it stands.
namespace throwline::sheet {

/// Whether a piece is set by the tape and not by eye: flats, platforms, drapes, columns and what is
/// built against a wall.
bool is_built(const plan::Plan& plan, const plan::Scenery& piece,
              const catalogue::Catalogue& catalogue);

/// "2'-0\" + 2 x 4'-0\" = 10'-0\"": the widths of flats, rounded so that they add up.
std::string flats_text(const plan::FlatRun& run, UnitSystem units);
/// "2.00 x 1.20", "round 0.40", flats as above: what a piece measures on the floor.
std::string size_text(const plan::Scenery& piece, const catalogue::Catalogue& catalogue,
                      UnitSystem units);

/// Where a piece stands from the datum.
struct PiecePlace {
    /// Low and high end in the datum's axes; the same for one point.
    Vec2 low = Vec2::Zero();
    Vec2 high = Vec2::Zero();
    /// Of a piece that is round or stands askew only the middle is told.
    bool is_middle = false;
};
/// The dressed face of flats, the near sides of what stands square, the middle of anything else.
PiecePlace place_of_piece(const RoomDatum& datum, const plan::Scenery& piece,
                          const catalogue::Catalogue& catalogue);
/// "x 8'-0\" to 32'-0\", y 25'-0\"", "middle x 1.20, y 3.00"
std::string place_text(const PiecePlace& place, UnitSystem units);
/// "h 2.40", "h 0.40, 2.30 up"
std::string height_text(const plan::Scenery& piece, const catalogue::Catalogue& catalogue,
                        UnitSystem units);

/// Every piece of scenery with size, height and place, what is built first.
lists::Table set_pieces_table(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                              const RoomDatum& datum);

} // namespace throwline::sheet
