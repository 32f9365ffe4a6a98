#include "support/check_case.h"

#include "support/shipped_catalogue.h"

namespace throwline::support {

namespace {

catalogue::Catalogue with_test_rows() {
    catalogue::Catalogue tables = testing_support::shipped_catalogue();
    catalogue::SensorMode sensor;
    sensor.name = "test chip";
    sensor.width = Length::millimetres(9.59);
    sensor.height = Length::millimetres(5.39);
    sensor.circle_of_confusion = Length::millimetres(0.011);
    tables.sensors.push_back(sensor);
    catalogue::Lens lens;
    lens.name = "test zoom";
    lens.focal_min = Length::millimetres(8.0);
    lens.focal_max = Length::millimetres(80.0);
    lens.stop_wide = 2.0;
    lens.stop_long = 2.0;
    lens.close_focus = Length::metres(0.6);
    lens.image_circle = Length::millimetres(11.0);
    lens.length = Length::millimetres(150.0);
    lens.front_diameter = Length::millimetres(80.0);
    lens.hood_length = Length::millimetres(40.0);
    tables.lenses.push_back(lens);
    catalogue::Support support;
    support.name = "test stand";
    support.footprint_radius = Length::metres(0.3);
    support.height_min = Length::metres(0.5);
    support.height_max = Length::metres(3.0);
    support.column_radius = Length::millimetres(40.0);
    tables.supports.push_back(support);
    return tables;
}

plan::Camera test_camera(const std::string& name) {
    plan::Camera camera;
    camera.id = {name};
    camera.sensor = "test chip";
    camera.lens = "test zoom";
    camera.support = "test stand";
    return camera;
}

} // namespace

const catalogue::Catalogue& test_catalogue() {
    static const catalogue::Catalogue kTables = with_test_rows();
    return kTables;
}

plan::Id<plan::Shot> shot_id(const std::string& name) {
    return {name};
}
plan::Id<plan::Beat> beat_id(const std::string& name) {
    return {name};
}
plan::Id<plan::Person> person_id(const std::string& name) {
    return {name};
}

plan::Plan small_room(double depth_m) {
    plan::Plan plan;
    plan.room.outline = {{0.0, 0.0}, {10.0, 0.0}, {10.0, depth_m}, {0.0, depth_m}};
    plan.room.walls.assign(4, {Length::metres(4.0), Length::millimetres(100.0), "pale grey", true});
    plan.room.height = Length::metres(4.0);
    plan.room.finish = "pale grey";
    plan.room.floor_finish = "pale grey";
    plan.room.ceiling_finish = "pale grey";
    plan.room.ceiling_dressed = true;
    plan.beats.emplace_back();
    plan.beats.back().id = {"1"};
    plan.cameras.push_back(test_camera("camera 1"));
    put_person(plan, "ada", {5.0, 5.0}, Angle::degrees(-90.0));
    return plan;
}

void put_person(plan::Plan& plan, const std::string& name, const Vec2& at, Angle faces,
                plan::PersonKind kind) {
    plan::Person person;
    person.id = {name};
    person.kind = kind;
    plan.people.push_back(person);
    plan::Mark mark;
    mark.at = at;
    mark.faces = faces;
    plan.beats.front().marks[person.id] = mark;
}

plan::Shot& put_shot(plan::Plan& plan, const std::string& name, const Vec2& at, double focal_mm) {
    plan::Shot shot;
    shot.id = {name};
    shot.beats = {{"1"}};
    shot.camera = {"camera 1"};
    shot.at = at;
    shot.height = Length::metres(1.5);
    shot.aim = Vec3{5.0, 5.0, 1.5};
    shot.focal = Length::millimetres(focal_mm);
    shot.subjects = {{"ada"}};
    plan.shots.push_back(shot);
    return plan.shots.back();
}

plan::Scenery& put_box(plan::Plan& plan, const std::string& name, const Vec2& at,
                       const Vec3& size_m, double elevation_m) {
    plan::Scenery scenery;
    scenery.id = {name};
    scenery.shape = plan::BoxPiece{at, Length::metres(size_m.x()), Length::metres(size_m.y()),
                                   Length::metres(size_m.z()), Angle{}};
    scenery.elevation = Length::metres(elevation_m);
    scenery.finish = "pale grey";
    plan.scenery.push_back(scenery);
    return plan.scenery.back();
}

void put_camera(plan::Plan& plan, const std::string& name, const Vec2& home) {
    plan.cameras.push_back(test_camera(name));
    plan.cameras.back().home = home;
}

RaisedPlan raised_plan(const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    RaisedPlan result;
    for (const plan::Shot& shot : plan.shots) {
        for (const plan::Id<plan::Beat>& beat : shot.beats) {
            checks::ShotScene& scene = result.shots.emplace_back();
            scene.shot = &shot;
            scene.beat = plan::find(plan, beat);
            scene.stage = stage::raise(plan, catalogue, beat, shot.id);
            scene.view = stage::view_of(plan, catalogue, scene.stage, shot);
            if (scene.view) {
                scene.hits = stage::hits_over_frame(scene.stage, *scene.view, 128, 72);
            }
        }
    }
    for (const plan::Beat& beat : plan.beats) {
        checks::BeatScene& scene = result.beats.emplace_back();
        scene.beat = &beat;
        scene.stage = stage::raise(plan, catalogue, beat.id);
    }
    return result;
}

std::vector<checks::Finding> found_by(CheckFunction check, const plan::Plan& plan) {
    return found_by(check, plan, test_catalogue());
}

std::vector<checks::Finding> found_by(CheckFunction check, const plan::Plan& plan,
                                      const catalogue::Catalogue& catalogue) {
    const RaisedPlan raised = raised_plan(plan, catalogue);
    return check({plan, catalogue, raised.shots, raised.beats}, {});
}

std::string messages(const std::vector<checks::Finding>& findings) {
    std::string text;
    for (const checks::Finding& finding : findings) {
        text += finding.message;
        text += '\n';
    }
    return text;
}

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

} // namespace throwline::support
