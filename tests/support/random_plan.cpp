#include "support/random_plan.h"

#include "plan/places.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <random>

namespace throwline::support {

namespace {

using plan::Plan;

/// Draws whose results do not hang on the standard library.
class Draw {
  public:
    explicit Draw(std::uint32_t seed) : engine_{seed} {}

    double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
    }
    int whole(int low, int high) {
        return std::min(high, low + static_cast<int>(between(0.0, high - low + 1.0)));
    }
    bool chance(double share) { return between(0.0, 1.0) < share; }
    template <class Choices>
    const auto& one_of(const Choices& choices) {
        return choices[static_cast<std::size_t>(whole(0, static_cast<int>(choices.size()) - 1))];
    }

  private:
    std::mt19937 engine_;
};

constexpr std::array kStock{"desk 1.4x0.7",      "dining chair", "round table 1.2",
                            "round table 0.9",   "sofa 2-seat",  "armchair",
                            "bookcase 0.8x2.0",  "wardrobe",     "double bed",
                            "kitchen island",    "fridge",       "cooker",
                            "flight case",       "stool",        "bench 1.2",
                            "coffee table",      "sideboard",    "work table 6x2.5",
                            "floor plant small", "pouffe"};
constexpr std::array kNames{"counter",     "shelf",        "chair by the window", "table",
                            "grand piano", "props basket", "left return",         "bar",
                            "bench",       "dresser",      "monitor trolley",     "plinth"};
constexpr std::array kPeople{"Ada", "Bruno", "Chidi", "Dagny", "Elif", "Fyodor"};
constexpr std::array kLamps{"Fresnel 1 kW",         "Fresnel 650 W",
                            "profile 26 deg 750 W", "LED panel 60x30 soft",
                            "PAR 64 1 kW medium",   "soft box 60x90 LED 150 W",
                            "LED panel 60x60 soft"};

/// Makes a plan step by step, each part from the same run of draws.
class Maker {
  public:
    explicit Maker(std::uint32_t seed) : draw_{seed} {
        plan_.title = fmt::format("Invented production {}", seed);
        plan_.units = draw_.chance(0.5) ? UnitSystem::metric : UnitSystem::imperial;
        plan_.site.place = "Stage 4";
        plan_.site.date = "2026-10-02";
        plan_.site.north = Angle::degrees(draw_.between(0.0, 360.0));
    }

    Plan make() {
        add_room();
        add_grid();
        add_circuits();
        add_scenery();
        add_people();
        add_cameras();
        add_lamps();
        return plan_;
    }

  private:
    void add_room() {
        wide_m_ = draw_.between(4.0, 18.0);
        deep_m_ = draw_.between(4.0, 14.0);
        const double cut_x = wide_m_ * draw_.between(0.3, 0.7);
        const double cut_y = deep_m_ * draw_.between(0.3, 0.7);
        switch (draw_.whole(0, 2)) {
        case 0:
            plan_.room.outline = {{0, 0}, {wide_m_, 0}, {wide_m_, deep_m_}, {0, deep_m_}};
            break;
        case 1: // Without its upper right part.
            plan_.room.outline = {{0, 0},         {wide_m_, 0},     {wide_m_, cut_y},
                                  {cut_x, cut_y}, {cut_x, deep_m_}, {0, deep_m_}};
            break;
        default: // With a slanting wall.
            plan_.room.outline = {
                {0, 0}, {wide_m_, 0}, {wide_m_, cut_y}, {cut_x, deep_m_}, {0, deep_m_}};
            break;
        }
        plan_.room.height = Length::metres(draw_.between(2.6, 8.0));
        plan::Wall wall;
        wall.height = plan_.room.height;
        wall.thickness = Length::metres(draw_.between(0.08, 0.3));
        plan_.room.walls.assign(plan_.room.outline.size(), wall);
        for (int i = 0; i < draw_.whole(1, 3); ++i) {
            plan::Opening opening;
            opening.id = {fmt::format("door {}", i + 1)};
            opening.wall = i;
            opening.width = Length::metres(0.9);
            opening.head = Length::metres(2.1);
            const Vec2 side = plan_.room.outline[static_cast<std::size_t>(i) + 1]
                              - plan_.room.outline[static_cast<std::size_t>(i)];
            opening.from_start = Length::metres((side.norm() - 0.9) * draw_.between(0.1, 0.9));
            opening.swing = plan::Swing{draw_.chance(0.5), draw_.chance(0.5), Angle::degrees(90)};
            opening.way_out = draw_.chance(0.6);
            if (side.norm() > 1.2) {
                plan_.room.openings.push_back(opening);
            }
        }
        corner_ = draw_.one_of(plan_.room.outline);
    }

    void add_grid() {
        plan::Grid grid;
        grid.origin = {0.6, 0.6};
        grid.pitch_x = grid.pitch_y = Length::metres(draw_.between(0.6, 1.8));
        grid.columns = 1 + static_cast<int>((wide_m_ - 1.2) / grid.pitch_x.m());
        grid.rows = 1 + static_cast<int>((deep_m_ - 1.2) / grid.pitch_y.m());
        grid.height = plan_.room.height - Length::metres(0.3);
        plan_.grid = grid;
    }

    void add_circuits() {
        for (int i = 0; i < draw_.whole(1, 6); ++i) {
            plan::Circuit circuit;
            circuit.id = {fmt::format("C{}", i + 1)};
            for (int k = 0; k < draw_.whole(1, 2); ++k) {
                circuit.outlets.push_back(place());
            }
            plan_.circuits.push_back(circuit);
        }
    }

    /// Anywhere in the room; in a crowded plan mostly near one corner.
    Vec2 place() {
        const bool in_corner = draw_.chance(crowding_);
        for (;;) {
            Vec2 at{draw_.between(0.0, wide_m_), draw_.between(0.0, deep_m_)};
            if (in_corner) {
                const double near_m = 0.3 * std::min(wide_m_, deep_m_);
                const double turn = draw_.between(0.0, 2.0 * std::numbers::pi);
                at = corner_ + unit_at(turn) * draw_.between(0.2, near_m);
            }
            if (contains(plan_.room.outline, at)) {
                return at;
            }
        }
    }

    plan::SceneryShape shape() {
        const Vec2 at = place();
        const Angle turn = Angle::degrees(15.0 * draw_.whole(0, 23));
        switch (draw_.whole(0, 9)) {
        case 0:
            return plan::BoxPiece{at, Length::metres(draw_.between(0.2, 2.0)),
                                  Length::metres(draw_.between(0.2, 1.0)), Length::metres(1.0),
                                  turn};
        case 1:
            return plan::CylinderPiece{at, Length::metres(draw_.between(0.2, 1.0)),
                                       Length::metres(1.2)};
        case 2:
            return plan::Riser{at, Length::metres(2.0), Length::metres(1.0), Length::metres(0.2),
                               turn};
        case 3: {
            plan::FlatRun run;
            run.from = at;
            run.heading = turn;
            run.widths.assign(static_cast<std::size_t>(draw_.whole(1, 3)), Length::metres(1.2));
            run.height = Length::metres(2.4);
            return run;
        }
        case 4:
            return plan::Drape{{at, place()}, Length::metres(2.4)};
        default:
            return plan::StockPiece{draw_.one_of(kStock), at, turn};
        }
    }

    void add_scenery() {
        crowding_ = draw_.chance(0.5) ? 0.6 : 0.0;
        for (int i = 0; i < draw_.whole(5, 60); ++i) {
            plan::Scenery piece;
            piece.id = {fmt::format("{} {}", draw_.one_of(kNames), i + 1)};
            piece.shape = shape();
            if (draw_.chance(0.1)) {
                piece.elevation = Length::metres(draw_.between(0.5, 2.0));
            }
            plan_.scenery.push_back(piece);
        }
    }

    void add_people() {
        const int count = draw_.whole(1, 6);
        for (int i = 0; i < count; ++i) {
            plan::Person person;
            person.id = {kPeople[static_cast<std::size_t>(i)]};
            plan_.people.push_back(person);
        }
        for (int b = 0; b < draw_.whole(1, 3); ++b) {
            plan::Beat beat;
            beat.id = {fmt::format("{}", b + 1)};
            for (const plan::Person& person : plan_.people) {
                if (b == 0 || draw_.chance(0.5)) {
                    plan::Mark mark;
                    mark.at = place();
                    mark.faces = Angle::degrees(draw_.between(0.0, 360.0));
                    mark.pose = draw_.chance(0.3) ? plan::Pose::sit : plan::Pose::stand;
                    beat.marks[person.id] = mark;
                }
            }
            plan_.beats.push_back(beat);
        }
    }

    void add_cameras() {
        const int cameras = draw_.whole(1, 4);
        for (int i = 0; i < cameras; ++i) {
            plan::Camera camera;
            camera.id = {fmt::format("camera {}", i + 1)};
            camera.sensor = "2/3-type 16:9";
            camera.lens = "field zoom 18x";
            camera.support = draw_.chance(0.5) ? "tripod" : "pedestal";
            plan_.cameras.push_back(camera);
        }
        for (int i = 0; i < draw_.whole(cameras, 8); ++i) {
            plan::Shot shot;
            shot.id = {fmt::format("{}{}", 1 + i / 4, "ABCD"[i % 4])};
            shot.beats = {draw_.one_of(plan_.beats).id};
            shot.camera = plan_.cameras[static_cast<std::size_t>(i % cameras)].id;
            shot.at = place();
            shot.subjects = {draw_.one_of(plan_.people).id};
            shot.focal = Length::millimetres(draw_.between(9.0, 60.0));
            plan_.shots.push_back(shot);
        }
    }

    void add_lamps() {
        for (int i = 0; i < draw_.whole(0, 40); ++i) {
            plan::Lamp lamp;
            lamp.id = {fmt::format("{}", i + 1)};
            lamp.instrument = draw_.one_of(kLamps);
            lamp.channel = draw_.chance(0.8) ? i + 1 : 0;
            lamp.circuit = draw_.one_of(plan_.circuits).id;
            lamp.aim = plan::ThingName{draw_.one_of(plan_.people).id.name};
            lamp.focus = draw_.between(0.0, 1.0);
            if (draw_.chance(0.75)) {
                lamp.mount = plan::GridHang{plan::grid_name(draw_.whole(0, plan_.grid->columns - 1),
                                                            draw_.whole(0, plan_.grid->rows - 1)),
                                            Length::metres(0.3)};
            } else {
                lamp.mount = plan::StandMount{place(), Length::metres(2.0), "medium light stand"};
            }
            plan_.lamps.push_back(lamp);
        }
    }

    Draw draw_;
    Plan plan_;
    double wide_m_ = 0.0;
    double deep_m_ = 0.0;
    Vec2 corner_ = Vec2::Zero();
    double crowding_ = 0.0;
};

} // namespace

Plan random_plan(std::uint32_t seed) {
    return Maker{seed}.make();
}

} // namespace throwline::support
