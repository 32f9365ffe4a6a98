#include "stage/raising.h"

#include <algorithm>
#include <cmath>

/// Plausible solids for stock items: what of them hides and what lets sight pass. Thicknesses are
/// common practice, no source.
namespace throwline::stage {

namespace {

constexpr double kLeg_m = 0.05;
constexpr double kSeatSlab_m = 0.06;
constexpr double kChairBack_m = 0.05;
constexpr double kSofaBack_m = 0.2;
constexpr double kSofaArm_m = 0.15;
/// Arms of upholstered seats end this far above the seat.
constexpr double kSofaArmRise_m = 0.2;
/// Seats at least this wide are upholstered down to the floor, unless they have no back.
constexpr double kUpholsteredWidth_m = 0.75;
/// Usual rise of a step.
constexpr double kStepRise_m = 0.2;

struct Size {
    double width_m, depth_m, height_m;
};

Size size_of(const catalogue::StockItem& item) {
    return {item.width.m(), item.depth.m(), item.height.m()};
}

/// A box given by where its middle is on the floor plan of the item.
Mesh block(double x_m, double y_m, double width_m, double depth_m, double bottom_m, double top_m) {
    return upright_box({x_m, y_m}, width_m, depth_m, 0.0, bottom_m, top_m);
}

Mesh four_legs(const Size& size, double top_m) {
    const double leg_m = std::min({kLeg_m, size.width_m / 2.0, size.depth_m / 2.0});
    const double x_m = (size.width_m - leg_m) / 2.0;
    const double y_m = (size.depth_m - leg_m) / 2.0;
    Mesh mesh;
    for (const double x : {-x_m, x_m}) {
        for (const double y : {-y_m, y_m}) {
            mesh.append(block(x, y, leg_m, leg_m, 0.0, top_m));
        }
    }
    return mesh;
}

/// A top over legs; round ones stand on a column.
Mesh table(const catalogue::StockItem& item) {
    const Size size = size_of(item);
    const double under_m = item.clear_under.m();
    if (item.shape == catalogue::StockShape::round) {
        Mesh mesh = cylinder({0, 0, under_m}, size.width_m / 2.0, size.height_m - under_m, 32);
        mesh.append(cylinder(Vec3::Zero(), kLeg_m, under_m));
        return mesh;
    }
    Mesh mesh = block(0, 0, size.width_m, size.depth_m, under_m, size.height_m);
    mesh.append(four_legs(size, under_m));
    return mesh;
}

/// Stool, bench: a slab on legs. Chair: with a back at +y.
Mesh light_seat(const catalogue::StockItem& item) {
    const Size size = size_of(item);
    const double seat_m = item.seat_height.m();
    const double under_m = std::max(seat_m - kSeatSlab_m, 0.0);
    if (item.shape == catalogue::StockShape::round) {
        Mesh mesh = cylinder({0, 0, under_m}, size.width_m / 2.0, seat_m - under_m);
        mesh.append(cylinder(Vec3::Zero(), kLeg_m, under_m));
        return mesh;
    }
    Mesh mesh = block(0, 0, size.width_m, size.depth_m, under_m, seat_m);
    mesh.append(four_legs(size, under_m));
    if (size.height_m > seat_m) {
        const double y_m = (size.depth_m - kChairBack_m) / 2.0;
        mesh.append(block(0, y_m, size.width_m, kChairBack_m, seat_m, size.height_m));
    }
    return mesh;
}

Mesh upholstered_seat(const catalogue::StockItem& item) {
    const Size size = size_of(item);
    const double seat_m = item.seat_height.m();
    const double arm_top_m = std::min(seat_m + kSofaArmRise_m, size.height_m);
    const double back_m = std::min(kSofaBack_m, size.depth_m / 3.0);
    Mesh mesh = block(0, 0, size.width_m, size.depth_m, 0.0, seat_m);
    mesh.append(
        block(0, (size.depth_m - back_m) / 2.0, size.width_m, back_m, seat_m, size.height_m));
    for (const double side : {-1.0, 1.0}) {
        mesh.append(block(side * (size.width_m - kSofaArm_m) / 2.0, -back_m / 2.0, kSofaArm_m,
                          size.depth_m - back_m, seat_m, arm_top_m));
    }
    return mesh;
}

Mesh seat(const catalogue::StockItem& item) {
    const bool has_back = item.height > item.seat_height;
    const bool is_wide = item.width.m() >= kUpholsteredWidth_m;
    return has_back && is_wide && item.shape == catalogue::StockShape::box ? upholstered_seat(item)
                                                                           : light_seat(item);
}

/// Steps rise towards +y.
Mesh stairs(const catalogue::StockItem& item) {
    const Size size = size_of(item);
    const int steps = std::max(1, static_cast<int>(std::lround(size.height_m / kStepRise_m)));
    const double tread_m = size.depth_m / steps;
    Mesh mesh;
    for (int i = 0; i < steps; ++i) {
        const double y_m = -size.depth_m / 2.0 + (i + 0.5) * tread_m;
        mesh.append(block(0, y_m, size.width_m, tread_m, 0.0, size.height_m * (i + 1) / steps));
    }
    return mesh;
}

Mesh plain(const catalogue::StockItem& item) {
    const Size size = size_of(item);
    if (item.shape == catalogue::StockShape::round) {
        return cylinder(Vec3::Zero(), size.width_m / 2.0, size.height_m, 32);
    }
    return block(0, 0, size.width_m, size.depth_m, 0.0, size.height_m);
}

std::vector<StockPart> flat(const catalogue::StockItem& item) {
    const Size size = size_of(item);
    const FlatPanel panel{{-size.width_m / 2.0, size.depth_m / 2.0},
                          0.0,
                          size.width_m,
                          size.depth_m,
                          0.0,
                          size.height_m};
    return {{Part::flat_front, flat_front(panel)}, {Part::flat_back, flat_back(panel)}};
}

} // namespace

std::vector<StockPart> stock_parts(const catalogue::StockItem& item) {
    if (item.shape == catalogue::StockShape::stairs) {
        return {{Part::body, stairs(item)}};
    }
    switch (item.use) {
    case catalogue::StockUse::flat:
        return flat(item);
    case catalogue::StockUse::seat:
        return {{Part::body, item.seat_height > Length{} ? seat(item) : plain(item)}};
    case catalogue::StockUse::table:
        return {{Part::body, item.clear_under > Length{} ? table(item) : plain(item)}};
    case catalogue::StockUse::storage:
    case catalogue::StockUse::bed:
    case catalogue::StockUse::appliance:
    case catalogue::StockUse::platform:
    case catalogue::StockUse::set_dressing:
    case catalogue::StockUse::support:
        return {{Part::body, plain(item)}};
    }
    return {};
}

Mesh flat_front(const FlatPanel& panel) {
    const Vec2 end = panel.from + unit_at(panel.heading_rad) * panel.width_m;
    // Seen from the left of its heading, a run starts at the right.
    return sheet(raised(end, panel.bottom_z_m), raised(panel.from, panel.bottom_z_m),
                 raised(panel.from, panel.top_z_m), raised(end, panel.top_z_m));
}

Mesh flat_back(const FlatPanel& panel) {
    const Vec2 along = unit_at(panel.heading_rad) * panel.width_m;
    const Vec2 behind = -turned_left(unit_at(panel.heading_rad)) * panel.thickness_m;
    const std::array<Vec2, 4> corners{panel.from, panel.from + behind, panel.from + behind + along,
                                      panel.from + along};
    const auto low = [&](std::size_t i) { return raised(corners[i], panel.bottom_z_m); };
    const auto high = [&](std::size_t i) { return raised(corners[i], panel.top_z_m); };
    Mesh mesh = sheet(low(1), low(2), high(2), high(1));
    mesh.append(sheet(low(0), low(1), high(1), high(0)));
    mesh.append(sheet(low(2), low(3), high(3), high(2)));
    mesh.append(sheet(high(0), high(1), high(2), high(3)));
    mesh.append(sheet(low(3), low(2), low(1), low(0)));
    return mesh;
}

} // namespace throwline::stage
