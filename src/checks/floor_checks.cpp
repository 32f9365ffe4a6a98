#include "checks/floor_checks.h"

#include <array>

namespace throwline::checks {

namespace {

constexpr std::array kTable{
    Check{"floor-overlap", "Things in each other's place",
          "Supports, people, furniture and flats neither overlap nor leave the room.",
          "plain geometry", floor_overlap},
    Check{"walk", "Walks through things",
          "Nobody walks through scenery on the way from one mark to the next.", "plain geometry",
          walk},
    Check{"door-swing", "Doors that cannot swing",
          "Every door opens as wide as the plan says without meeting anything.", "plain geometry",
          door_swing},
    Check{"way-out", "Ways out",
          "Every way out stays clear at the width that the plan asks for; the venue and local code "
          "decide.",
          "common practice, no source; local code decides", way_out},
};

} // namespace

std::span<const Check> floor_checks() {
    return kTable;
}

} // namespace throwline::checks
