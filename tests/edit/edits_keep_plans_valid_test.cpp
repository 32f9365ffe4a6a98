#include "edit/handles.h"
#include "edit/make.h"
#include "edit/order.h"
#include "edit/snap.h"
#include "edit/valid.h"
#include "plan/places.h"
#include "support/demo_plan.h"
#include "support/random_plan.h"

#include <gtest/gtest.h>
#include <random>
#include <rapidcheck/gtest.h>

/// Whatever is asked of an invented plan, the answer is a plan that opens again, or a sentence.
namespace throwline::edit {
namespace {

using support::shipped_catalogue;

/// An invented plan with everything that can be in the way of an edit, and draws to edit it by.
class Try {
  public:
    explicit Try(std::uint32_t seed) : engine_{seed}, plan_{support::random_plan(seed)} {
        add_rig();
        add_moves();
        if (whole(0, 3) == 0) {
            plan_.arrangement.locked = {name_of(any_thing())};
        }
    }

    const plan::Plan& plan() const { return plan_; }
    Context context() {
        return {
            plan_, shipped_catalogue(), {any_beat(), whole(0, 2) == 0 ? no_shot() : any_shot()}};
    }

    int whole(int low, int high) {
        const auto span = static_cast<std::uint32_t>(high - low + 1);
        return low + static_cast<int>(engine_() % span);
    }
    double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
    }
    /// Mostly about the room, now and then on a corner of it or far off the paper.
    Vec2 place() {
        switch (whole(0, 9)) {
        case 0:
            return plan_.room.outline[index_in(plan_.room.outline)];
        case 1:
            return {between(-3000, 3000), between(-3000, 3000)};
        default:
            return {between(-2, 20), between(-2, 16)};
        }
    }
    plan::Id<plan::Beat> any_beat() { return plan_.beats[index_in(plan_.beats)].id; }
    plan::Id<plan::Shot> any_shot() { return plan_.shots[index_in(plan_.shots)].id; }
    plan::Id<plan::Camera> any_camera() { return plan_.cameras[index_in(plan_.cameras)].id; }
    Thing any_thing() {
        const Context now{plan_, shipped_catalogue(), {plan_.beats.front().id, {}}};
        const std::vector<Thing> things = things_on_floor(now);
        return things[index_in(things)];
    }
    std::vector<Vec2> places(int least, int most) {
        std::vector<Vec2> made;
        for (int i = whole(least, most); i > 0; --i) {
            made.push_back(place());
        }
        return made;
    }

    template <class Entities>
    std::size_t index_in(const Entities& entities) {
        return static_cast<std::size_t>(whole(0, static_cast<int>(entities.size()) - 1));
    }

  private:
    static plan::Id<plan::Shot> no_shot() { return {}; }

    plan::Lamp& add_lamp(const std::string& name, const plan::LampMount& mount) {
        plan::Lamp lamp;
        lamp.id = {name};
        lamp.instrument = "Fresnel 650 W";
        lamp.mount = mount;
        plan_.lamps.push_back(lamp);
        return plan_.lamps.back();
    }
    void add_rig() {
        plan_.pipes.push_back({{"bar"}, {1, 1}, {3, 2}, Length::metres(2.5), 0, 0, {}});
        add_lamp("bar lamp", plan::PipeHang{{"bar"}, Length::metres(2.2), {}}).beats = {any_beat()};
        const int wall = whole(0, static_cast<int>(plan_.room.outline.size()) - 1);
        add_lamp("wall lamp", plan::WallMount{wall, Length::metres(1.0), Length::metres(2.0)}).aim =
            plan::ThingName{"boom"};
        plan::Boom boom;
        boom.id = {"boom"};
        boom.operator_at = {2, 2};
        boom.microphone = {3, 3};
        boom.beats = {any_beat()};
        plan_.booms.push_back(boom);
        plan::Scenery prism;
        prism.id = {"prism"};
        prism.shape = plan::PrismPiece{{{1, 1}, {2, 1}, {2, 2}, {1.5, 2.5}}, Length::metres(1)};
        plan_.scenery.push_back(prism);
    }
    void add_moves() {
        for (plan::Beat& beat : plan_.beats) {
            for (auto& [person, change] : beat.marks) {
                if (whole(0, 3) == 0) {
                    std::get<plan::Mark>(change).path = {{1, 2}, {3, 4}};
                }
            }
        }
        for (plan::Shot& shot : plan_.shots) {
            shot.moves.assign(static_cast<std::size_t>(whole(0, 2)), Vec2{2, 3});
            if (whole(0, 2) == 0 && plan_.beats.size() > 1) {
                shot.beats = {plan_.beats[0].id, plan_.beats[1].id};
            }
        }
        if (plan_.beats.size() > 1 && whole(0, 1) == 0) {
            plan_.beats.back().marks[plan_.people.front().id] = plan::OffFloor{};
        }
    }

    std::mt19937 engine_;
    plan::Plan plan_;
};

/// Empty when the answer is a plan that opens again with what was made in it, or a sentence.
std::string complaint(const Result<Step>& step) {
    if (!step) {
        return step.error().message.empty() ? "no reason given" : "";
    }
    if (step->name.empty()) {
        return "a step without a name";
    }
    for (const Thing& thing : step->made) {
        if (!exists(step->plan, thing)) {
            return name_of(thing) + " is not there";
        }
    }
    const Checked<ValidPlan> read = valid(step->plan, shipped_catalogue());
    return read ? "" : step->name + ": " + text_of(read.error().front());
}

std::uint32_t any_seed() {
    return *rc::gen::arbitrary<std::uint32_t>();
}

RC_GTEST_PROP(EditsKeepPlansValid, TheInventedPlansAre, ()) {
    const Try on{any_seed()};
    RC_ASSERT(complaint(Step{"as it is", on.plan(), {}}) == "");
}

RC_GTEST_PROP(EditsKeepPlansValid, Room, ()) {
    Try on{any_seed()};
    RC_ASSERT(complaint(room_drawn(on.context(), on.places(0, 6))) == "");
    std::vector<Vec2> corners = on.plan().room.outline;
    corners[on.index_in(corners)] += Vec2{on.between(-1, 1), on.between(-1, 1)};
    if (on.whole(0, 1) == 0) {
        std::reverse(corners.begin(), corners.end());
    }
    RC_ASSERT(complaint(room_drawn(on.context(), corners)) == "");
    RC_ASSERT(complaint(corner_added(on.context(), on.whole(-1, 6), on.between(-1, 10))) == "");
}

RC_GTEST_PROP(EditsKeepPlansValid, Studio, ()) {
    Try on{any_seed()};
    const auto length = [&](double low_m, double high_m) {
        return Length::metres(on.between(low_m, high_m));
    };
    const Studio studio{length(-1, 30), length(1, 30), length(0.2, 8), length(0.1, 7),
                        length(-0.5, 4)};
    RC_ASSERT(complaint(studio_made(on.context(), studio)) == "");
}

RC_GTEST_PROP(EditsKeepPlansValid, Openings, ()) {
    Try on{any_seed()};
    const auto kind = static_cast<plan::OpeningKind>(on.whole(0, 2));
    RC_ASSERT(complaint(opening_added(on.context(), kind, on.place(),
                                      Length::metres(on.between(-0.5, 6))))
              == "");
}

RC_GTEST_PROP(EditsKeepPlansValid, Scenery, ()) {
    Try on{any_seed()};
    RC_ASSERT(complaint(flats_drawn(on.context(), on.place(), on.place())) == "");
    RC_ASSERT(complaint(drape_drawn(on.context(), on.places(0, 4))) == "");
    RC_ASSERT(complaint(pipe_drawn(on.context(), on.place(), on.place())) == "");
    RC_ASSERT(complaint(box_drawn(on.context(), on.place(), on.place(), on.whole(0, 1) == 0))
              == "");
    RC_ASSERT(
        complaint(cylinder_drawn(on.context(), on.place(), Length::metres(on.between(-1, 600))))
        == "");
}

RC_GTEST_PROP(EditsKeepPlansValid, WhatIsPutDown, ()) {
    Try on{any_seed()};
    const catalogue::Catalogue& stores = shipped_catalogue();
    const StoreItem items[]{{Shelf::stock, stores.stock[on.index_in(stores.stock)].name},
                            {Shelf::person, on.whole(0, 1) == 0 ? "cast" : "crew"},
                            {Shelf::camera, stores.lenses[on.index_in(stores.lenses)].name},
                            {Shelf::camera, ""},
                            {Shelf::lamp, stores.instruments[on.index_in(stores.instruments)].name},
                            {Shelf::boom, ""},
                            {Shelf::outlet, ""},
                            {Shelf::outlet, on.plan().circuits.front().id.name}};
    for (const StoreItem& item : items) {
        const std::string fault = complaint(put_down(on.context(), item, on.place()));
        RC_ASSERT(fault == "");
    }
}

RC_GTEST_PROP(EditsKeepPlansValid, EveryHandleDraggedAndTyped, ()) {
    Try on{any_seed()};
    const Context context = on.context();
    const char* const texts[]{"2.5 m", "35", "-1",  "90",     "1e9",
                              "x",     "0",  "5'6", "3000 m", "500 mm"};
    for (const Thing& thing : things_on_floor(context)) {
        for (const Handle& handle : handles_of(context, thing)) {
            const bool is_onto = on.whole(0, 2) == 0;
            const auto onto = is_onto ? std::optional{on.any_thing()} : std::nullopt;
            const std::string dragging = complaint(dragged(context, handle, on.place(), onto));
            RC_ASSERT(dragging == "");
            const std::string typing = complaint(typed(context, handle, texts[on.whole(0, 9)]));
            RC_ASSERT(typing == "");
            RC_ASSERT(!value_shown(context, handle).empty());
        }
    }
}

RC_GTEST_PROP(EditsKeepPlansValid, OrderOfBeats, ()) {
    Try on{any_seed()};
    RC_ASSERT(complaint(beat_added(on.context(), on.any_beat(), "later")) == "");
    RC_ASSERT(complaint(beat_removed(on.context(), on.any_beat())) == "");
    RC_ASSERT(complaint(beat_renamed(on.context(), on.any_beat(), "finale")) == "");
    const int to = on.whole(-2, 5);
    const Result<Step> moved = beat_moved(on.context(), on.any_beat(), to);
    RC_ASSERT(complaint(moved) == "");
    for (const plan::Beat& beat : on.plan().beats) {
        auto before = plan::marks_at(on.plan(), beat.id);
        auto after = plan::marks_at(moved->plan, beat.id);
        for (auto* marks : {&before, &after}) {
            for (auto& [person, mark] : *marks) {
                mark.path.clear();
            }
        }
        RC_ASSERT(before == after);
    }
}

RC_GTEST_PROP(EditsKeepPlansValid, OrderOfShots, ()) {
    Try on{any_seed()};
    RC_ASSERT(complaint(shot_added(on.context(), on.any_beat(), on.any_camera())) == "");
    RC_ASSERT(complaint(shot_removed(on.context(), on.any_shot())) == "");
    RC_ASSERT(complaint(shot_renamed(on.context(), on.any_shot(), "insert")) == "");
    RC_ASSERT(complaint(shot_moved(on.context(), on.any_shot(), on.whole(-2, 9), on.any_beat()))
              == "");
}

RC_GTEST_PROP(EditsKeepPlansValid, EverybodyOnTheWay, ()) {
    Try on{any_seed()};
    const plan::Id<plan::Beat> beat = on.any_beat();
    const double share = on.between(-0.2, 1.2);
    const plan::Plan moving = on_the_way(on.plan(), beat, share);
    RC_ASSERT(complaint(Step{"on the way", moving, {}}) == "");
    RC_ASSERT(share < 1.0 || moving == on.plan());
    const auto marks = plan::marks_at(moving, beat);
    for (const Walk& walk : walks_into(on.plan(), beat)) {
        double least_m = 1e9;
        for (std::size_t i = 1; i < walk.points.size(); ++i) {
            least_m = std::min(least_m, distance_to_segment(marks.at(walk.person).at,
                                                            walk.points[i - 1], walk.points[i]));
        }
        RC_ASSERT(least_m < 1e-9);
    }
}

RC_GTEST_PROP(SnapProperties, APlaceIsDrawnNoFartherThanTheReach, ()) {
    Try on{any_seed()};
    const Context context = on.context();
    const SnapField field{context, {}};
    SnapSettings settings;
    settings.reach_m = on.between(0.01, 0.8);
    settings.pitch_m = on.whole(0, 1) == 0 ? 0.0 : 1.0;
    for (int i = 0; i < 40; ++i) {
        const Vec2 point{on.between(-2, 20), on.between(-2, 16)};
        const auto from = on.whole(0, 1) == 0 ? std::optional{on.place()} : std::nullopt;
        const std::optional<Snap> snap = field.snapped(point, settings, from);
        // Lined up both ways, by the reach each.
        const double most_m = settings.reach_m * 1.4143;
        RC_ASSERT(!snap || (snap->at - point).norm() <= most_m);
        RC_ASSERT(!snap || !snap->words.empty());
    }
}

RC_GTEST_PROP(SnapProperties, APlaceOnSomethingStaysThere, ()) {
    Try on{any_seed()};
    const Context context = on.context();
    const SnapField field{context, {}};
    const Vec2 corner = on.plan().room.outline[on.index_in(on.plan().room.outline)];
    const std::optional<Snap> snap = field.snapped(corner, SnapSettings{});
    RC_ASSERT(snap.has_value());
    RC_ASSERT((snap->at - corner).norm() < 1e-9);
}

} // namespace
} // namespace throwline::edit
