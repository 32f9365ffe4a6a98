#pragma once

#include "support/check_case.h"

#include <string>
#include <vector>

/// Things to stand about in a small room, doors to leave it by, and a second beat to walk into.
namespace throwline::support {

/// A stock item with its middle at a place.
plan::Scenery& put_item(plan::Plan& plan, const std::string& name, const std::string& item,
                        const Vec2& at);
/// A platform 2 m wide and 2 m deep with its middle at a place.
plan::Scenery& put_riser(plan::Plan& plan, const std::string& name, const Vec2& at,
                         double height_m);
/// A lamp on a "test stand" with its turning point 2 m above the floor.
plan::Lamp& put_lamp_stand(plan::Plan& plan, const std::string& name, const Vec2& at);

/// An opening 1 m wide and 2.1 m high in the wall along y = 0, from x = 4 to 5 m, with a door that
/// opens into the room to a right angle, hinged at x = 4 m. Not a way out.
plan::Opening& put_door(plan::Plan& plan, const std::string& name);
/// The same room with its corners named the other way round; put_door() keeps its place and hinge.
plan::Plan walked_clockwise(plan::Plan plan);

/// "ada" walks from her mark at (5, 5) in beat "1" over a path to a place in beat "2". Returns her
/// new mark.
plan::Mark& walk_ada(plan::Plan& plan, const Vec2& to, const std::vector<Vec2>& path = {});

/// Adds up the names of what is found, for an empty or a small expectation.
std::vector<std::string> things_of(const std::vector<checks::Finding>& findings);

} // namespace throwline::support
