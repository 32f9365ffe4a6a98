#pragma once

#include "checks/mark_light.h"
#include "support/check_case.h"

#include <string>
#include <vector>

/// A room with one shot to light, and lamps of round figures.
namespace throwline::support {

/// The test catalogue with lamps of 1000 cd on the axis: "test spot" (hard, beam 20 and field 30
/// degrees, clearance 1 m), "test flood" (hard, 80 and 120 degrees) and "test panel" (soft, square
/// face of 1 x 1 m). All have a body of 0.2 m.
const catalogue::Catalogue& lamp_catalogue();

/// small_room() with shot "1A" of "ada" from straight in front, the lens as high as the middle of
/// her face and looking level. T4 at ISO 800 and 1/50 s asks for 250 x 16 / (800 x 0.02) = 250 lx.
plan::Plan lit_room();

/// The middle of ada's face, and between her eyes.
Vec3 ada_face();
Vec3 ada_eyes();

/// A place as a camera crew names it from a point on ada: degrees to camera right, degrees up, and
/// metres away.
Vec3 place_from(const Vec3& point, double right_deg, double up_deg, double distance_m);

/// A lamp on a stand with the middle of its bright face at a place, aimed at a target.
plan::Lamp& put_lamp(plan::Plan& plan, const std::string& name, plan::LampRole role,
                     const Vec3& bright_face, const Vec3& target,
                     const std::string& instrument = "test spot");
/// A lamp aimed at ada's face from camera right, up and metres away.
plan::Lamp& put_lamp_on_ada(plan::Plan& plan, const std::string& name, plan::LampRole role,
                            double right_deg, double up_deg, double distance_m,
                            const std::string& instrument = "test spot");
/// Dimmer setting at which a lamp of 1000 cd gives a level 1 m away: the light left is its square.
double setting_for_lx(double level_lx);

/// What a check says about a plan with the lamps.
std::vector<checks::Finding> lamp_findings(CheckFunction check, const plan::Plan& plan);
/// The light on the subjects of the first shot at its first beat.
std::vector<checks::MarkLight> marks_of(const plan::Plan& plan);

} // namespace throwline::support
