#pragma once

#include "base/polygon.h"
#include "catalogue/catalogue.h"
#include "plan/plan.h"
#include "stage/stage.h"

#include <string>
#include <vector>

namespace throwline::checks {

/// What kind of room something takes, which decides what it may share its place with.
enum class Takes {
    flat,
    drape,
    platform,
    seat,
    table,
    furniture,
    standing_person,
    seated_person,
    lying_person,
    camera_support,
    camera_operator,
    lamp_stand,
    boom_operator
};

/// Something that takes a part of the floor over a span of heights.
struct Occupant {
    Takes takes = Takes::furniture;
    std::string name;
    Polygon outline;
    double bottom_z_m = 0.0;
    double top_z_m = 0.0;
    /// Corners of the rectangle around the outline.
    Vec2 least = Vec2::Zero();
    Vec2 most = Vec2::Zero();
};

/// Overlaps in height of less than this are a rug, a threshold, a carpeted step: not in the way.
inline constexpr double kHeightSlack_m = 0.03;

/// Scenery and furniture; the same in every beat.
std::vector<Occupant> scenery_occupants(const stage::Stage& stage, const plan::Plan& plan,
                                        const catalogue::Catalogue& catalogue);
/// People, cameras with their operators, lamp stands, boom operators of one stage.
std::vector<Occupant> moving_occupants(const stage::Stage& stage, const plan::Plan& plan,
                                       const catalogue::Catalogue& catalogue);

/// Of several outlines together, m²; clockwise ones are holes.
double total_area(const std::vector<Polygon>& parts);

/// Whether the two span a common height by more than kHeightSlack_m and their surrounding
/// rectangles meet: cheap, before polygons are cut.
bool may_meet(const Occupant& a, const Occupant& b);

/// Whether two things may share a place: a sitter and the seat, a chair pushed under a table,
/// joined flats, a camera and its own operator.
bool may_share(const Occupant& a, const Occupant& b, double shared_m2);

} // namespace throwline::checks
