#include "edit/lamp_stand.h"

#include <algorithm>

namespace throwline::edit {

const catalogue::Support* usual_lamp_stand(const catalogue::Catalogue& catalogue) {
    const catalogue::Support* stand = catalogue.support("medium light stand");
    for (const catalogue::Support& support : catalogue.supports) {
        stand = stand == nullptr && !support.for_camera ? &support : stand;
    }
    return stand;
}

std::optional<plan::StandMount> stand_at(const catalogue::Catalogue& catalogue, const Vec2& at) {
    const catalogue::Support* stand = usual_lamp_stand(catalogue);
    if (stand == nullptr) {
        return std::nullopt;
    }
    const Length height = std::clamp(Length::metres(2.4), stand->height_min, stand->height_max);
    return plan::StandMount{at, height, stand->name};
}

} // namespace throwline::edit
