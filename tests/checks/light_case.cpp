#include "support/light_case.h"

#include <cmath>
#include <stdexcept>

namespace throwline::support {

namespace {

constexpr Length kBody = Length::metres(0.2);
constexpr double kPeak_cd = 1000.0;

catalogue::Instrument test_lamp(const std::string& name, double beam_deg, double field_deg) {
    catalogue::Instrument lamp;
    lamp.name = name;
    lamp.spot = {kPeak_cd, Angle::degrees(beam_deg), Angle::degrees(field_deg)};
    lamp.flood = lamp.spot;
    lamp.watts = 100.0;
    lamp.body_width = lamp.body_depth = lamp.body_height = kBody;
    lamp.face_width = lamp.face_height = Length::metres(0.1);
    lamp.source = "round figures";
    return lamp;
}

catalogue::Catalogue with_lamps() {
    catalogue::Catalogue tables = test_catalogue();
    tables.instruments.push_back(test_lamp("test spot", 20.0, 30.0));
    tables.instruments.back().clearance = Length::metres(1.0);
    tables.instruments.push_back(test_lamp("test flood", 80.0, 120.0));
    catalogue::Instrument panel = test_lamp("test panel", 120.0, 170.0);
    panel.face_width = panel.face_height = Length::metres(1.0);
    panel.round_face = false;
    panel.soft = true;
    tables.instruments.push_back(panel);
    return tables;
}

stage::Figure ada() {
    const plan::Plan room = small_room();
    const stage::Stage stage = stage::raise(room, test_catalogue(), {"1"});
    const stage::Figure* figure = stage.figure({"ada"});
    if (figure == nullptr) {
        throw std::logic_error("small_room() has no ada");
    }
    return *figure;
}

} // namespace

const catalogue::Catalogue& lamp_catalogue() {
    static const catalogue::Catalogue kTables = with_lamps();
    return kTables;
}

Vec3 ada_face() {
    return ada().face;
}
Vec3 ada_eyes() {
    return ada().eyes;
}

plan::Plan lit_room() {
    plan::Plan plan = small_room();
    plan::Shot& shot = put_shot(plan, "1A", Vec2{5.0, 1.0}, 40.0);
    shot.height = Length::metres(ada_face().z());
    shot.aim = ada_face();
    shot.stop = 4.0;
    return plan;
}

Vec3 place_from(const Vec3& point, double right_deg, double up_deg, double distance_m) {
    const double right_rad = Angle::degrees(right_deg).rad();
    const double up_rad = Angle::degrees(up_deg).rad();
    const Vec3 towards{std::cos(up_rad) * std::sin(right_rad),
                       -std::cos(up_rad) * std::cos(right_rad), std::sin(up_rad)};
    return point + towards * distance_m;
}

plan::Lamp& put_lamp(plan::Plan& plan, const std::string& name, plan::LampRole role,
                     const Vec3& bright_face, const Vec3& target, const std::string& instrument) {
    const Vec3 axis = (target - bright_face).normalized();
    const Vec3 point = bright_face - axis * (kBody.m() / 2.0);
    plan::Lamp lamp;
    lamp.id = {name};
    lamp.instrument = instrument;
    lamp.mount =
        plan::StandMount{Vec2{point.x(), point.y()}, Length::metres(point.z()), "test stand"};
    lamp.aim = target;
    lamp.role = role;
    plan.lamps.push_back(lamp);
    return plan.lamps.back();
}

plan::Lamp& put_lamp_on_ada(plan::Plan& plan, const std::string& name, plan::LampRole role,
                            double right_deg, double up_deg, double distance_m,
                            const std::string& instrument) {
    const Vec3 face = ada_face();
    return put_lamp(plan, name, role, place_from(face, right_deg, up_deg, distance_m), face,
                    instrument);
}

double setting_for_lx(double level_lx) {
    return std::sqrt(level_lx / kPeak_cd);
}

std::vector<checks::Finding> lamp_findings(CheckFunction check, const plan::Plan& plan) {
    return found_by(check, plan, lamp_catalogue());
}

std::vector<checks::MarkLight> marks_of(const plan::Plan& plan) {
    const RaisedPlan raised = raised_plan(plan, lamp_catalogue());
    return checks::light_at_marks({plan, lamp_catalogue(), raised.shots, raised.beats},
                                  raised.shots.at(0));
}

} // namespace throwline::support
