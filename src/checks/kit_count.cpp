#include "base/polygon.h"
#include "checks/power_checks.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace throwline::checks {

namespace {

using UsersByItem = std::map<std::string, std::vector<std::string>>;

UsersByItem things_used(const plan::Plan& plan) {
    UsersByItem used;
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

} // namespace

std::vector<Finding> kit_count(const CheckInput& input, const std::stop_token&) {
    std::vector<Finding> findings;
    const UsersByItem used = things_used(input.plan);
    const Vec2 middle = centroid(input.plan.room.outline);
    for (const plan::KitItem& owned : input.plan.kit) {
        const auto users = used.find(owned.item);
        const std::size_t have = static_cast<std::size_t>(std::max(owned.count, 0));
        if (users == used.end() || users->second.size() <= have) {
            continue;
        }
        Finding finding;
        finding.check = "kit";
        finding.severity = Severity::error;
        finding.things = users->second;
        finding.at = middle; // it is about no place of its own
        finding.weight = static_cast<double>(users->second.size() - have);
        finding.message = fmt::format("The plan uses {} of \"{}\" and the kit list holds {}.",
                                      users->second.size(), owned.item, have);
        finding.working = {"used - owned",
                           {{"", "used", std::to_string(users->second.size())},
                            {"", "owned", std::to_string(have)}},
                           std::to_string(users->second.size() - have) + " too many",
                           "plain count"};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace throwline::checks
