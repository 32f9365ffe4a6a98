#include "plan/thing_pairs.h"

#include <algorithm>

namespace throwline::plan {

std::vector<std::size_t> out_of_order(const ThingPairs& pairs) {
    // Longest increasing subsequence (Schensted 1961): for each length the pair with the smallest
    // older index that ends such a sequence, and what stood before each pair.
    constexpr std::size_t kNone = static_cast<std::size_t>(-1);
    std::vector<std::size_t> ends;
    std::vector<std::size_t> before(pairs.both.size(), kNone);
    for (std::size_t i = 0; i < pairs.both.size(); ++i) {
        const auto place = std::lower_bound(
            ends.begin(), ends.end(), pairs.both[i].first,
            [&](std::size_t pair, std::size_t old) { return pairs.both[pair].first < old; });
        before[i] = place == ends.begin() ? kNone : *(place - 1);
        if (place == ends.end()) {
            ends.push_back(i);
        } else {
            *place = i;
        }
    }
    std::vector<bool> stays(pairs.both.size(), false);
    for (std::size_t i = ends.empty() ? kNone : ends.back(); i != kNone; i = before[i]) {
        stays[i] = true;
    }
    std::vector<std::size_t> moved;
    for (std::size_t i = 0; i < pairs.both.size(); ++i) {
        if (!stays[i]) {
            moved.push_back(i);
        }
    }
    return moved;
}

} // namespace throwline::plan
