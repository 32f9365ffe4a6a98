#include "stage/moment.h"

#include <algorithm>

namespace throwline::stage {

namespace {

/// Above the floor: of what a person can sit or lie on under a point.
std::optional<double> seat_top_m(const Moment& moment, const Vec2& at) {
    std::optional<double> top_m;
    for (const plan::Scenery& scenery : moment.plan.scenery) {
        const auto* piece = std::get_if<plan::StockPiece>(&scenery.shape);
        const catalogue::StockItem* item =
            piece == nullptr ? nullptr : moment.catalogue.stock_item(piece->item);
        const bool is_seat =
            item != nullptr && item->seat_height > Length{}
            && (item->use == catalogue::StockUse::seat || item->use == catalogue::StockUse::bed);
        if (is_seat && contains(plan::footprint(scenery, moment.catalogue), at)) {
            const double here_m = (scenery.elevation + item->seat_height).m();
            top_m = std::max(top_m.value_or(here_m), here_m);
        }
    }
    return top_m;
}

double soles_z_m(const Moment& moment, const plan::Mark& mark) {
    return mark.elevation.value_or(plan::floor_height_at(moment.plan, moment.catalogue, mark.at))
        .m();
}

double seat_z_m(const Moment& moment, const plan::Person& person, const plan::Mark& mark) {
    const double soles_m = soles_z_m(moment, mark);
    if (mark.seat_height) {
        return soles_m + mark.seat_height->m();
    }
    if (const std::optional<double> top_m = seat_top_m(moment, mark.at);
        top_m && *top_m > soles_m) {
        return *top_m;
    }
    return mark.pose == plan::Pose::lie
               ? soles_m
               : soles_m + fitting_seat_m(person.stature, moment.catalogue);
}

const plan::Opening* opening_called(const plan::Room& room, const std::string& name) {
    for (const plan::Opening& opening : room.openings) {
        if (opening.id.name == name) {
            return &opening;
        }
    }
    return nullptr;
}

Vec3 middle_of(const plan::Room& room, const plan::Opening& opening) {
    const auto start = static_cast<std::size_t>(opening.wall);
    const Vec2& from = room.outline[start];
    const Vec2& to = room.outline[(start + 1) % room.outline.size()];
    const double along_m = (opening.from_start + opening.width / 2.0).m();
    const Vec2 at = from + (to - from).normalized() * along_m;
    return raised(at, ((opening.sill + opening.head) / 2.0).m());
}

std::optional<Vec3> middle_of(const Moment& moment, const plan::Scenery& scenery) {
    const Polygon outline = plan::footprint(scenery, moment.catalogue);
    if (outline.size() < 3) {
        return std::nullopt;
    }
    const Length height = plan::height_of(scenery, moment.catalogue);
    return raised(centroid(outline), (scenery.elevation + height / 2.0).m());
}

/// All that can be looked at but people.
std::optional<Vec3> thing_place(const Moment& moment, const std::string& name) {
    const plan::Plan& plan = moment.plan;
    if (const auto* camera = plan::find(plan, plan::Id<plan::Camera>{name})) {
        return lens_point(moment, *camera);
    }
    if (const auto* lamp = plan::find(plan, plan::Id<plan::Lamp>{name})) {
        return plan::lamp_point(plan, *lamp);
    }
    if (const auto* scenery = plan::find(plan, plan::Id<plan::Scenery>{name})) {
        return middle_of(moment, *scenery);
    }
    const auto* boom = plan::find(plan, plan::Id<plan::Boom>{name});
    if (boom != nullptr && is_on_floor(*boom, moment.beat)) {
        return raised(boom->microphone, boom->height.m());
    }
    if (const plan::Opening* opening = opening_called(plan.room, name)) {
        return middle_of(plan.room, *opening);
    }
    return std::nullopt;
}

std::optional<plan::Mark> mark_of(const Moment& moment, const std::string& name) {
    const auto marks = plan::marks_at(moment.plan, moment.beat);
    const auto at = marks.find(plan::Id<plan::Person>{name});
    return at == marks.end() ? std::nullopt : std::optional{at->second};
}

std::optional<Vec2> floor_place(const Moment& moment, const Marks& marks, const std::string& name) {
    if (const auto mark = marks.find(plan::Id<plan::Person>{name}); mark != marks.end()) {
        return mark->second.at;
    }
    const std::optional<Vec3> place = thing_place(moment, name);
    return place ? std::optional{floor_of(*place)} : std::nullopt;
}

} // namespace

bool is_on_floor(const plan::Boom& boom, const plan::Id<plan::Beat>& beat) {
    return boom.beats.empty()
           || std::find(boom.beats.begin(), boom.beats.end(), beat) != boom.beats.end();
}

std::optional<Vec3> lens_point(const Moment& moment, const plan::Camera& camera) {
    const auto place = plan::camera_place(moment.plan, camera, moment.beat, moment.shot);
    if (!place) {
        return std::nullopt;
    }
    const Length floor = plan::floor_height_at(moment.plan, moment.catalogue, place->at);
    return raised(place->at, (floor + place->lens_height).m());
}

std::optional<Vec2> floor_place(const Moment& moment, const std::string& name) {
    return floor_place(moment, plan::marks_at(moment.plan, moment.beat), name);
}

std::optional<Vec3> look_place(const Moment& moment, const std::string& name) {
    const plan::Person* person = plan::find(moment.plan, plan::Id<plan::Person>{name});
    if (person == nullptr) {
        return thing_place(moment, name);
    }
    const std::optional<plan::Mark> mark = mark_of(moment, name);
    return mark ? std::optional{body_on_mark(moment, *person, *mark).figure.face} : std::nullopt;
}

std::optional<Vec3> aim_point(const Moment& moment, const plan::Aim& aim) {
    if (const auto* thing = std::get_if<plan::ThingName>(&aim)) {
        return look_place(moment, thing->name);
    }
    if (const auto* place = std::get_if<Vec3>(&aim)) {
        return *place;
    }
    return std::nullopt;
}

std::optional<Vec3> lamp_target(const Moment& moment, const plan::Lamp& lamp) {
    if (!lamp.aim_beat.empty()) {
        return aim_point({moment.plan, moment.catalogue, lamp.aim_beat, moment.shot}, lamp.aim);
    }
    for (const plan::Beat& beat : moment.plan.beats) {
        const Moment then{moment.plan, moment.catalogue, beat.id, {}};
        if (const std::optional<Vec3> target = aim_point(then, lamp.aim)) {
            return target;
        }
    }
    return aim_point(moment, lamp.aim);
}

Angle facing_of(const Moment& moment, const plan::Mark& mark) {
    return std::holds_alternative<plan::ThingName>(mark.faces)
               ? facing_of(moment, plan::marks_at(moment.plan, moment.beat), mark)
               : facing_of(moment, Marks{}, mark);
}

Angle facing_of(const Moment& moment, const Marks& marks, const plan::Mark& mark) {
    if (const auto* angle = std::get_if<Angle>(&mark.faces)) {
        return *angle;
    }
    std::optional<Vec2> target;
    if (const auto* thing = std::get_if<plan::ThingName>(&mark.faces)) {
        target = floor_place(moment, marks, thing->name);
    } else {
        target = std::get<Vec2>(mark.faces);
    }
    return target ? Angle::radians(angle_of(*target - mark.at)) : Angle{};
}

Body body_on_mark(const Moment& moment, const plan::Person& person, const plan::Mark& mark) {
    return raise_figure(person, mark, facing_of(moment, mark), soles_z_m(moment, mark),
                        seat_z_m(moment, person, mark), moment.catalogue);
}

} // namespace throwline::stage
