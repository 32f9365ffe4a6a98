#pragma once

#include "support/small_plan.h"

#include <string>

/// A plan of 5,000 objects, for what must stay quick however much stands on the floor.
namespace throwline::support {

/// Tables and crates in rows, with 6 people, 4 cameras and 24 lamps among them.
inline plan::Plan large_plan() {
    using namespace testing_support;
    constexpr int kObjects = 5000;
    constexpr int kPeople = 6;
    constexpr int kCameras = 4;
    constexpr int kLamps = 24;
    constexpr int kPieces = kObjects - kPeople - kCameras - kLamps;
    plan::Plan plan = bare_room(125.0, 55.0, 8.0);
    for (int i = 0; i < kPieces; ++i) {
        const Vec2 at{1.5 + 1.2 * (i % 100), 1.5 + 1.0 * (i / 100)};
        add_scenery(plan, "piece " + std::to_string(i + 1),
                    box_piece(at, 0.4 + 0.05 * (i % 7), 0.4 + 0.04 * (i % 5), 0.7));
    }
    for (int i = 0; i < kPeople; ++i) {
        add_person(plan, "person " + std::to_string(i + 1), {20.0 + 12.0 * i, 25.05},
                   Angle::degrees(-90));
    }
    for (int i = 0; i < kCameras; ++i) {
        const std::string name = "camera " + std::to_string(i + 1);
        add_camera(plan, name);
        add_shot(plan, std::to_string(i + 1) + "A", name, {21.0 + 12.0 * i, 20.05},
                 {"person " + std::to_string(i + 1)});
    }
    for (int i = 0; i < kLamps; ++i) {
        hang_lamp(plan, "lamp " + std::to_string(i + 1), "Fresnel 650 W",
                  {10.0 + 4.0 * i, 30.0, 6.0}, plan::ThingName{"person 3"});
    }
    return plan;
}

} // namespace throwline::support
