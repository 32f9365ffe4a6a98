#include "base/polygon.h"

#include <algorithm>
#include <cmath>
#include <geos_c.h>
#include <limits>
#include <memory>

namespace throwline {

namespace {

/// Parts smaller than a square millimetre come from rounding along shared edges.
constexpr double kSliver_m2 = 1e-6;

void ignore_message(const char* /*message*/, void* /*user*/) {}

/// GEOS keeps its state in a handle; one a call makes every function safe from any thread. Its
/// messages are dropped: a failed call answers null, and that is dealt with where it happens.
class Geos {
  public:
    Geos() : handle_{GEOS_init_r()} {
        GEOSContext_setNoticeMessageHandler_r(handle_, ignore_message, nullptr);
        GEOSContext_setErrorMessageHandler_r(handle_, ignore_message, nullptr);
    }
    ~Geos() { GEOS_finish_r(handle_); }
    Geos(const Geos&) = delete;
    Geos& operator=(const Geos&) = delete;

    GEOSContextHandle_t get() const { return handle_; }

  private:
    GEOSContextHandle_t handle_;
};

struct GeometryDeleter {
    GEOSContextHandle_t handle = nullptr;
    void operator()(GEOSGeometry* geometry) const { GEOSGeom_destroy_r(handle, geometry); }
};
using Geometry = std::unique_ptr<GEOSGeometry, GeometryDeleter>;

Geometry owned(const Geos& geos, GEOSGeometry* geometry) {
    return {geometry, {geos.get()}};
}

bool has_outline(std::span<const Vec2> polygon) {
    return polygon.size() >= 3
           && std::all_of(polygon.begin(), polygon.end(),
                          [](const Vec2& corner) { return corner.allFinite(); });
}

Geometry ring_of(const Geos& geos, std::span<const Vec2> polygon) {
    const auto count = static_cast<unsigned>(polygon.size() + 1);
    GEOSCoordSequence* corners = GEOSCoordSeq_create_r(geos.get(), count, 2);
    if (corners == nullptr) {
        return owned(geos, nullptr);
    }
    for (unsigned i = 0; i < count; ++i) {
        const Vec2& corner = polygon[i % polygon.size()];
        GEOSCoordSeq_setXY_r(geos.get(), corners, i, corner.x(), corner.y());
    }
    // The ring takes over the corners, also where it fails.
    return owned(geos, GEOSGeom_createLinearRing_r(geos.get(), corners));
}

/// The area that the corners enclose, as GEOS can work with it; null if there is none.
Geometry area_of(const Geos& geos, std::span<const Vec2> polygon) {
    if (!has_outline(polygon)) {
        return owned(geos, nullptr);
    }
    Geometry ring = ring_of(geos, polygon);
    if (!ring) {
        return ring;
    }
    Geometry area = owned(geos, GEOSGeom_createPolygon_r(geos.get(), ring.release(), nullptr, 0));
    if (!area || GEOSisValid_r(geos.get(), area.get()) == 1) {
        return area;
    }
    Geometry mended = owned(geos, GEOSMakeValid_r(geos.get(), area.get()));
    return mended ? std::move(mended) : owned(geos, GEOSBuffer_r(geos.get(), area.get(), 0.0, 8));
}

double area_of(const Geos& geos, const GEOSGeometry* geometry) {
    double area_m2 = 0.0;
    return geometry != nullptr && GEOSArea_r(geos.get(), geometry, &area_m2) == 1 ? area_m2 : 0.0;
}

void add_ring(const Geos& geos, const GEOSGeometry* ring, bool is_hole,
              std::vector<Polygon>& parts) {
    const GEOSCoordSequence* corners =
        ring == nullptr ? nullptr : GEOSGeom_getCoordSeq_r(geos.get(), ring);
    unsigned count = 0;
    if (corners == nullptr || GEOSCoordSeq_getSize_r(geos.get(), corners, &count) == 0) {
        return;
    }
    Polygon polygon;
    for (unsigned i = 0; i + 1 < count; ++i) {
        Vec2 corner = Vec2::Zero();
        GEOSCoordSeq_getXY_r(geos.get(), corners, i, &corner.x(), &corner.y());
        polygon.push_back(corner);
    }
    if (area(polygon) < kSliver_m2) {
        return;
    }
    if ((signed_area(polygon) < 0.0) != is_hole) {
        std::reverse(polygon.begin(), polygon.end());
    }
    parts.push_back(std::move(polygon));
}

void add_polygon(const Geos& geos, const GEOSGeometry* polygon, std::vector<Polygon>& parts) {
    add_ring(geos, GEOSGetExteriorRing_r(geos.get(), polygon), false, parts);
    const int holes = GEOSGetNumInteriorRings_r(geos.get(), polygon);
    for (int i = 0; i < holes; ++i) {
        add_ring(geos, GEOSGetInteriorRingN_r(geos.get(), polygon, i), true, parts);
    }
}

void add_parts(const Geos& geos, const GEOSGeometry* geometry, std::vector<Polygon>& parts) {
    const int type = GEOSGeomTypeId_r(geos.get(), geometry);
    if (type == GEOS_POLYGON) {
        add_polygon(geos, geometry, parts);
    } else if (type == GEOS_MULTIPOLYGON || type == GEOS_GEOMETRYCOLLECTION) {
        const int count = GEOSGetNumGeometries_r(geos.get(), geometry);
        for (int i = 0; i < count; ++i) {
            add_parts(geos, GEOSGetGeometryN_r(geos.get(), geometry, i), parts);
        }
    }
}

std::vector<Polygon> parts_of(const Geos& geos, GEOSGeometry* geometry) {
    std::vector<Polygon> parts;
    if (geometry != nullptr) {
        // Puts parts and corners into an order that depends on nothing but the coordinates.
        GEOSNormalize_r(geos.get(), geometry);
        add_parts(geos, geometry, parts);
    }
    return parts;
}

struct Box {
    Vec2 low;
    Vec2 high;
};

Box box_of(std::span<const Vec2> polygon) {
    Box box{polygon[0], polygon[0]};
    for (const Vec2& corner : polygon) {
        box.low = box.low.cwiseMin(corner);
        box.high = box.high.cwiseMax(corner);
    }
    return box;
}

/// Spares most pairs of things on a plan the work of a true overlay.
bool are_clearly_apart(std::span<const Vec2> a, std::span<const Vec2> b) {
    if (!has_outline(a) || !has_outline(b)) {
        return true;
    }
    const Box p = box_of(a);
    const Box q = box_of(b);
    return (p.high.array() < q.low.array()).any() || (q.high.array() < p.low.array()).any();
}

} // namespace

double overlap_area(std::span<const Vec2> a, std::span<const Vec2> b) {
    if (are_clearly_apart(a, b)) {
        return 0.0;
    }
    const Geos geos;
    const Geometry first = area_of(geos, a);
    const Geometry second = area_of(geos, b);
    if (!first || !second) {
        return 0.0;
    }
    const Geometry shared = owned(geos, GEOSIntersection_r(geos.get(), first.get(), second.get()));
    return area_of(geos, shared.get());
}

std::vector<Polygon> parts_outside(std::span<const Vec2> subject, std::span<const Vec2> cover) {
    const Geos geos;
    const Geometry whole = area_of(geos, subject);
    if (!whole) {
        return {};
    }
    const Geometry covering = area_of(geos, cover);
    const Geometry outside =
        covering ? owned(geos, GEOSDifference_r(geos.get(), whole.get(), covering.get()))
                 : owned(geos, GEOSGeom_clone_r(geos.get(), whole.get()));
    return parts_of(geos, outside.get());
}

std::vector<Polygon> parts_shared(std::span<const Vec2> a, std::span<const Vec2> b) {
    if (are_clearly_apart(a, b)) {
        return {};
    }
    const Geos geos;
    const Geometry first = area_of(geos, a);
    const Geometry second = area_of(geos, b);
    if (!first || !second) {
        return {};
    }
    const Geometry shared = owned(geos, GEOSIntersection_r(geos.get(), first.get(), second.get()));
    return parts_of(geos, shared.get());
}

double distance_between(std::span<const Vec2> a, std::span<const Vec2> b) {
    constexpr double kNone = std::numeric_limits<double>::infinity();
    const Geos geos;
    const Geometry first = area_of(geos, a);
    const Geometry second = area_of(geos, b);
    double distance_m = kNone;
    if (!first || !second || GEOSisEmpty_r(geos.get(), first.get()) != 0
        || GEOSisEmpty_r(geos.get(), second.get()) != 0
        || GEOSDistance_r(geos.get(), first.get(), second.get(), &distance_m) == 0) {
        return kNone;
    }
    return distance_m;
}

} // namespace throwline
