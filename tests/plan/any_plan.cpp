#include "plan/any_plan.h"

#include "plan/arrangement.h"

#include <fmt/format.h>
#include <rapidcheck.h>

namespace throwline::plan::testing {
namespace {

int whole(int least, int most) {
    return *rc::gen::inRange(least, most + 1);
}

bool coin() {
    return whole(0, 1) == 1;
}

/// Any double of the range, down to the last bit, and round ones as often.
double number(double least, double most) {
    const double share = whole(0, 1'000'000'000) / 1e9;
    const double any = least + (most - least) * share;
    const double round = std::round(any * 8) / 8;
    return coin() && round >= least && round <= most ? round : any;
}

Length length(double least_m, double most_m) {
    return Length::metres(number(least_m, most_m));
}

Vec2 point() {
    return {number(-20, 20), number(-20, 20)};
}

/// Half of them whole degrees, half with no number of degrees in particular.
Angle angle() {
    return coin() ? Angle::degrees(whole(-360, 360)) : Angle::radians(number(-7, 7));
}

template <class Make>
auto list(int most, const Make& make) {
    std::vector<decltype(make(0))> items;
    const int count = whole(0, most);
    for (int i = 0; i < count; ++i) {
        items.push_back(make(i));
    }
    return items;
}

std::vector<Vec2> points(int most) {
    return list(most, [](int) { return point(); });
}

Extra extra() {
    static const std::vector<std::string> kTexts{"", "{}", "null", "[1, 2.50, 1e3]",
                                                 R"({"a": {"b": [true, "\n\"\\ \u0001 ü"]}})"};
    return {*rc::gen::elementOf(kTexts)};
}

std::string text() {
    static const std::vector<std::string> kTexts{"", "plain", "two\nlines", "quote \" and \\ bar",
                                                 "Größe 5 µm → ok"};
    return *rc::gen::elementOf(kTexts);
}

std::vector<std::string> texts() {
    return list(2, [](int) { return text(); });
}

template <class Part, class Make>
std::optional<Part> perhaps(const Make& make) {
    return coin() ? std::optional<Part>{make()} : std::nullopt;
}

Site site() {
    Site site;
    site.place = text();
    site.north = angle();
    if (coin()) {
        site.latitude = Angle::degrees(number(-89, 89));
        site.longitude = Angle::degrees(number(-179, 179));
    }
    site.date = coin() ? "2024-02-29" : "";
    site.hours =
        perhaps<ShootingWindow>([] { return ShootingWindow{{whole(0, 700)}, {whole(701, 1440)}}; });
    site.utc_offset_minutes = perhaps<int>([] { return whole(-720, 840); });
    site.notes = texts();
    site.extra = extra();
    return site;
}

Opening opening(int wall) {
    Opening opening;
    opening.id.name = fmt::format("opening {}", wall);
    opening.kind = *rc::gen::element(OpeningKind::door, OpeningKind::window);
    opening.wall = wall;
    opening.from_start = length(0, 1);
    opening.width = length(0.1, 1);
    opening.sill = length(0, 1);
    opening.head = length(1.5, 2);
    opening.swing = perhaps<Swing>([] {
        return Swing{coin(), coin(), coin() ? Angle::degrees(90) : Angle::degrees(whole(1, 180))};
    });
    opening.way_out = coin();
    opening.transmission = number(0, 1);
    opening.extra = extra();
    return opening;
}

Room room() {
    Room room;
    const double turn_rad = number(0, 6);
    room.outline = rectangle(point(), 8, 5, turn_rad);
    room.height = length(2.5, 9);
    room.finish = coin() ? "white paint" : "";
    room.floor_finish = coin() ? "concrete" : "";
    room.floor_dressed = coin();
    room.ceiling_dressed = coin();
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const Length height = coin() ? room.height : length(2.5, 4);
        room.walls.push_back({height, length(0.05, 0.4), coin() ? "red brick" : "", coin()});
    }
    room.openings = list(4, opening);
    room.extra = extra();
    return room;
}

Stretch stretch() {
    switch (whole(0, 2)) {
    case 0:
        return {"", StretchKind::wall, length(0.1, 2), {}, {}, {}};
    case 1:
        return {coin() ? "view" : "", StretchKind::window, length(0.1, 2), {},
                length(0, 1),         length(0, 1)};
    default:
        return {"sink",       StretchKind::thing, length(0.1, 2),
                length(0, 1), length(0, 1),       length(0, 1)};
    }
}

Chain chain() {
    Chain chain{"B", "A", {stretch()}, coin()};
    for (int more = whole(0, 2); more > 0; --more) {
        chain.stretches.push_back(stretch());
    }
    return chain;
}

Survey survey() {
    Survey survey;
    survey.corners = {"A", "B", "C"};
    survey.square_corners = list(1, [](int) { return std::string{"B"}; });
    survey.clockwise = coin();
    survey.squareness = coin() ? survey.squareness : Angle::degrees(number(0.1, 2));
    survey.points = list(2, [](int i) { return FloorPoint{fmt::format("p{}", i), coin()}; });
    survey.readings = list(3, [](int) { return TapeReading{"A", "C", length(0.1, 30), text()}; });
    survey.chains = list(2, [](int) { return chain(); });
    survey.things = list(2, [](int i) {
        return FloorThing{fmt::format("post {}", i), {"A"}, length(0.1, 1), length(0, 2)};
    });
    survey.heights = list(2, [](int) { return HeightReading{coin() ? "B" : "", length(2, 3)}; });
    survey.outlets =
        list(2, [](int) { return OutletReading{"K2", "C", "A", length(0, 3), length(0, 1)}; });
    survey.first_wall_bearing = perhaps<Angle>(angle);
    survey.precision = length(0.001, 0.01);
    survey.precision_per_metre_mm = number(0, 3);
    survey.notes = list(3, [](int) {
        return SiteNote{*rc::gen::element(SiteNoteKind::noise, SiteNoteKind::other), text()};
    });
    survey.extra = extra();
    return survey;
}

Grid grid() {
    Grid grid;
    grid.origin = point();
    grid.pitch_x = length(0.5, 2) * (coin() ? 1.0 : -1.0);
    grid.pitch_y = length(0.5, 2);
    grid.columns = whole(2, 30);
    grid.rows = whole(2, 30);
    grid.height = length(3, 8);
    grid.turn = angle();
    grid.run = *rc::gen::element(PipeRun::along_letters, PipeRun::along_numbers, PipeRun::both);
    grid.point_load_kg = number(0, 100);
    grid.pipe_load_kg = number(0, 100);
    grid.extra = extra();
    return grid;
}

SceneryShape shape() {
    switch (whole(0, 6)) {
    case 0:
        return FlatRun{
            point(), angle(), {length(0.1, 2), length(0.1, 2)}, length(1, 4), length(0.01, 0.2)};
    case 1:
        return StockPiece{*rc::gen::element<std::string>("stool", "work table 6x2.5"), point(),
                          angle()};
    case 2:
        return BoxPiece{point(), length(0.1, 2), length(0.1, 2), length(0.1, 2), angle()};
    case 3:
        return CylinderPiece{point(), length(0.1, 2), length(0.1, 2)};
    case 4:
        return PrismPiece{rectangle(point(), 1, 2, number(0, 6)), length(0.1, 2)};
    case 5:
        return Riser{point(), length(0.1, 2), length(0.1, 2), length(0.1, 2), angle()};
    default:
        return Drape{{Vec2{number(-9, -5), 0}, Vec2{number(0, 5), 1}}, length(1, 4)};
    }
}

Scenery scenery(int index) {
    Scenery scenery;
    scenery.id.name = fmt::format("piece {}", index);
    scenery.shape = shape();
    scenery.elevation = coin() ? Length{} : length(0, 2);
    scenery.finish = coin() ? "plywood" : "";
    scenery.dressed = coin();
    scenery.extra = extra();
    return scenery;
}

Person person(int index) {
    return {{fmt::format("person {}", index)},
            length(0.5, 2.2),
            coin() ? PersonKind::cast : PersonKind::crew,
            extra()};
}

Mark mark() {
    Mark mark;
    mark.at = point();
    mark.faces = *rc::gen::elementOf(std::vector<Facing>{angle(), ThingName{"camera 1"}, point()});
    mark.pose = *rc::gen::element(Pose::stand, Pose::sit, Pose::lie, Pose::crouch);
    mark.elevation = perhaps<Length>([] { return length(-1, 2); });
    mark.seat_height = perhaps<Length>([] { return length(0, 1); });
    mark.path = points(3);
    return mark;
}

Beat beat(int index, const std::vector<Person>& people) {
    Beat beat;
    beat.id.name = fmt::format("{}", index + 1);
    beat.name = text();
    for (const Person& person : people) {
        if (coin()) {
            beat.marks[person.id] = OffFloor{};
        } else if (coin()) {
            beat.marks[person.id] = mark();
        }
    }
    beat.extra = extra();
    return beat;
}

Camera camera() {
    Camera camera;
    camera.id.name = "camera 1";
    camera.sensor = "2/3-type 16:9";
    camera.lens = "field zoom 18x";
    camera.support = coin() ? "pedestal" : "";
    camera.eye_height = length(0.2, 3);
    camera.iso = whole(50, 6400);
    camera.exposure_s = coin() ? 1.0 / whole(1, 2000) : number(0.001, 1);
    camera.home = perhaps<Vec2>(point);
    camera.extra = extra();
    return camera;
}

Aim aim() {
    return *rc::gen::elementOf(std::vector<Aim>{std::monostate{}, ThingName{"boom"},
                                                Vec3{number(-5, 5), number(-5, 5), number(0, 3)}});
}

Shot shot(int index, const Plan& plan) {
    Shot shot;
    shot.id.name = fmt::format("shot {}", index);
    shot.beats = {plan.beats.front().id};
    shot.camera = plan.cameras.front().id;
    shot.at = point();
    shot.height = perhaps<Length>([] { return length(0.1, 4); });
    shot.aim = aim();
    shot.focal = perhaps<Length>([] { return Length::millimetres(number(8, 130)); });
    shot.stop = perhaps<double>([] { return number(3, 22); });
    shot.focus = perhaps<Length>([] { return length(0.5, 20); });
    if (coin() && !plan.people.empty()) {
        shot.subjects = {plan.people.front().id};
    }
    shot.size = perhaps<ShotSize>(
        [] { return *rc::gen::element(ShotSize::close_up, ShotSize::medium_long_knee); });
    shot.composition = text();
    shot.notes = texts();
    shot.moves = points(2);
    shot.extra = extra();
    return shot;
}

LampMount mount(const Plan& plan) {
    switch (whole(0, 4)) {
    case 0:
        return plan.grid ? LampMount{GridHang{"B2", length(0, 2)}}
                         : LampMount{StandMount{point(), length(1, 3), "medium light stand"}};
    case 1:
        return PipeHang{plan.pipes.front().id, length(0, 1), length(0, 2)};
    case 2:
        return StandMount{point(), length(1, 3), ""};
    case 3:
        return plan.room.outline.empty() ? LampMount{PracticalMount{point(), length(0, 3)}}
                                         : WallMount{whole(0, 3), length(0, 4), length(1, 3)};
    default:
        return PracticalMount{point(), length(0, 3)};
    }
}

Lamp lamp(int index, const Plan& plan) {
    Lamp lamp;
    lamp.id.name = fmt::format("{}", index + 10);
    lamp.instrument = "Fresnel 1 kW";
    lamp.mount = mount(plan);
    lamp.aim = aim();
    lamp.aim_beat.name = coin() ? "1" : "";
    if (coin()) {
        lamp.beats = {{"1"}};
    }
    lamp.role = *rc::gen::element(LampRole::key, LampRole::fill, LampRole::effect);
    lamp.focus = number(0, 1);
    lamp.level = number(0, 1);
    lamp.filters = list(2, [](int) { return std::string{"quarter blue"}; });
    if (coin()) {
        lamp.cut = {number(0, 1), number(0, 1), number(0, 1), 0.0};
    }
    lamp.circuit.name = coin() ? "C1" : "";
    lamp.channel = whole(0, 512);
    lamp.notes = texts();
    lamp.extra = extra();
    return lamp;
}

void add_rig(Plan& plan) {
    plan.survey = perhaps<Survey>(survey);
    plan.grid = perhaps<Grid>(grid);
    plan.pipes = {{{"p"},
                   {-3, number(0, 4)},
                   {number(0, 4), 1},
                   length(3, 5),
                   number(0, 9),
                   number(0, 9),
                   extra()}};
    plan.circuits = {{{"C1"}, coin() ? 230.0 : 120.0, number(1, 63), coin(), points(3), extra()}};
    plan.scenery = list(5, scenery);
}

void add_people_and_shots(Plan& plan) {
    plan.people = list(3, person);
    plan.beats = {beat(0, plan.people), beat(1, plan.people)};
    plan.cameras = {camera()};
    plan.booms = {
        {{"boom"}, point(), length(1, 5), point(), length(1, 3), {plan.beats.back().id}, extra()}};
    plan.shots = list(3, [&](int index) { return shot(index, plan); });
    if (plan.shots.size() > 1) {
        plan.shots[0].cuts_to = {plan.shots[1].id};
    }
    plan.lamps = list(4, [&](int index) { return lamp(index, plan); });
}

/// Everything there can be locked or hidden, and is in one group at most.
Arrangement arrangement(const Plan& plan) {
    Arrangement held;
    for (const std::string& name : names_on_floor(plan)) {
        if (whole(0, 3) == 0) {
            held.locked.push_back(name);
        }
        if (whole(0, 3) == 0) {
            held.hidden.push_back(name);
        }
        if (whole(0, 2) == 0) {
            if (held.groups.empty() || (held.groups.back().things.size() > 1 && coin())) {
                held.groups.emplace_back();
            }
            held.groups.back().things.push_back(name);
        }
    }
    if (!held.groups.empty() && held.groups.back().things.size() < 2) {
        held.groups.pop_back();
    }
    return held;
}

} // namespace

Plan any_plan() {
    Plan plan;
    plan.title = text();
    plan.units = coin() ? UnitSystem::metric : UnitSystem::imperial;
    plan.site = site();
    // Now and then nobody has drawn the room yet.
    if (whole(0, 7) > 0) {
        plan.room = room();
    }
    add_rig(plan);
    add_people_and_shots(plan);
    plan.underlay = perhaps<Underlay>([] {
        return Underlay{"plan.png",   {1, 2}, {number(3, 900), 7}, {0, 0}, {number(1, 9), 3},
                        number(0, 1), coin()};
    });
    plan.kit = list(1, [](int) { return KitItem{"Fresnel 1 kW", whole(0, 9)}; });
    plan.targets = {number(240, 400), number(0, 3), number(1, 8), number(0, 1), length(0.5, 2)};
    plan.accepted = list(2, [](int) { return Acceptance{"off-the-set", {}, texts(), text()}; });
    plan.arrangement = arrangement(plan);
    plan.extra = extra();
    return plan;
}

} // namespace throwline::plan::testing
