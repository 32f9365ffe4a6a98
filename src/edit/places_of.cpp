#include "edit/places_of.h"

#include "plan/places.h"

namespace throwline::edit {

namespace {

using Places = std::vector<Vec2>;

Places places(const plan::FlatRun& run) {
    return {run.from};
}
Places places(const plan::PrismPiece& prism) {
    return prism.outline;
}
Places places(const plan::Drape& drape) {
    return drape.along;
}
/// Boxes, cylinders, risers and stock.
template <class Piece>
Places places(const Piece& piece) {
    return {piece.at};
}

void add(Places& to, const Places& more) {
    to.insert(to.end(), more.begin(), more.end());
}

void add(Places& to, const plan::Aim& aim) {
    if (const auto* place = std::get_if<Vec3>(&aim)) {
        to.push_back(floor_of(*place));
    }
}

Places places(const plan::Mark& mark) {
    Places all{mark.at};
    add(all, mark.path);
    if (const auto* faced = std::get_if<Vec2>(&mark.faces)) {
        all.push_back(*faced);
    }
    return all;
}

Places places(const plan::Lamp& lamp) {
    Places all;
    if (const auto* stand = std::get_if<plan::StandMount>(&lamp.mount)) {
        all.push_back(stand->at);
    } else if (const auto* practical = std::get_if<plan::PracticalMount>(&lamp.mount)) {
        all.push_back(practical->at);
    }
    add(all, lamp.aim);
    return all;
}

Places places_of_camera(const plan::Plan& plan, const Now& now, const std::string& name) {
    const plan::Camera* camera = plan::find(plan, plan::Id<plan::Camera>{name});
    const auto place = plan::camera_place(plan, *camera, now.beat, now.shot);
    if (!place) {
        return {};
    }
    Places all{place->at};
    if (const plan::Shot* shot = plan::find(plan, place->shot)) {
        all.push_back(shot->at);
        add(all, shot->moves);
        add(all, shot->aim);
    }
    return all;
}

Places places_of_person(const plan::Plan& plan, const Now& now, const std::string& name) {
    const auto marks = plan::marks_at(plan, now.beat);
    const auto mark = marks.find(plan::Id<plan::Person>{name});
    return mark == marks.end() ? Places{} : places(mark->second);
}

} // namespace

std::vector<Vec2> places_of(const plan::Plan& plan, const Now& now, const Thing& thing) {
    if (!exists(plan, thing)) {
        return {};
    }
    switch (thing.kind) {
    case Kind::wall:
    case Kind::opening:
        return {};
    case Kind::pipe: {
        const plan::Pipe* pipe = plan::find(plan, plan::Id<plan::Pipe>{thing.name});
        return {pipe->from, pipe->to};
    }
    case Kind::scenery:
        return std::visit([](const auto& shape) { return places(shape); },
                          plan::find(plan, plan::Id<plan::Scenery>{thing.name})->shape);
    case Kind::person:
        return places_of_person(plan, now, thing.name);
    case Kind::camera:
        return places_of_camera(plan, now, thing.name);
    case Kind::lamp:
        return places(*plan::find(plan, plan::Id<plan::Lamp>{thing.name}));
    case Kind::boom: {
        const plan::Boom* boom = plan::find(plan, plan::Id<plan::Boom>{thing.name});
        return {boom->operator_at, boom->microphone};
    }
    case Kind::outlet:
        return {plan::find(plan, plan::Id<plan::Circuit>{thing.name})
                    ->outlets[static_cast<std::size_t>(thing.index)]};
    }
    return {};
}

} // namespace throwline::edit
