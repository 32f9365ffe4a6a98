#include "checks/occupants.h"

#include "base/convex_hull.h"

#include <algorithm>
#include <limits>

namespace throwline::checks {

namespace {

/// Height that an operator with hands raised to a camera or a boom takes.
constexpr double kOperatorHeight_m = 1.9;
/// Flats join at their edges; more than a corner post's worth of shared floor is a collision.
constexpr double kFlatJoint_m2 = 0.02;
/// A seat slides under a table by up to this share of its own floor.
constexpr double kPushedInShare = 0.8;

Takes kind_of(const plan::Scenery& scenery, const catalogue::Catalogue& catalogue) {
    if (std::holds_alternative<plan::FlatRun>(scenery.shape)) {
        return Takes::flat;
    }
    if (std::holds_alternative<plan::Drape>(scenery.shape)) {
        return Takes::drape;
    }
    if (std::holds_alternative<plan::Riser>(scenery.shape)) {
        return Takes::platform;
    }
    const auto* piece = std::get_if<plan::StockPiece>(&scenery.shape);
    const catalogue::StockItem* item = piece ? catalogue.stock_item(piece->item) : nullptr;
    if (item == nullptr) {
        return Takes::furniture;
    }
    using Use = catalogue::StockUse;
    switch (item->use) {
    case Use::flat:
        return Takes::flat;
    case Use::seat:
    case Use::bed:
        return Takes::seat;
    case Use::table:
        return Takes::table;
    case Use::platform:
        return Takes::platform;
    case Use::storage:
    case Use::appliance:
    case Use::set_dressing:
    case Use::support:
        return Takes::furniture;
    }
    return Takes::furniture;
}

Occupant occupant(Takes takes, std::string name, Polygon outline, double bottom_z_m,
                  double top_z_m) {
    Occupant made{takes, std::move(name), std::move(outline), bottom_z_m, top_z_m, {}, {}};
    constexpr double kFar = std::numeric_limits<double>::max();
    made.least = Vec2::Constant(kFar);
    made.most = Vec2::Constant(-kFar);
    for (const Vec2& corner : made.outline) {
        made.least = made.least.cwiseMin(corner);
        made.most = made.most.cwiseMax(corner);
    }
    return made;
}

bool takes_floor(stage::Part part, plan::Pose pose) {
    using stage::Part;
    if (part == Part::torso || part == Part::head) {
        return true;
    }
    const bool limb = part == Part::arms || part == Part::legs || part == Part::feet;
    return limb && pose != plan::Pose::sit;
}

/// Hull on the floor of what a person cannot draw in: limbs of somebody who sits go under a table.
Occupant person_occupant(const stage::Stage& stage, const stage::Figure& figure) {
    std::vector<Vec2> points;
    double bottom = figure.crown.z();
    double top = figure.soles_z_m;
    for (const stage::Solid& solid : stage.solids) {
        if (solid.owner_index != figure.owner || !takes_floor(solid.part, figure.pose)) {
            continue;
        }
        for (const Vec3& vertex : solid.mesh.vertices) {
            points.push_back(floor_of(vertex));
            bottom = std::min(bottom, vertex.z());
            top = std::max(top, vertex.z());
        }
    }
    using plan::Pose;
    const Takes takes = figure.pose == Pose::sit   ? Takes::seated_person
                        : figure.pose == Pose::lie ? Takes::lying_person
                                                   : Takes::standing_person;
    return occupant(takes, figure.person.name, convex_hull(std::move(points)), bottom, top);
}

/// What stands on a riser takes nothing of the riser's own height.
double base_under(const Vec2& point, const plan::Plan& plan,
                  const catalogue::Catalogue& catalogue) {
    return plan::floor_height_at(plan, catalogue, point).m();
}

void add_cameras(std::vector<Occupant>& all, const stage::Stage& stage, const plan::Plan& plan,
                 const catalogue::Catalogue& catalogue) {
    for (const stage::PlacedCamera& camera : stage.cameras) {
        const double base_z_m = base_under(floor_of(camera.pose.lens), plan, catalogue);
        if (!camera.support_outline.empty()) {
            all.push_back(occupant(Takes::camera_support, camera.camera.name,
                                   camera.support_outline, base_z_m,
                                   std::max(camera.pose.lens.z(), base_z_m + 0.1)));
        }
        if (!camera.operator_outline.empty()) {
            all.push_back(occupant(Takes::camera_operator, camera.camera.name,
                                   camera.operator_outline, base_z_m,
                                   base_z_m + kOperatorHeight_m));
        }
    }
}

void add_lamp_stands(std::vector<Occupant>& all, const stage::Stage& stage, const plan::Plan& plan,
                     const catalogue::Catalogue& catalogue) {
    for (const stage::PlacedLamp& lamp : stage.lamps) {
        if (!lamp.support_outline.empty() && lamp.role != plan::LampRole::practical) {
            all.push_back(occupant(Takes::lamp_stand, lamp.lamp.name, lamp.support_outline,
                                   base_under(floor_of(lamp.point), plan, catalogue),
                                   lamp.point.z()));
        }
    }
}

void add_boom_operators(std::vector<Occupant>& all, const stage::Stage& stage,
                        const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    for (const stage::PlacedBoom& boom : stage.booms) {
        if (!boom.operator_outline.empty()) {
            const double base_z_m = base_under(floor_of(boom.hands), plan, catalogue);
            all.push_back(occupant(Takes::boom_operator, boom.boom.name, boom.operator_outline,
                                   base_z_m, base_z_m + kOperatorHeight_m));
        }
    }
}

} // namespace

std::vector<Occupant> scenery_occupants(const stage::Stage& stage, const plan::Plan& plan,
                                        const catalogue::Catalogue& catalogue) {
    std::vector<Occupant> all;
    for (const stage::PlacedScenery& placed : stage.scenery) {
        if (const plan::Scenery* scenery = plan::find(plan, placed.scenery)) {
            all.push_back(occupant(kind_of(*scenery, catalogue), placed.scenery.name,
                                   placed.outline, placed.bottom_z_m, placed.top_z_m));
        }
    }
    return all;
}

std::vector<Occupant> moving_occupants(const stage::Stage& stage, const plan::Plan& plan,
                                       const catalogue::Catalogue& catalogue) {
    std::vector<Occupant> all;
    for (const stage::Figure& figure : stage.figures) {
        all.push_back(person_occupant(stage, figure));
    }
    add_cameras(all, stage, plan, catalogue);
    add_lamp_stands(all, stage, plan, catalogue);
    add_boom_operators(all, stage, plan, catalogue);
    return all;
}

double total_area(const std::vector<Polygon>& parts) {
    double total_m2 = 0.0;
    for (const Polygon& part : parts) {
        total_m2 += signed_area(part);
    }
    return total_m2;
}

bool may_meet(const Occupant& a, const Occupant& b) {
    const double common_m = std::min(a.top_z_m, b.top_z_m) - std::max(a.bottom_z_m, b.bottom_z_m);
    return common_m > kHeightSlack_m && (a.least.array() < b.most.array()).all()
           && (b.least.array() < a.most.array()).all();
}

bool may_share(const Occupant& a, const Occupant& b, double shared_m2) {
    const auto either = [&](Takes one, Takes other) {
        return (a.takes == one && b.takes == other) || (a.takes == other && b.takes == one);
    };
    if (a.name == b.name) {
        return true;
    }
    if (either(Takes::seated_person, Takes::seat) || either(Takes::lying_person, Takes::seat)) {
        return true;
    }
    if (either(Takes::seat, Takes::table)) {
        const Occupant& seat = a.takes == Takes::seat ? a : b;
        return shared_m2 <= kPushedInShare * area(seat.outline);
    }
    const bool joined = (a.takes == Takes::flat || a.takes == Takes::drape)
                        && (b.takes == Takes::flat || b.takes == Takes::drape);
    return joined && shared_m2 <= kFlatJoint_m2;
}

} // namespace throwline::checks
