#include "support/floor_case.h"

#include <algorithm>

namespace throwline::support {

plan::Scenery& put_item(plan::Plan& plan, const std::string& name, const std::string& item,
                        const Vec2& at) {
    plan::Scenery& scenery = plan.scenery.emplace_back();
    scenery.id = {name};
    scenery.shape = plan::StockPiece{item, at, Angle{}};
    return scenery;
}

plan::Scenery& put_riser(plan::Plan& plan, const std::string& name, const Vec2& at,
                         double height_m) {
    plan::Scenery& scenery = plan.scenery.emplace_back();
    scenery.id = {name};
    scenery.shape = plan::Riser{at, Length::metres(2.0), Length::metres(2.0),
                                Length::metres(height_m), Angle{}};
    return scenery;
}

plan::Lamp& put_lamp_stand(plan::Plan& plan, const std::string& name, const Vec2& at) {
    plan::Lamp& lamp = plan.lamps.emplace_back();
    lamp.id = {name};
    lamp.instrument = "LED PAR 100 W wide";
    lamp.mount = plan::StandMount{at, Length::metres(2.0), "test stand"};
    return lamp;
}

plan::Opening& put_door(plan::Plan& plan, const std::string& name) {
    plan::Opening& door = plan.room.openings.emplace_back();
    door.id = {name};
    door.from_start = Length::metres(4.0);
    door.width = Length::metres(1.0);
    door.head = Length::metres(2.1);
    door.swing = plan::Swing{};
    return door;
}

plan::Plan walked_clockwise(plan::Plan plan) {
    const int walls = static_cast<int>(plan.room.outline.size());
    std::reverse(plan.room.outline.begin() + 1, plan.room.outline.end());
    for (plan::Opening& opening : plan.room.openings) {
        const auto wall = static_cast<std::size_t>(walls - 1 - opening.wall);
        const Vec2 along =
            plan.room.outline[(wall + 1) % plan.room.outline.size()] - plan.room.outline[wall];
        opening.wall = static_cast<int>(wall);
        opening.from_start = Length::metres(along.norm()) - opening.from_start - opening.width;
        if (opening.swing) {
            opening.swing->hinge_at_start = !opening.swing->hinge_at_start;
        }
    }
    return plan;
}

plan::Mark& walk_ada(plan::Plan& plan, const Vec2& to, const std::vector<Vec2>& path) {
    plan::Beat& beat = plan.beats.emplace_back();
    beat.id = {"2"};
    plan::Mark mark;
    mark.at = to;
    mark.path = path;
    return std::get<plan::Mark>(beat.marks[person_id("ada")] = mark);
}

std::vector<std::string> things_of(const std::vector<checks::Finding>& findings) {
    std::vector<std::string> all;
    for (const checks::Finding& finding : findings) {
        all.insert(all.end(), finding.things.begin(), finding.things.end());
    }
    return all;
}

} // namespace throwline::support
