#include "edit/flat_widths.h"

#include <algorithm>
#include <cmath>

namespace throwline::edit {

namespace {

/// Deeper ones are chimney breasts and the like.
constexpr Length kDeepest = Length::millimetres(150);
/// Sizes that differ by less are one.
constexpr double kSame_m = 0.0005;
/// Lengths that widths fill but for rounding are filled.
constexpr double kFilled_m = 1e-6;

bool same(Length a, Length b) {
    return std::abs((a - b).m()) < kSame_m;
}

bool is_whole_inches(Length length) {
    return same(length, Length::inches(std::round(length.in())));
}

Length usual_height(UnitSystem units) {
    return units == UnitSystem::imperial ? Length::feet(8) : Length::metres(2.4);
}

void add_width(std::vector<Length>& widths, Length width) {
    const auto is_it = [&](Length other) { return same(width, other); };
    if (std::none_of(widths.begin(), widths.end(), is_it)) {
        widths.push_back(width);
    }
}

double total_m(const std::vector<Length>& widths) {
    double sum_m = 0.0;
    for (const Length width : widths) {
        sum_m += width.m();
    }
    return sum_m;
}

} // namespace

FlatSizes flat_sizes(const catalogue::Catalogue& catalogue, UnitSystem units) {
    const bool imperial = units == UnitSystem::imperial;
    FlatSizes sizes{{}, usual_height(units), plan::FlatRun{}.thickness};
    for (const catalogue::StockItem& item : catalogue.stock) {
        const bool is_plain = item.use == catalogue::StockUse::flat && item.depth <= kDeepest
                              && item.width.m() > kSame_m && same(item.height, sizes.height);
        if (is_plain && is_whole_inches(item.width) == imperial) {
            add_width(sizes.widths, item.width);
            sizes.thickness = item.depth;
        }
    }
    if (sizes.widths.size() < 2) {
        add_width(sizes.widths, imperial ? Length::feet(4) : Length::metres(1.2));
        add_width(sizes.widths, imperial ? Length::feet(2) : Length::metres(0.6));
    }
    std::sort(sizes.widths.begin(), sizes.widths.end(), std::greater<>{});
    return sizes;
}

std::vector<Length> widths_for(double length_m, const FlatSizes& sizes) {
    const Length widest = sizes.widths.front();
    const double count = std::floor((length_m + kFilled_m) / widest.m());
    std::vector<Length> widths(static_cast<std::size_t>(std::max(count, 0.0)), widest);
    const double rest_m = length_m - count * widest.m();
    // Nothing more, unless a flat comes nearer to the rest; without any, the nearest.
    double least_m = widths.empty() ? length_m + widest.m() : rest_m;
    std::optional<Length> last;
    for (const Length width : sizes.widths) {
        if (const double miss_m = std::abs(rest_m - width.m()); miss_m < least_m - kFilled_m) {
            least_m = miss_m;
            last = width;
        }
    }
    if (last) {
        widths.push_back(*last);
    }
    return widths;
}

std::vector<Length> refitted(std::vector<Length> widths, double length_m, const FlatSizes& sizes) {
    while (widths.size() > 1 && total_m(widths) - widths.back().m() / 2.0 > length_m) {
        widths.pop_back();
    }
    const double more_m = length_m - total_m(widths);
    if (more_m > sizes.widths.back().m() / 2.0) {
        const std::vector<Length> added = widths_for(more_m, sizes);
        widths.insert(widths.end(), added.begin(), added.end());
    }
    return widths;
}

Vec2 end_of(const plan::FlatRun& run) {
    return run.from + unit_at(run.heading.rad()) * run.total_width().m();
}

} // namespace throwline::edit
