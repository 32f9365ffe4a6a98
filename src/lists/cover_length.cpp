#include "lists/cover_length.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <deque>
#include <limits>
#include <numeric>

namespace throwline::lists {

namespace {

constexpr double kUnitsPerMetre = 10'000.0;
/// Quotients that are whole but for their last bits are not rounded up by one.
constexpr double kRounding = 1e-6;
constexpr int kNone = std::numeric_limits<int>::max();

/// For each sum up to the longest: the fewest pieces that make it, and how many of the stock length
/// added last are among them.
struct Step {
    std::vector<int> fewest;
    std::vector<int> taken;
};

/// Fewest pieces when up to `most` pieces of a width may be added to what `before` tells. Goes over
/// the sums that differ by whole widths with a window of the last `most` of them, so that the work
/// does not grow with the number of pieces.
Step with_pieces(const std::vector<int>& before, std::size_t width, std::size_t most) {
    Step step{std::vector<int>(before.size(), kNone), std::vector<int>(before.size(), 0)};
    for (std::size_t first = 0; first < std::min(width, before.size()); ++first) {
        // Index along the sums, and pieces there less that index; increasing.
        std::deque<std::pair<std::size_t, std::int64_t>> window;
        std::size_t index = 0;
        for (std::size_t sum = first; sum < before.size(); sum += width, ++index) {
            if (before[sum] != kNone) {
                const auto level = before[sum] - static_cast<std::int64_t>(index);
                while (!window.empty() && window.back().second > level) {
                    window.pop_back();
                }
                window.emplace_back(index, level);
            }
            while (!window.empty() && index - window.front().first > most) {
                window.pop_front();
            }
            if (!window.empty()) {
                const std::size_t added = index - window.front().first;
                step.taken[sum] = static_cast<int>(added);
                step.fewest[sum] =
                    static_cast<int>(window.front().second + static_cast<std::int64_t>(index));
            }
        }
    }
    return step;
}

struct Units {
    std::size_t run = 0;
    std::vector<std::size_t> widths;
    /// Metres in a unit.
    double unit_m = 0.0;
};

/// In the largest unit that all stock lengths are whole multiples of.
Units in_units(Length run, std::span<const StockLength> stock) {
    std::vector<std::int64_t> widths;
    std::int64_t common = 0;
    for (const StockLength& each : stock) {
        const std::int64_t width =
            std::max<std::int64_t>(1, std::llround(each.length.m() * kUnitsPerMetre));
        widths.push_back(width);
        common = std::gcd(common, width);
    }
    Units units;
    units.unit_m = static_cast<double>(common) / kUnitsPerMetre;
    const double wanted = (run - kJointPlay).m() / units.unit_m - kRounding;
    units.run = wanted > 0.0 ? static_cast<std::size_t>(std::ceil(wanted)) : 0;
    for (const std::int64_t width : widths) {
        units.widths.push_back(static_cast<std::size_t>(width / common));
    }
    return units;
}

} // namespace

int Cover::piece_count() const {
    return std::accumulate(pieces.begin(), pieces.end(), 0);
}

std::optional<Cover> cover_length(Length run, std::span<const StockLength> stock) {
    if (stock.empty() || run > kLongestRun) {
        return std::nullopt;
    }
    const Units units = in_units(run, stock);
    const std::size_t widest = *std::max_element(units.widths.begin(), units.widths.end());
    std::vector<int> fewest(units.run + widest, kNone);
    fewest[0] = 0;
    std::vector<Step> steps;
    for (std::size_t i = 0; i < stock.size(); ++i) {
        const auto most = static_cast<std::size_t>(std::max(stock[i].pieces.value_or(kNone), 0));
        steps.push_back(with_pieces(fewest, units.widths[i], most));
        fewest = steps.back().fewest;
    }
    std::size_t sum = units.run;
    while (sum < fewest.size() && fewest[sum] == kNone) {
        ++sum;
    }
    if (sum == fewest.size()) {
        return std::nullopt;
    }
    Cover cover{std::vector<int>(stock.size(), 0),
                Length::metres(static_cast<double>(sum) * units.unit_m)};
    for (std::size_t i = stock.size(); i-- > 0;) {
        cover.pieces[i] = steps[i].taken[sum];
        sum -= static_cast<std::size_t>(cover.pieces[i]) * units.widths[i];
    }
    return cover;
}

} // namespace throwline::lists
