#include "fuzz/targets.h"

#include <array>

namespace throwline::fuzz {

std::span<const Target> all_targets() {
    static constexpr std::array kTargets{
        Target{"length", length_input, 100'000}, Target{"json", json_input, 200'000},
        Target{"plan", plan_input, 60'000},      Target{"catalogue", catalogue_input, 50'000},
        Target{"recce", recce_input, 50'000},
    };
    return kTargets;
}

} // namespace throwline::fuzz
