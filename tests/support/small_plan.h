#pragma once

#include "plan/plan.h"

#include <string>
#include <vector>

/// Plans built in a few lines for tests of what stands behind the plan.
namespace throwline::testing_support {

/// A bare room from (0,0), `width_m` along x by `depth_m` along y, undressed walls, one beat "1".
inline plan::Plan bare_room(double width_m = 10.0, double depth_m = 8.0, double height_m = 4.0) {
    plan::Plan plan;
    plan.title = "bare room";
    plan.room.outline = {{0, 0}, {width_m, 0}, {width_m, depth_m}, {0, depth_m}};
    plan.room.height = Length::metres(height_m);
    plan::Wall wall;
    wall.height = plan.room.height;
    wall.thickness = Length::metres(0.1);
    plan.room.walls.assign(4, wall);
    plan::Beat beat;
    beat.id = {"1"};
    plan.beats.push_back(beat);
    return plan;
}

inline void add_person(plan::Plan& plan, const std::string& name, const Vec2& at,
                       const plan::Facing& faces, plan::Pose pose = plan::Pose::stand,
                       double stature_m = 1.70) {
    plan::Person person;
    person.id = {name};
    person.stature = Length::metres(stature_m);
    plan.people.push_back(person);
    plan::Mark mark;
    mark.at = at;
    mark.faces = faces;
    mark.pose = pose;
    plan.beats.front().marks[{name}] = mark;
}

inline void add_camera(plan::Plan& plan, const std::string& name,
                       const std::string& support = "tripod") {
    plan::Camera camera;
    camera.id = {name};
    camera.sensor = "2/3-type 16:9";
    camera.lens = "field zoom 18x";
    camera.support = support;
    plan.cameras.push_back(camera);
}

inline plan::Shot& add_shot(plan::Plan& plan, const std::string& name, const std::string& camera,
                            const Vec2& at, const std::vector<std::string>& subjects) {
    plan::Shot shot;
    shot.id = {name};
    shot.beats = {{"1"}};
    shot.camera = {camera};
    shot.at = at;
    for (const std::string& subject : subjects) {
        shot.subjects.push_back({subject});
    }
    plan.shots.push_back(shot);
    return plan.shots.back();
}

inline plan::Scenery& add_scenery(plan::Plan& plan, const std::string& name,
                                  const plan::SceneryShape& shape, double elevation_m = 0.0) {
    plan::Scenery scenery;
    scenery.id = {name};
    scenery.shape = shape;
    scenery.elevation = Length::metres(elevation_m);
    plan.scenery.push_back(scenery);
    return plan.scenery.back();
}

inline plan::BoxPiece box_piece(const Vec2& at, double width_m, double depth_m, double height_m) {
    plan::BoxPiece box;
    box.at = at;
    box.width = Length::metres(width_m);
    box.depth = Length::metres(depth_m);
    box.height = Length::metres(height_m);
    return box;
}

inline plan::StockPiece stock_piece(const std::string& item, const Vec2& at,
                                    double turn_deg = 0.0) {
    plan::StockPiece piece;
    piece.item = item;
    piece.at = at;
    piece.turn = Angle::degrees(turn_deg);
    return piece;
}

/// A lamp whose turning point hangs from a pipe of its own, at `point`.
inline plan::Lamp& hang_lamp(plan::Plan& plan, const std::string& name,
                             const std::string& instrument, const Vec3& point,
                             const plan::Aim& aim) {
    plan::Pipe pipe;
    pipe.id = {"pipe of " + name};
    pipe.from = {point.x(), point.y()};
    pipe.to = {point.x() + 1.0, point.y()};
    pipe.height = Length::metres(point.z());
    plan.pipes.push_back(pipe);
    plan::Lamp lamp;
    lamp.id = {name};
    lamp.instrument = instrument;
    lamp.mount = plan::PipeHang{pipe.id, Length{}, Length{}};
    lamp.aim = aim;
    plan.lamps.push_back(lamp);
    return plan.lamps.back();
}

} // namespace throwline::testing_support
