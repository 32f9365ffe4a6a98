#pragma once

#include "checks/check.h"

#include <string>
#include <vector>

/// A small dressed room with one camera and one person, to plant faults in.
namespace throwline::support {

/// The shipped tables with rows of round figures: sensor "test chip" (9.59 x 5.39 mm, c 0.011 mm),
/// lens "test zoom" (8-80 mm, T2, close focus 0.6 m, circle 11 mm, front glass 80 mm across, hood
/// 40 mm) and support "test stand" (nobody behind it, radius 0.3 m).
const catalogue::Catalogue& test_catalogue();

/// A room 10 m wide (x), `depth_m` deep (y) and 4 m high, everything dressed. "ada", 1.70 m, stands
/// at (5, 5) and faces down the page in beat "1"; "camera 1" with the test zoom. No shots.
plan::Plan small_room(double depth_m = 8.0);

plan::Id<plan::Shot> shot_id(const std::string& name);
plan::Id<plan::Beat> beat_id(const std::string& name);
plan::Id<plan::Person> person_id(const std::string& name);

/// Adds a person of 1.70 m who stands at a place in beat "1", facing a direction.
void put_person(plan::Plan& plan, const std::string& name, const Vec2& at, Angle faces,
                plan::PersonKind kind = plan::PersonKind::cast);
/// A shot of camera 1 on "ada" at beat "1" from a place with the lens 1.5 m high, level and
/// straight at a point of that height, unless changed. Returns it for that.
plan::Shot& put_shot(plan::Plan& plan, const std::string& name, const Vec2& at, double focal_mm);
/// A box with its middle at a place.
plan::Scenery& put_box(plan::Plan& plan, const std::string& name, const Vec2& at,
                       const Vec3& size_m, double elevation_m = 0.0);
/// A second camera with the test zoom that waits at a place.
void put_camera(plan::Plan& plan, const std::string& name, const Vec2& home);

/// Every shot and beat raised, as the analysis does it. The plan must outlive it.
struct RaisedPlan {
    std::vector<checks::ShotScene> shots;
    std::vector<checks::BeatScene> beats;
};
RaisedPlan raised_plan(const plan::Plan& plan, const catalogue::Catalogue& catalogue);

using CheckFunction = std::vector<checks::Finding> (*)(const checks::CheckInput&,
                                                       const std::stop_token&);
/// What one check says about a plan with the test catalogue.
std::vector<checks::Finding> found_by(CheckFunction check, const plan::Plan& plan);
std::vector<checks::Finding> found_by(CheckFunction check, const plan::Plan& plan,
                                      const catalogue::Catalogue& catalogue);

/// All messages, a line each, to show when an expectation fails.
std::string messages(const std::vector<checks::Finding>& findings);
/// Whether a text holds another.
bool says(const std::string& text, const std::string& part);

} // namespace throwline::support
