#include "sheet/sheet_support.h"

#include "sheet/floor_plan.h"

#include "base/utf8.h"

#include <fmt/format.h>
#include <stdexcept>

namespace throwline::test {

namespace {

using namespace plan;

Id<Person> person(const std::string& name) {
    return {name};
}

Mark mark(double x_m, double y_m, double facing_deg, Pose pose = Pose::stand) {
    Mark made;
    made.at = {x_m, y_m};
    made.faces = Angle::degrees(facing_deg);
    made.pose = pose;
    return made;
}

Room box_room(double width_m, double depth_m, double height_m) {
    Room room;
    room.outline = {{0.0, 0.0}, {width_m, 0.0}, {width_m, depth_m}, {0.0, depth_m}};
    room.walls.assign(4, Wall{Length::metres(height_m), Length::millimetres(150), {}, false});
    room.height = Length::metres(height_m);
    return room;
}

Opening door(const std::string& name, int wall, double from_m, bool inward, bool way_out) {
    Opening opening;
    opening.id = {name};
    opening.wall = wall;
    opening.from_start = Length::metres(from_m);
    opening.width = Length::metres(0.9);
    opening.head = Length::metres(2.1);
    opening.swing = Swing{inward, true, Angle::degrees(90)};
    opening.way_out = way_out;
    return opening;
}

Opening window(const std::string& name, int wall, double from_m, double width_m) {
    Opening opening;
    opening.id = {name};
    opening.kind = OpeningKind::window;
    opening.wall = wall;
    opening.from_start = Length::metres(from_m);
    opening.width = Length::metres(width_m);
    opening.sill = Length::metres(0.9);
    opening.head = Length::metres(2.1);
    opening.transmission = 0.8;
    return opening;
}

Scenery piece(const std::string& name, SceneryShape shape) {
    Scenery scenery;
    scenery.id = {name};
    scenery.shape = std::move(shape);
    return scenery;
}

Camera camera(const std::string& name, const std::string& support) {
    Camera made;
    made.id = {name};
    made.sensor = "2/3-type 16:9";
    made.lens = "field zoom 18x";
    made.support = support;
    return made;
}

struct ShotWords {
    std::string name;
    std::string beat;
    std::string camera;
    double x_m;
    double y_m;
    std::vector<std::string> subjects;
    double focal_mm;
};

Shot shot(const ShotWords& words) {
    Shot made;
    made.id = {words.name};
    made.beats = {{words.beat}};
    made.camera = {words.camera};
    made.at = {words.x_m, words.y_m};
    for (const std::string& subject : words.subjects) {
        made.subjects.push_back(person(subject));
    }
    made.focal = Length::millimetres(words.focal_mm);
    return made;
}

Lamp hung(int number, const std::string& instrument, const std::string& position,
          const std::string& aim, LampRole role) {
    Lamp lamp;
    lamp.id = {fmt::format("L{}", number)};
    lamp.instrument = instrument;
    lamp.mount = GridHang{position, Length::metres(0.3)};
    lamp.aim = ThingName{aim};
    lamp.role = role;
    lamp.focus = 0.5;
    lamp.channel = number;
    lamp.circuit = {fmt::format("C{}", 1 + number % 3)};
    return lamp;
}

Lamp on_stand(int number, const std::string& instrument, double x_m, double y_m,
              const std::string& aim) {
    Lamp lamp = hung(number, instrument, "A1", aim, LampRole::fill);
    lamp.mount = StandMount{{x_m, y_m}, Length::metres(2.2), "medium light stand"};
    return lamp;
}

void add_set(Plan& plan) {
    FlatRun back;
    back.from = {3.2, 7.2};
    back.heading = Angle::degrees(0);
    back.widths.assign(4, Length::metres(1.2));
    back.height = Length::metres(3.0);
    // The dressed face looks down the page.
    back.from = {8.0, 7.2};
    back.heading = Angle::degrees(180);
    plan.scenery.push_back(piece("back wall", back));
    FlatRun side = back;
    side.from = {3.2, 7.2};
    side.heading = Angle::degrees(270);
    side.widths.assign(2, Length::metres(1.2));
    plan.scenery.push_back(piece("side wall", side));
    plan.scenery.push_back(piece(
        "platform",
        Riser{{6.9, 6.4}, Length::metres(2.0), Length::metres(1.2), Length::metres(0.2), Angle{}}));
    const auto stock = [&](const std::string& name, const std::string& item, double x_m, double y_m,
                           double turn_deg) {
        plan.scenery.push_back(piece(name, StockPiece{item, {x_m, y_m}, Angle::degrees(turn_deg)}));
    };
    stock("island", "kitchen island", 5.4, 4.6, 0.0);
    stock("counter", "sink counter 1.0", 4.2, 6.8, 0.0);
    stock("fridge", "fridge", 3.65, 6.1, 90.0);
    stock("cooker", "cooker", 5.2, 6.8, 0.0);
    stock("table", "round table 0.9", 7.4, 4.2, 0.0);
    stock("chair 1", "dining chair", 8.1, 4.3, 270.0);
    stock("chair 2", "dining chair", 7.2, 3.5, 180.0);
    plan.scenery.push_back(
        piece("black drape", Drape{{{9.6, 1.0}, {9.6, 6.5}}, Length::metres(4.0)}));
}

void add_people(Plan& plan) {
    for (const auto& [name, tall_m] : std::vector<std::pair<std::string, double>>{
             {"Ines", 1.66}, {"Tomas", 1.82}, {"Bea", 1.58}, {"Kofi", 1.76}}) {
        plan.people.push_back({person(name), Length::metres(tall_m), PersonKind::cast, {}});
    }
    Beat first{{"1"}, "At the island", {}, {}};
    first.marks[person("Ines")] = mark(5.3, 5.2, 270);
    first.marks[person("Tomas")] = mark(8.05, 4.3, 180, Pose::sit);
    Beat second{{"2"}, "Bea comes in", {}, {}};
    Mark bea = mark(6.6, 4.9, 200);
    bea.path = {{9.2, 7.6}, {8.4, 6.0}};
    second.marks[person("Bea")] = bea;
    Beat third{{"3"}, "All at the table", {}, {}};
    Mark ines = mark(6.6, 4.1, 10);
    ines.path = {{4.4, 4.9}, {5.0, 3.9}};
    third.marks[person("Ines")] = ines;
    third.marks[person("Kofi")] = mark(7.2, 3.55, 90, Pose::sit);
    plan.beats = {first, second, third};
}

void add_cameras(Plan& plan) {
    plan.cameras = {camera("camera 1", "pedestal"), camera("camera 2", "pedestal"),
                    camera("camera 3", "tripod")};
    for (const ShotWords& words :
         std::vector<ShotWords>{{"1A", "1", "camera 1", 5.2, 1.2, {"Ines"}, 24.0},
                                {"1B", "1", "camera 2", 8.6, 1.6, {"Ines"}, 30.0},
                                {"1C", "1", "camera 3", 3.0, 3.0, {"Tomas"}, 40.0},
                                {"2A", "2", "camera 1", 5.2, 1.2, {"Ines", "Bea"}, 14.0},
                                {"2B", "2", "camera 2", 8.6, 1.6, {"Bea"}, 36.0},
                                {"3A", "3", "camera 1", 5.2, 1.2, {"Ines", "Tomas", "Kofi"}, 12.0},
                                {"3B", "3", "camera 2", 8.9, 2.4, {"Ines"}, 30.0},
                                {"3C", "3", "camera 3", 4.0, 2.6, {"Kofi"}, 34.0}}) {
        plan.shots.push_back(shot(words));
    }
    Boom boom;
    boom.id = {"boom"};
    boom.operator_at = {3.4, 4.0};
    boom.microphone = {5.0, 5.0};
    plan.booms.push_back(boom);
}

void add_lamps(Plan& plan) {
    const std::vector<std::string> high{"B2", "C2", "D2", "E2", "F2", "B3", "F3",
                                        "B5", "C5", "D5", "E5", "F5", "C3", "E3"};
    const std::vector<std::string> kinds{"Fresnel 1 kW", "Fresnel 650 W", "profile 26 deg 750 W",
                                         "LED panel 60x30 soft", "PAR 64 1 kW medium"};
    const std::vector<std::string> aims{"Ines", "Tomas", "island", "table", "Ines"};
    int number = 1;
    for (const std::string& position : high) {
        const auto pick = static_cast<std::size_t>(number) % kinds.size();
        plan.lamps.push_back(hung(number, kinds[pick], position, aims[pick],
                                  number > 7 ? LampRole::back : LampRole::key));
        ++number;
    }
    plan.lamps.push_back(on_stand(number++, "soft box 60x90 LED 150 W", 2.2, 4.4, "Ines"));
    plan.lamps.push_back(on_stand(number++, "LED panel 60x60 soft", 9.0, 3.4, "Tomas"));
    plan.lamps.push_back(on_stand(number++, "Fresnel 300 W", 2.4, 1.6, "back wall"));
    Lamp practical = hung(number, "pendant", "A1", "table", LampRole::practical);
    practical.mount = PracticalMount{{7.4, 4.25}, Length::metres(1.7)};
    practical.aim = std::monostate{};
    plan.lamps.push_back(practical);
}

} // namespace

const catalogue::Catalogue& sheet_catalogue() {
    static const catalogue::Catalogue tables = [] {
        auto loaded = catalogue::load_catalogue(THROWLINE_SOURCE_DIR "/lensdata");
        if (!loaded) {
            throw std::runtime_error{text_of(loaded.error().front())};
        }
        return *loaded;
    }();
    return tables;
}

double EvenMeasure::width_mm(const std::string& text, double height_mm, bool bold) const {
    const double share = bold ? 0.9 : 0.8;
    return share * height_mm * static_cast<double>(characters_of(text).size());
}

Plan small_plan() {
    Plan plan;
    plan.title = "Letter scene";
    plan.site.place = "Room 4";
    plan.site.date = "2026-05-04";
    plan.room = box_room(5.0, 4.0, 3.0);
    plan.room.openings = {door("door", 0, 0.5, true, true)};
    plan.scenery.push_back(
        piece("desk", StockPiece{"desk 1.4x0.7", {2.5, 2.8}, Angle::degrees(0)}));
    plan.people.push_back({person("Ana"), Length::metres(1.7), PersonKind::cast, {}});
    Beat beat{{"1"}, "Reads", {}, {}};
    beat.marks[person("Ana")] = mark(2.5, 2.2, 270);
    plan.beats = {beat};
    plan.cameras = {camera("camera 1", "tripod")};
    plan.shots = {shot({"1A", "1", "camera 1", 2.6, 0.6, {"Ana"}, 12.0})};
    plan.circuits = {Circuit{{"C1"}, 230.0, 16.0, true, {{4.8, 3.0}}, {}}};
    Lamp key = on_stand(1, "LED panel 60x30 soft", 4.0, 1.2, "Ana");
    key.circuit = {"C1"};
    Lamp back = on_stand(2, "LED Fresnel 60 W", 0.8, 3.4, "Ana");
    back.circuit = {"C1"};
    plan.lamps = {key, back};
    return plan;
}

Plan full_plan(UnitSystem units) {
    Plan plan;
    plan.title = "Kitchen talk, episode 3";
    plan.units = units;
    plan.site.place = "Studio B";
    plan.site.date = "2026-03-14";
    plan.site.north = Angle::degrees(24);
    plan.room = box_room(10.4, 8.4, 5.0);
    plan.room.openings = {door("dock door", 1, 2.0, false, true),
                          door("lobby", 3, 1.0, true, false),
                          window("gallery window", 0, 6.0, 2.4)};
    Grid grid;
    grid.origin = {1.2, 1.2};
    grid.pitch_x = Length::metres(1.5);
    grid.pitch_y = Length::metres(1.5);
    grid.columns = 6;
    grid.rows = 5;
    grid.height = Length::metres(4.0);
    plan.grid = grid;
    plan.circuits = {Circuit{{"C1"}, 230.0, 16.0, true, {{0.15, 2.0}, {0.15, 6.0}}, {}},
                     Circuit{{"C2"}, 230.0, 16.0, true, {{10.2, 1.0}}, {}},
                     Circuit{{"C3"}, 230.0, 16.0, true, {{4.0, 8.2}}, {}}};
    add_set(plan);
    add_people(plan);
    add_cameras(plan);
    add_lamps(plan);
    plan.accepted = {{"in-the-frame", {}, {"boom"}, "painted out"}};
    return plan;
}

checks::Analysis analysed(const Plan& plan) {
    auto analysis = checks::analyse(std::make_shared<const Plan>(plan), sheet_catalogue());
    if (!analysis) {
        throw std::runtime_error{"the analysis was stopped"};
    }
    return *std::move(analysis);
}

Result<sheet::Drawing> floor_plan_of(const checks::Analysis& analysis,
                                     const sheet::SheetOptions& options,
                                     const sheet::TextMeasure& measure) {
    return sheet::floor_plan_sheet({analysis, sheet_catalogue(), measure}, options);
}

const paint::PaintSession& session() {
    static const paint::PaintSession made;
    return made;
}

} // namespace throwline::test
