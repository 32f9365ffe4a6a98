#include "base/nearest_name.h"

#include "base/utf8.h"

#include <algorithm>
#include <vector>

namespace throwline {

namespace {

using Characters = std::vector<char32_t>;

Characters lower_case(std::string_view text) {
    Characters characters = characters_of(text);
    for (char32_t& c : characters) {
        c = c >= U'A' && c <= U'Z' ? c - U'A' + U'a' : c;
    }
    return characters;
}

/// Optimal string alignment distance: edit distance with swaps of neighbours, no part edited twice.
/// Three rows of the usual table are kept.
std::size_t edit_distance(const Characters& a, const Characters& b) {
    std::vector<std::size_t> two_up(b.size() + 1);
    std::vector<std::size_t> one_up(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        row[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::swap(two_up, one_up);
        std::swap(one_up, row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = one_up[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            row[j] = std::min({change, one_up[j] + 1, row[j - 1] + 1});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = std::min(row[j], two_up[j - 2] + 1);
            }
        }
    }
    return row[b.size()];
}

} // namespace

std::string nearest_name(std::string_view typed, std::span<const std::string> candidates) {
    const Characters wanted = lower_case(typed);
    std::string nearest;
    std::size_t least = 0;
    for (const std::string& candidate : candidates) {
        const Characters name = lower_case(candidate);
        const auto [shorter, longer] = std::minmax({wanted.size(), name.size()});
        // At least the difference in length must be edited, which keeps huge texts cheap.
        if (2 * (longer - shorter) >= longer) {
            continue;
        }
        const std::size_t distance = edit_distance(wanted, name);
        if (2 * distance < longer && (nearest.empty() || distance < least)) {
            nearest = candidate;
            least = distance;
        }
    }
    return nearest;
}

std::size_t typing_distance(std::string_view typed, std::string_view meant) {
    return edit_distance(lower_case(typed), lower_case(meant));
}

} // namespace throwline
