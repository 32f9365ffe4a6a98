#include "checks/things_used.h"

namespace throwline::checks {

ThingsUsed things_used(const plan::Plan& plan) {
    ThingsUsed used;
    for (const plan::Lamp& lamp : plan.lamps) {
        used[lamp.instrument].push_back(lamp.id.name);
        for (const std::string& filter : lamp.filters) {
            used[filter].push_back(lamp.id.name);
        }
        if (const auto* stand = std::get_if<plan::StandMount>(&lamp.mount)) {
            used[stand->support].push_back(lamp.id.name);
        }
    }
    for (const plan::Camera& camera : plan.cameras) {
        used[camera.sensor].push_back(camera.id.name);
        used[camera.lens].push_back(camera.id.name);
        used[camera.support].push_back(camera.id.name);
    }
    for (const plan::Scenery& scenery : plan.scenery) {
        if (const auto* piece = std::get_if<plan::StockPiece>(&scenery.shape)) {
            used[piece->item].push_back(scenery.id.name);
        }
    }
    return used;
}

} // namespace throwline::checks
