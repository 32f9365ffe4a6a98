#include "checks/opening_place.h"

namespace throwline::checks {

OpeningPlace place_of(const plan::Room& room, const plan::Opening& opening) {
    const std::size_t wall = static_cast<std::size_t>(opening.wall);
    const Vec2& from = room.outline[wall];
    const Vec2& to = room.outline[(wall + 1) % room.outline.size()];
    OpeningPlace place;
    place.along = (to - from).normalized();
    // The room lies to the left of its walls when they are walked anticlockwise.
    place.inward = turned_left(place.along) * (signed_area(room.outline) > 0.0 ? 1.0 : -1.0);
    place.width_m = opening.width.m();
    place.start = from + place.along * opening.from_start.m();
    place.end = place.start + place.along * place.width_m;
    return place;
}

} // namespace throwline::checks
