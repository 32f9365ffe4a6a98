#include "photometry/filters.h"
#include "stage/raising.h"

#include <algorithm>

namespace throwline::stage {

namespace {

/// A body whose underside is nearer to the floor than this stands on it.
constexpr double kStandsOnFloor_m = 0.05;
/// A spot of light so near its target has no direction.
constexpr double kSamePoint_m = 1e-6;
/// Of a lamp shade or a screen that is off; only bounce light sees it.
constexpr double kPracticalReflectance = 0.6;

/// Level across, as nearly upright as the axis allows; straight down, up is up the page.
void set_axes(PlacedLamp& lamp, const Vec3& axis) {
    lamp.axis = axis;
    const Vec3 level = axis.cross(Vec3::UnitZ());
    lamp.right = level.norm() > kSamePoint_m ? Vec3{level.normalized()} : Vec3{Vec3::UnitX()};
    lamp.up = lamp.right.cross(axis);
}

std::vector<catalogue::Filter> filters_of(const Moment& moment, const plan::Lamp& lamp) {
    std::vector<catalogue::Filter> filters;
    for (const std::string& name : lamp.filters) {
        if (const catalogue::Filter* filter = moment.catalogue.filter(name)) {
            filters.push_back(*filter);
        }
    }
    return filters;
}

void set_light(PlacedLamp& placed, const Moment& moment, const plan::Lamp& lamp) {
    const catalogue::Instrument& instrument = *placed.instrument;
    const std::vector<catalogue::Filter> filters = filters_of(moment, lamp);
    placed.beam = photometry::dimmed(
        photometry::filtered(photometry::beam_at_focus(instrument, lamp.focus), filters),
        plan::is_lit(lamp, moment.beat) ? lamp.level : 0.0);
    placed.colour_temperature_k =
        photometry::temperature_behind_k(instrument.colour_temperature_k, filters)
            .value_or(instrument.colour_temperature_k);
}

/// Where the housing of a practical is: upright, its light near its top.
struct UprightBody {
    Polygon outline;
    double bottom_z_m = 0.0;
    double top_z_m = 0.0;
};

UprightBody practical_body(const PlacedLamp& lamp) {
    const catalogue::Instrument& instrument = *lamp.instrument;
    const Length over = std::min(instrument.body_height, instrument.face_height) / 2.0;
    UprightBody body;
    body.outline = rectangle(floor_of(lamp.point), instrument.body_width.m(),
                             instrument.body_depth.m(), angle_of(floor_of(lamp.right)));
    body.top_z_m = lamp.point.z() + over.m();
    body.bottom_z_m = body.top_z_m - instrument.body_height.m();
    return body;
}

void raise_practical(Raising& raising, PlacedLamp& lamp) {
    const UprightBody body = practical_body(lamp);
    raising.add(lamp.owner, Part::housing, prism(body.outline, body.bottom_z_m, body.top_z_m),
                {kPracticalReflectance, true});
    if (body.bottom_z_m <= kStandsOnFloor_m) {
        lamp.support_outline = body.outline;
    }
}

void raise_housing(Raising& raising, const PlacedLamp& lamp) {
    const catalogue::Instrument& instrument = *lamp.instrument;
    raising.add(lamp.owner, Part::housing,
                box(lamp.point, lamp.right * (instrument.body_width.m() / 2.0),
                    lamp.axis * (instrument.body_depth.m() / 2.0),
                    lamp.up * (instrument.body_height.m() / 2.0)),
                {kEquipmentReflectance, false});
}

void raise_stand(Raising& raising, PlacedLamp& lamp, const plan::StandMount& mount) {
    const catalogue::Support* support = raising.moment.catalogue.support(mount.support);
    if (support == nullptr) {
        return;
    }
    lamp.support_outline = circle(mount.at, support->footprint_radius.m());
    const double top_m = lamp.point.z() - lamp.instrument->body_height.m() / 2.0;
    if (top_m > 0.0) {
        raising.add(lamp.owner, Part::stand,
                    cylinder(raised(mount.at, 0.0), support->column_radius.m(), top_m, 10),
                    {kEquipmentReflectance, false});
    }
}

void raise_lamp(Raising& raising, const plan::Lamp& lamp) {
    const Moment& moment = raising.moment;
    const std::optional<Vec3> point = plan::lamp_point(moment.plan, lamp);
    const catalogue::Instrument* instrument = moment.catalogue.instrument(lamp.instrument);
    if (!point || instrument == nullptr) {
        return;
    }
    PlacedLamp placed;
    placed.lamp = lamp.id;
    placed.owner = raising.owner(OwnerKind::lamp, lamp.id.name);
    placed.instrument = instrument;
    placed.point = *point;
    placed.role = lamp.role;
    placed.cut = lamp.cut;
    placed.target = lamp_target(moment, lamp);
    const Vec3 throw_m = placed.target ? Vec3{*placed.target - *point} : Vec3{-Vec3::UnitZ()};
    set_axes(placed,
             throw_m.norm() > kSamePoint_m ? Vec3{throw_m.normalized()} : Vec3{-Vec3::UnitZ()});
    set_light(placed, moment, lamp);
    placed.face = is_all_round(placed)
                      ? placed.point
                      : Vec3{placed.point + placed.axis * (instrument->body_depth.m() / 2.0)};
    if (std::holds_alternative<plan::PracticalMount>(lamp.mount)) {
        raise_practical(raising, placed);
    } else {
        raise_housing(raising, placed);
    }
    if (const auto* stand = std::get_if<plan::StandMount>(&lamp.mount)) {
        raise_stand(raising, placed, *stand);
    }
    raising.stage.lamps.push_back(std::move(placed));
}

} // namespace

bool is_all_round(const PlacedLamp& lamp) {
    return !lamp.instrument->soft && lamp.beam.field >= Angle::degrees(180);
}

void raise_lamps(Raising& raising) {
    for (const plan::Lamp& lamp : raising.moment.plan.lamps) {
        raise_lamp(raising, lamp);
    }
}

} // namespace throwline::stage
