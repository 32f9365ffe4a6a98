#include "plan/places.h"

#include <algorithm>
#include <cstddef>

namespace throwline::plan {

namespace {

/// A corner of cloth is cut off where mitring it would reach beyond this many half depths.
constexpr double kLongestMitre = 2.0;
/// Points of a drape nearer than this are one point; a direction between them means nothing.
constexpr double kSamePoint_m = 1e-9;

/// Half-depth offset to the left at a point of a drape, mitred between the pieces that meet there.
Vec2 offset_at(const std::vector<Vec2>& along, std::size_t i) {
    const auto normal = [&](std::size_t from) {
        const Vec2 piece = along[from + 1] - along[from];
        return Vec2{turned_left(piece).normalized()};
    };
    const double half_m = kDrapeDepth.m() / 2.0;
    if (i == 0) {
        return normal(0) * half_m;
    }
    if (i + 1 == along.size()) {
        return normal(i - 1) * half_m;
    }
    const Vec2 mean = (normal(i - 1) + normal(i)) / 2.0;
    const double shortening = std::max(mean.squaredNorm(), 1.0 / (kLongestMitre * kLongestMitre));
    return mean / shortening * half_m;
}

std::vector<Vec2> without_repeats(const std::vector<Vec2>& along) {
    std::vector<Vec2> kept;
    for (const Vec2& point : along) {
        if (kept.empty() || (point - kept.back()).norm() > kSamePoint_m) {
            kept.push_back(point);
        }
    }
    return kept;
}

Polygon outline_of(const FlatRun& run, const catalogue::Catalogue&) {
    const Vec2 heading = unit_at(run.heading.rad());
    const Vec2 along = heading * run.total_width().m();
    const Vec2 back = -turned_left(heading) * run.thickness.m();
    return {run.from, run.from + back, run.from + back + along, run.from + along};
}

Polygon outline_of(const StockPiece& piece, const catalogue::Catalogue& catalogue) {
    const catalogue::StockItem* item = catalogue.stock_item(piece.item);
    if (item == nullptr) {
        return {};
    }
    if (item->shape == catalogue::StockShape::round) {
        return circle(piece.at, item->width.m() / 2.0);
    }
    return rectangle(piece.at, item->width.m(), item->depth.m(), piece.turn.rad());
}

Polygon outline_of(const BoxPiece& box, const catalogue::Catalogue&) {
    return rectangle(box.at, box.width.m(), box.depth.m(), box.turn.rad());
}

Polygon outline_of(const CylinderPiece& cylinder, const catalogue::Catalogue&) {
    return circle(cylinder.at, cylinder.diameter.m() / 2.0);
}

Polygon outline_of(const PrismPiece& prism, const catalogue::Catalogue&) {
    return prism.outline;
}

Polygon outline_of(const Riser& riser, const catalogue::Catalogue&) {
    return rectangle(riser.at, riser.width.m(), riser.depth.m(), riser.turn.rad());
}

Polygon outline_of(const Drape& drape, const catalogue::Catalogue&) {
    const std::vector<Vec2> along = without_repeats(drape.along);
    if (along.size() < 2) {
        return {};
    }
    Polygon outline;
    for (std::size_t i = 0; i < along.size(); ++i) {
        outline.emplace_back(along[i] - offset_at(along, i));
    }
    for (std::size_t i = along.size(); i-- > 0;) {
        outline.emplace_back(along[i] + offset_at(along, i));
    }
    return outline;
}

} // namespace

Length FlatRun::total_width() const {
    Length total;
    for (const Length width : widths) {
        total += width;
    }
    return total;
}

Polygon footprint(const Scenery& scenery, const catalogue::Catalogue& catalogue) {
    return std::visit([&](const auto& shape) { return outline_of(shape, catalogue); },
                      scenery.shape);
}

Length height_of(const Scenery& scenery, const catalogue::Catalogue& catalogue) {
    if (const auto* piece = std::get_if<StockPiece>(&scenery.shape)) {
        const catalogue::StockItem* item = catalogue.stock_item(piece->item);
        return item == nullptr ? Length{} : item->height;
    }
    return std::visit(
        [](const auto& shape) {
            if constexpr (requires { shape.height; }) {
                return shape.height;
            } else {
                return Length{};
            }
        },
        scenery.shape);
}

} // namespace throwline::plan
