#include "plan/check_names.h"
#include "plan/check_outline.h"
#include "plan/check_plan.h"

namespace throwline::plan {

namespace {

/// Largest number of corners of a prism; there may be many prisms, each searched pair by pair.
constexpr std::size_t kMostPrismCorners = 200;
/// Points of a drape nearer than this are one point.
constexpr double kShortestPiece_m = 0.001;

template <class Shape>
void check_shape(Reading&, const Value&, const Shape&) {
    // Its single values are all there is to check.
}

void check_shape(Reading& reading, const Value& value, const FlatRun& run) {
    if (run.widths.empty()) {
        reading.wrong(value.at("widths"), "a flat run needs the width of at least one flat");
    } else if (run.total_width() > Length::metres(1000)) {
        reading.wrong(value.at("widths"), "the run is longer than 1000 m");
    }
}

void check_shape(Reading& reading, const Value& value, const PrismPiece& prism) {
    check_outline(reading, value.at("outline"), prism.outline, kMostPrismCorners);
}

void check_shape(Reading& reading, const Value& value, const Drape& drape) {
    const Value along = value.at("along");
    if (drape.along.size() < 2) {
        reading.wrong(along, "a drape hangs along at least two points");
    }
    for (std::size_t i = 1; i < drape.along.size(); ++i) {
        if ((drape.along[i] - drape.along[i - 1]).norm() < kShortestPiece_m) {
            reading.wrong(along.item(i), "this point is in the place of the one before it");
        }
    }
}

} // namespace

void check_scenery(Reading& reading, const Value& root, const Plan& plan) {
    each(root, "scenery", plan.scenery, [&](const Value& value, const Scenery& scenery) {
        if (!reading.is_spoilt(value)) {
            std::visit([&](const auto& shape) { check_shape(reading, value, shape); },
                       scenery.shape);
        }
    });
}

} // namespace throwline::plan
