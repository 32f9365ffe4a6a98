#include "sheet/wall_side.h"

#include <algorithm>

namespace throwline::sheet {

WallSide side_of(const plan::Room& room, std::size_t index) {
    const Polygon& corners = room.outline;
    WallSide side;
    side.from = corners[index];
    side.to = corners[(index + 1) % corners.size()];
    side.length_m = (side.to - side.from).norm();
    side.along = side.length_m > 0.0 ? Vec2{(side.to - side.from) / side.length_m} : Vec2::UnitX();
    side.outward =
        signed_area(corners) > 0.0 ? Vec2{-turned_left(side.along)} : turned_left(side.along);
    side.thickness_m =
        std::max(kLeastWall_m, index < room.walls.size() ? room.walls[index].thickness.m() : 0.0);
    return side;
}

} // namespace throwline::sheet
