#include "stage/solid.h"

namespace throwline::stage {

std::string_view name_of(Part part) {
    switch (part) {
    case Part::wall:
        return "wall";
    case Part::floor:
        return "floor";
    case Part::ceiling:
        return "ceiling";
    case Part::door_leaf:
        return "door";
    case Part::window_pane:
        return "window";
    case Part::flat_front:
        return "flat";
    case Part::flat_back:
        return "back of flat";
    case Part::body:
        return "body";
    case Part::head:
        return "head";
    case Part::neck:
        return "neck";
    case Part::torso:
        return "torso";
    case Part::arms:
        return "arms";
    case Part::legs:
        return "legs";
    case Part::feet:
        return "feet";
    case Part::camera_body:
        return "camera";
    case Part::lens_barrel:
        return "lens";
    case Part::support:
        return "support";
    case Part::camera_operator:
        return "camera operator";
    case Part::housing:
        return "housing";
    case Part::stand:
        return "stand";
    case Part::pole:
        return "pole";
    case Part::microphone:
        return "microphone";
    case Part::boom_operator:
        return "boom operator";
    }
    return "";
}

} // namespace throwline::stage
