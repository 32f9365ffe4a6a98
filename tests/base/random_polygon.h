#pragma once

#include "base/polygon.h"

#include <cmath>
#include <numbers>
#include <rapidcheck.h>

namespace throwline {

/// A point within 10 m of the origin, on a millimetre grid.
inline rc::Gen<Vec2> any_point() {
    return rc::gen::exec([] {
        const int x_mm = *rc::gen::inRange(-10'000, 10'001);
        const int y_mm = *rc::gen::inRange(-10'000, 10'001);
        return Vec2{x_mm / 1000.0, y_mm / 1000.0};
    });
}

/// Corners at rising bearings around a point, which can never cross.
inline rc::Gen<Polygon> any_star_polygon() {
    return rc::gen::exec([] {
        const Vec2 centre = *any_point() / 3.0;
        const int count = *rc::gen::inRange(3, 25);
        Polygon polygon;
        for (int i = 0; i < count; ++i) {
            const double jitter = *rc::gen::inRange(0, 900) / 1000.0;
            const double reach_m = *rc::gen::inRange(200, 6000) / 1000.0;
            polygon.push_back(centre
                              + reach_m * unit_at(2.0 * std::numbers::pi * (i + jitter) / count));
        }
        return polygon;
    });
}

/// Steps of a random skyline over a floor line: many right angles, straight runs and equal heights.
inline rc::Gen<Polygon> any_skyline() {
    return rc::gen::exec([] {
        const int count = *rc::gen::inRange(1, 12);
        Polygon polygon{{0.0, -1.0}};
        for (int i = 0; i < count; ++i) {
            polygon.push_back({i + 1.0, -1.0});
        }
        for (int i = count; i > 0; --i) {
            const double top_m = *rc::gen::inRange(0, 4);
            polygon.push_back({static_cast<double>(i), top_m});
            polygon.push_back({i - 1.0, top_m});
        }
        return polygon;
    });
}

/// A comb or spiral-like zigzag band, the hard case for cutting ears.
inline rc::Gen<Polygon> any_zigzag() {
    return rc::gen::exec([] {
        const int count = *rc::gen::inRange(2, 12);
        const double thickness_m = *rc::gen::inRange(50, 900) / 1000.0;
        Polygon polygon;
        for (int i = 0; i < count; ++i) {
            polygon.push_back({i * 1.0, i % 2 == 0 ? 0.0 : 5.0});
        }
        for (int i = count - 1; i >= 0; --i) {
            polygon.push_back({i * 1.0, (i % 2 == 0 ? 0.0 : 5.0) + thickness_m});
        }
        return polygon;
    });
}

inline rc::Gen<Polygon> any_simple_polygon() {
    return rc::gen::exec([] {
        Polygon polygon = *rc::gen::oneOf(any_star_polygon(), any_skyline(), any_zigzag());
        if (*rc::gen::arbitrary<bool>()) {
            std::reverse(polygon.begin(), polygon.end());
        }
        return polygon;
    });
}

} // namespace throwline
