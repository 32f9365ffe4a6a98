#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <vector>

/// Runs of flats put together from what the Stores have.
namespace throwline::edit {

/// Widths of plain flats, widest first, and how high and thick they are.
struct FlatSizes {
    std::vector<Length> widths;
    Length height;
    Length thickness;
};

/// The flats of 8 ft or 2.4 m that the catalogue has in these units, at most 15 cm deep. Where it
/// has fewer than two widths, also the common studio flats: 4 ft and 2 ft, 1.2 m and 0.6 m (common
/// practice, no source).
FlatSizes flat_sizes(const catalogue::Catalogue& catalogue, UnitSystem units);

/// Flats whose widths together come nearest to a length: as many of the widest as go into it, then
/// the one that fits the rest best. One at least.
std::vector<Length> widths_for(double length_m, const FlatSizes& sizes);

/// A run made longer or shorter at its end to come nearest a length: flats are taken off, or new
/// ones put on; those that stay keep their widths.
std::vector<Length> refitted(std::vector<Length> widths, double length_m, const FlatSizes& sizes);

/// Where a run ends.
Vec2 end_of(const plan::FlatRun& run);

} // namespace throwline::edit
