#include "checks/camera_checks.h"
#include "checks/check.h"
#include "checks/floor_checks.h"
#include "checks/light_checks.h"
#include "checks/power_checks.h"

namespace throwline::checks {

std::vector<Check> all_checks() {
    std::vector<Check> all;
    for (const std::span<const Check> family :
         {camera_checks(), light_checks(), floor_checks(), power_checks()}) {
        all.insert(all.end(), family.begin(), family.end());
    }
    return all;
}

} // namespace throwline::checks
