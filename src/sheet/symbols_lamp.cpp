#include "sheet/symbols.h"

#include "base/convex_hull.h"
#include "base/length_text.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

using stage::PlacedLamp;

constexpr double kLeastBody_mm = 3.0;
constexpr double kFace_mm = 0.8;
constexpr double kCross_mm = 1.1;
/// A beam this near to level never comes down inside a room.
constexpr double kLeastFall = 0.02;
constexpr double kLongestBeam_m = 40.0;
/// Aims higher than this are faces rather than the floor.
constexpr double kFaceHeight_m = 0.5;
/// An axis this near to straight down has no direction on the plan.
constexpr double kStraightDown = 0.05;

bool looks_down(const PlacedLamp& lamp) {
    return std::hypot(lamp.axis.x(), lamp.axis.y()) < kStraightDown;
}

const plan::Lamp* planned(const plan::Plan& plan, const PlacedLamp& lamp) {
    return plan::find(plan, lamp.lamp);
}

/// The housing from above, in axes with x along the beam; the bright face at x = 0.
struct Housing {
    double deep_m = 0.2;
    double half_m = 0.1;
    double half_face_m = 0.1;
};

/// At its true size in a frame, but never so small that it cannot be seen.
Housing housing_of(const catalogue::Instrument& instrument, const PlanFrame& frame) {
    Housing housing{instrument.body_depth.m(), instrument.body_width.m() / 2.0,
                    instrument.face_width.m() / 2.0};
    const double least_m = kLeastBody_mm / frame.mm_per_m;
    const double grow =
        std::max(1.0, least_m / std::max(1e-3, std::max(housing.deep_m, 2.0 * housing.half_m)));
    housing.deep_m *= grow;
    housing.half_m *= grow;
    housing.half_face_m = std::min(housing.half_face_m * grow, housing.half_m);
    return housing;
}

/// A housing by what kind of instrument it is, face forward.
std::vector<Vec2> housing_corners(const ThingFrame& thing, const catalogue::Instrument& instrument,
                                  const Housing& body) {
    using catalogue::InstrumentKind;
    switch (instrument.kind) {
    case InstrumentKind::profile: // Narrow barrel in front of a wider lamp house.
        return {thing.at(-body.deep_m, -body.half_m),
                thing.at(-0.6 * body.deep_m, -body.half_m),
                thing.at(-0.5 * body.deep_m, -body.half_face_m),
                thing.at(0.0, -body.half_face_m),
                thing.at(0.0, body.half_face_m),
                thing.at(-0.5 * body.deep_m, body.half_face_m),
                thing.at(-0.6 * body.deep_m, body.half_m),
                thing.at(-body.deep_m, body.half_m)};
    case InstrumentKind::soft_box: // Opens towards the front cloth.
        return {thing.at(-body.deep_m, -0.3 * body.half_m), thing.at(0.0, -body.half_m),
                thing.at(0.0, body.half_m), thing.at(-body.deep_m, 0.3 * body.half_m)};
    case InstrumentKind::par: // A can, cut off at the rear.
        return {thing.at(-body.deep_m, -0.6 * body.half_m),
                thing.at(-0.8 * body.deep_m, -body.half_m),
                thing.at(0.0, -body.half_m),
                thing.at(0.0, body.half_m),
                thing.at(-0.8 * body.deep_m, body.half_m),
                thing.at(-body.deep_m, 0.6 * body.half_m)};
    case InstrumentKind::fresnel:
    case InstrumentKind::open_face:
    case InstrumentKind::led_panel:
    case InstrumentKind::tube:
    case InstrumentKind::lantern:
    case InstrumentKind::practical:
    case InstrumentKind::cyc:
        break;
    }
    return thing.box(-body.deep_m, -body.half_m, 0.0, body.half_m);
}

/// The housing with its bright face thickened.
Marks housing_marks(const ThingFrame& thing, const catalogue::Instrument& instrument,
                    const Housing& body) {
    const Pen edge = pen(Ink::built, kStanding_mm);
    const std::vector<Vec2> corners = housing_corners(thing, instrument, body);
    const double half_face_m = std::max(body.half_face_m, 0.4 * body.half_m);
    return {
        outline(corners, edge, solid(Ink::paper)), outline(corners, edge, solid(Ink::lamp, 0.45)),
        line(thing.at(0.0, -half_face_m), thing.at(0.0, half_face_m), pen(Ink::lamp, kFace_mm))};
}

/// The lamp sign of IEC 60617: a circle with a cross.
Marks round_marks(const Vec2& centre, double radius_mm) {
    const Pen edge = pen(Ink::built, kStanding_mm);
    Marks marks{Circle{centre, radius_mm, edge, solid(Ink::paper)},
                Circle{centre, radius_mm, edge, solid(Ink::lamp, 0.3)}};
    const double arm_mm = radius_mm * std::numbers::sqrt2 / 2.0;
    for (const double side : {-1.0, 1.0}) {
        const Vec2 arm{arm_mm, arm_mm * side};
        marks.emplace_back(line(centre - arm, centre + arm, pen(Ink::built, kFine_mm)));
    }
    return marks;
}

bool is_round(const catalogue::Instrument& instrument) {
    return instrument.kind == catalogue::InstrumentKind::practical
           || instrument.kind == catalogue::InstrumentKind::lantern;
}

/// Whether there are so many lamps for the room's size on paper that their beams would hide the
/// rest.
bool are_many(const Board& board, const plan::Plan& plan, std::size_t lamps) {
    constexpr std::size_t kMany = 24;
    constexpr double kManyOnASquareDecimetre = 12.0;
    const double side_dm = board.frame.mm(1.0) / 100.0;
    const double room_dm2 = area(plan.room.outline) * side_dm * side_dm;
    return lamps > kMany || static_cast<double>(lamps) > kManyOnASquareDecimetre * room_dm2;
}

/// The axis to the aim; of many lamps only its beginning.
void draw_aim(Board& board, const PlacedLamp& lamp, bool is_one_of_many) {
    constexpr double kBeginning_mm = 8.0;
    if (!lamp.target) {
        return;
    }
    const Vec2 from = board.frame.at(floor_of(lamp.face));
    const Vec2 to = board.frame.at(floor_of(*lamp.target));
    const double length_mm = (to - from).norm();
    const double share =
        is_one_of_many ? std::min(1.0, kBeginning_mm / std::max(length_mm, 1e-9)) : 1.0;
    board.add(PlanLayer::pools,
              line(from, from + (to - from) * share,
                   pen(Ink::lamp, kConstruction_mm, LinePattern::long_dash)),
              Crowd::light);
    const Pen fine = pen(Ink::lamp, kFine_mm);
    board.add(PlanLayer::lamps, line(to - Vec2{kCross_mm, 0.0}, to + Vec2{kCross_mm, 0.0}, fine),
              Crowd::firm);
    board.add(PlanLayer::lamps, line(to - Vec2{0.0, kCross_mm}, to + Vec2{0.0, kCross_mm}, fine),
              Crowd::firm);
}

void draw_mount(Board& board, const plan::Lamp& lamp, const PlacedLamp& placed) {
    const Vec2 centre = board.frame.at(floor_of(placed.point));
    if (placed.support_outline.size() > 2) {
        board.add(
            PlanLayer::lamps,
            outline(board.frame.at(placed.support_outline), pen(Ink::built, kConstruction_mm)),
            Crowd::firm);
        board.used.insert(LegendEntry::standing_lamp);
    } else if (std::holds_alternative<plan::PracticalMount>(lamp.mount)) {
        board.used.insert(LegendEntry::practical);
    } else { // The clamp on the pipe or wall.
        board.add(PlanLayer::lamps,
                  Circle{centre, 0.7, pen(Ink::built, kFine_mm), solid(Ink::built)}, Crowd::never);
        board.used.insert(LegendEntry::hung_lamp);
    }
}

/// Words beside a lamp, still without any.
LabelRequest label_beside(const Board& board, const PlacedLamp& placed, const Housing& body) {
    LabelRequest label;
    const Vec2 middle =
        looks_down(placed) ? floor_of(placed.face)
                           : Vec2{floor_of(placed.face)
                                  - unit_at(angle_of(floor_of(placed.axis))) * (body.deep_m / 2.0)};
    label.anchor = board.frame.at(middle);
    label.half_mm = Vec2::Constant(board.frame.mm(0.75 * std::max(body.deep_m / 2.0, body.half_m)));
    label.ink = Ink::lamp;
    return label;
}

/// Where rays at half the beam angle come down on a level plane.
Polygon beam_on_plane(const PlacedLamp& lamp, double plane_z_m) {
    constexpr int kRays = 48;
    const double half_rad = lamp.beam.beam.rad() / 2.0;
    std::vector<Vec2> points;
    for (int i = 0; i < kRays; ++i) {
        const double turn = 2.0 * std::numbers::pi * i / kRays;
        const Vec3 ray =
            lamp.axis * std::cos(half_rad)
            + (lamp.right * std::cos(turn) + lamp.up * std::sin(turn)) * std::sin(half_rad);
        const double fall_m = lamp.face.z() - plane_z_m;
        const double length_m =
            ray.z() < -kLeastFall ? std::min(kLongestBeam_m, fall_m / -ray.z()) : kLongestBeam_m;
        points.push_back(floor_of(lamp.face + ray * length_m));
    }
    return convex_hull(points);
}

/// Where its beam falls at half its peak; empty when it burns on nothing or lights the room rather
/// than a pool.
Polygon pool_of(const PlacedLamp& lamp) {
    const double aimed_m = lamp.target ? lamp.target->z() : 0.0;
    const double plane_z_m = aimed_m > kFaceHeight_m ? aimed_m : 0.0;
    const bool is_wide = lamp.beam.beam.deg() >= 120.0;
    if (lamp.beam.peak_cd <= 0.0 || lamp.face.z() <= plane_z_m + kLeastFall || is_wide) {
        return {};
    }
    return beam_on_plane(lamp, plane_z_m);
}

/// A pool larger than this share of the room lights the room.
constexpr double kLargestPool = 0.35;

std::vector<Polygon> pools_in_room(const plan::Plan& plan, std::span<const PlacedLamp> lamps) {
    std::vector<Polygon> pools;
    for (const PlacedLamp& lamp : lamps) {
        const Polygon pool = planned(plan, lamp) == nullptr ? Polygon{} : pool_of(lamp);
        if (pool.size() >= 3) {
            const std::vector<Polygon> parts = parts_shared(pool, plan.room.outline);
            pools.insert(pools.end(), parts.begin(), parts.end());
        }
    }
    return pools;
}

/// Of many pools those that can be told apart: the smallest, until they would cover the room once.
void keep_smallest(std::vector<Polygon>& pools, double room_m2) {
    std::stable_sort(pools.begin(), pools.end(),
                     [](const Polygon& a, const Polygon& b) { return area(a) < area(b); });
    double covered_m2 = 0.0;
    const auto too_many = std::find_if(pools.begin(), pools.end(), [&](const Polygon& pool) {
        covered_m2 += area(pool);
        return covered_m2 > room_m2;
    });
    pools.erase(too_many, pools.end());
}

} // namespace

void draw_pools(Board& board, const plan::Plan& plan, std::span<const PlacedLamp> lamps) {
    constexpr double kWashOfAll = 0.5;
    constexpr double kMostWash = 0.10;
    const bool many = are_many(board, plan, lamps.size());
    const double wash =
        std::min(kMostWash, kWashOfAll / std::max(1.0, static_cast<double>(lamps.size())));
    const double room_m2 = area(plan.room.outline);
    std::vector<Polygon> pools = pools_in_room(plan, lamps);
    if (many) {
        keep_smallest(pools, room_m2);
    }
    for (const Polygon& pool : pools) {
        // What lights most of the room has no shape worth a tint, and of many none has.
        const bool is_pool = area(pool) < kLargestPool * room_m2;
        const Pen edge =
            pen(Ink::lamp, many || !is_pool ? kHair_mm : kConstruction_mm, LinePattern::long_dash);
        board.add(PlanLayer::pools, outline(board.frame.at(pool), edge,
                                            is_pool && !many ? solid(Ink::lamp, wash) : Fill{}));
        board.used.insert(LegendEntry::pool);
    }
}

std::string patch_text(const plan::Lamp& lamp) {
    std::string text = lamp.channel > 0 ? fmt::format("ch {}", lamp.channel) : std::string{};
    if (!lamp.circuit.empty()) {
        text += fmt::format("{}{}", text.empty() ? "" : ", ", lamp.circuit.name);
    }
    return text;
}

void add_instrument_symbol(Marks& marks, const Vec2& centre, double largest_mm,
                           const catalogue::Instrument& instrument) {
    const double real_m = std::max(instrument.body_depth.m(), instrument.body_width.m());
    const PlanFrame frame{centre, largest_mm / std::max(1e-3, real_m)};
    const Housing body = housing_of(instrument, frame);
    const Marks symbol =
        is_round(instrument)
            ? round_marks(centre, largest_mm / 2.0)
            : housing_marks({frame, Vec2{body.deep_m / 2.0, 0.0}, 0.0}, instrument, body);
    marks.insert(marks.end(), symbol.begin(), symbol.end());
}

std::vector<LabelLine> lamp_name_lines(const plan::Lamp& lamp, const PlacedLamp& /*placed*/) {
    std::vector<LabelLine> lines{{lamp.id.name, true}};
    // A lamp that is named after its channel says it once.
    const bool named_after_channel = lamp.id.name == fmt::format("{}", lamp.channel);
    const std::string patch = named_after_channel ? lamp.circuit.name : patch_text(lamp);
    if (!patch.empty()) {
        lines.push_back({patch});
    }
    return lines;
}

void draw_lamps(Board& board, const plan::Plan& plan, std::span<const PlacedLamp> lamps,
                const LampLettering& lettering) {
    const bool many = are_many(board, plan, lamps.size());
    for (const PlacedLamp& placed : lamps) {
        const plan::Lamp* lamp = planned(plan, placed);
        if (lamp == nullptr || placed.instrument == nullptr) {
            continue;
        }
        draw_mount(board, *lamp, placed);
        draw_aim(board, placed, many);
        const Housing body = housing_of(*placed.instrument, board.frame);
        const Vec2 face = floor_of(placed.face);
        const Marks symbol =
            is_round(*placed.instrument) || looks_down(placed)
                ? round_marks(board.frame.at(face),
                              std::max(kLeastBody_mm / 2.0, board.frame.mm(body.half_m)))
                : housing_marks({board.frame, face, angle_of(floor_of(placed.axis))},
                                *placed.instrument, body);
        for (const Mark& mark : symbol) {
            board.add(PlanLayer::lamps, mark, Crowd::never);
        }
        LabelRequest label = label_beside(board, placed, body);
        label.lines = lettering(*lamp, placed);
        board.labels.push_back(std::move(label));
    }
}

} // namespace throwline::sheet
