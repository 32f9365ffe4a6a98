#include "sheet/board.h"

#include "sheet/clip.h"

namespace throwline::sheet {

std::string_view name_of(PlanLayer layer) {
    switch (layer) {
    case PlanLayer::underlay:
        return "underlay";
    case PlanLayer::ground:
        return "ground";
    case PlanLayer::pools:
        return "pools";
    case PlanLayer::coverage:
        return "coverage";
    case PlanLayer::built:
        return "built";
    case PlanLayer::standing:
        return "standing";
    case PlanLayer::people:
        return "people";
    case PlanLayer::cameras:
        return "cameras";
    case PlanLayer::lamps:
        return "lamps";
    case PlanLayer::sound:
        return "sound";
    case PlanLayer::power:
        return "power";
    case PlanLayer::findings:
        return "findings";
    case PlanLayer::lettering:
        return "lettering";
    case PlanLayer::frame:
        return "frame";
    }
    return "";
}

void Board::draw_back(PlanLayer layer, double share) {
    for (Mark& mark : layers[static_cast<std::size_t>(layer)]) {
        mark = drawn_back(std::move(mark), share);
    }
}

void Board::add(PlanLayer layer, Mark mark, Crowd crowd) {
    if (window) {
        for (Mark& piece : clipped(mark, *window)) {
            field.cover(piece, crowd);
            layers[static_cast<std::size_t>(layer)].push_back(std::move(piece));
        }
        return;
    }
    field.cover(mark, crowd);
    layers[static_cast<std::size_t>(layer)].push_back(std::move(mark));
}

} // namespace throwline::sheet
