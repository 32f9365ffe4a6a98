#include "checks/power_checks.h"

#include <array>

namespace throwline::checks {

namespace {

constexpr std::array kTable{
    Check{"circuit-load", "Load on each circuit",
          "The lamps of a circuit draw no more than its breaker carries, with the margin for loads "
          "that "
          "stay on for three hours; local code and a licensed electrician decide.",
          "NFPA 70 210.19(A)(1) and 210.20(A), from code summaries; elsewhere IEC 60364",
          circuit_load},
    Check{"pipe-load", "Load on each pipe and point",
          "What hangs from a pipe or a grid point weighs no more than the figure given in the plan "
          "from "
          "the venue's papers; the venue and a qualified rigger decide.",
          "plain sum of masses", pipe_load},
    Check{"kit", "Things used against things owned",
          "The plan uses no more of a thing than the kit list holds.", "plain count", kit_count},
};

} // namespace

std::span<const Check> power_checks() {
    return kTable;
}

} // namespace throwline::checks
