#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <optional>

/// Questions about where things are that need no solids, only the plan.
namespace throwline::plan {

/// Marks of everybody who is on the floor in a beat, carried on from the beats before it.
std::map<Id<Person>, Mark> marks_at(const Plan& plan, const Id<Beat>& beat);

/// Where a grid position such as "C2" is, letter case ignored; nothing when the grid has no such
/// place.
std::optional<Vec2> grid_point(const Grid& grid, std::string_view position);
/// "C2" for column 2, row 1 (both from 0).
std::string grid_name(int column, int row);

/// The turning point of a lamp, metres. Nothing when its mount names what is not there.
std::optional<Vec3> lamp_point(const Plan& plan, const Lamp& lamp);

/// Top of the highest riser or platform under a point, 0 on the bare floor.
Length floor_height_at(const Plan& plan, const catalogue::Catalogue& catalogue, const Vec2& point);

/// Where the camera stands in a beat when `shot` is being taken: for the shot's own camera the
/// shot's place; for others their shot in this beat (the latest up to `shot` in the file, else the
/// first after it), else where their latest earlier one left them, else home, else nowhere.
struct CameraPlace {
    Vec2 at = Vec2::Zero();
    /// Above what the support stands on (floor_height_at).
    Length lens_height;
    /// The shot whose place this is; empty at home.
    Id<Shot> shot;
};
std::optional<CameraPlace> camera_place(const Plan& plan, const Camera& camera,
                                        const Id<Beat>& beat, const Id<Shot>& shot);

/// Depth of a drape's folds on the plan (common practice, no source).
inline constexpr Length kDrapeDepth = Length::millimetres(100);
/// How far a lamp clamped to a wall stands clear of it (common practice, no source).
inline constexpr Length kWallClearance = Length::millimetres(150);

/// Outline on the floor of a piece of scenery; empty when the catalogue does not know its item.
Polygon footprint(const Scenery& scenery, const catalogue::Catalogue& catalogue);
/// Height of its top above its underside; 0 when the catalogue does not know its item.
Length height_of(const Scenery& scenery, const catalogue::Catalogue& catalogue);

/// The plan turned anticlockwise about the origin, then moved; nothing changes but places,
/// directions and north. Tape readings stay as taken.
Plan moved(const Plan& plan, const Vec2& by, Angle turn);
/// The plan seen in a mirror along the y axis: x becomes -x, left becomes right. Walls keep their
/// order and grid positions their names; the outline runs the other way round.
Plan mirrored(const Plan& plan);

} // namespace throwline::plan
