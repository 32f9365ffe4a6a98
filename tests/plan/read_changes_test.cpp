/// Reading back the changes of a plan alone is as strict as reading back all of it.

#include "plan/read_changes.h"

#include "plan/any_plan.h"
#include "plan/reading.h"
#include "plan/reading_support.h"

#include <functional>
#include <gtest/gtest.h>
#include <limits>
#include <rapidcheck/gtest.h>

namespace throwline::plan {
namespace {

using testing::any_plan;
using testing::errors_of;
using testing::read;
using testing::tables;

/// Empty when both ways of reading say the same of the plan that `before` was changed to.
std::string disagreement(const Plan& before, const Plan& after) {
    const std::string text = written(after);
    const auto whole = read(text);
    const auto changes = read_changes(before, after, tables());
    if (!whole || !changes) {
        return whole.has_value() == changes.has_value()
                   ? ""
                   : (whole ? "refused: " : "accepted: " + errors_of(whole)) + text;
    }
    if (!(changes->plan == *whole) || written(changes->plan) != text) {
        return "another plan: " + text;
    }
    return text.size() <= written(before).size() + changes->most_bytes ? "" : "longer: " + text;
}

int below(int count) {
    return *rc::gen::inRange(0, count);
}

bool now_and_then() {
    return below(4) == 0;
}

/// Takes items out, puts in those of another list, swaps two.
template <class Item>
void spliced(std::vector<Item>& list, const std::vector<Item>& others) {
    const auto place = [&] { return list.begin() + below(static_cast<int>(list.size()) + 1); };
    if (now_and_then() && !list.empty()) {
        list.erase(list.begin() + below(static_cast<int>(list.size())));
    }
    if (now_and_then() && !others.empty()) {
        list.insert(place(),
                    others[static_cast<std::size_t>(below(static_cast<int>(others.size())))]);
    }
    if (now_and_then() && list.size() > 1) {
        std::swap(list.front(), list.back());
    }
    if (now_and_then() && !list.empty() && !others.empty()) {
        list.back() = others.front();
    }
    if (below(8) == 0) {
        list = others;
    }
}

template <class Part>
void taken_now_and_then(Part& part, const Part& other) {
    if (below(6) == 0) {
        part = other;
    }
}

Plan spliced(Plan plan, const Plan& other) {
    taken_now_and_then(plan.title, other.title);
    taken_now_and_then(plan.units, other.units);
    taken_now_and_then(plan.site, other.site);
    taken_now_and_then(plan.room, other.room);
    taken_now_and_then(plan.survey, other.survey);
    taken_now_and_then(plan.grid, other.grid);
    taken_now_and_then(plan.underlay, other.underlay);
    taken_now_and_then(plan.targets, other.targets);
    taken_now_and_then(plan.arrangement, other.arrangement);
    taken_now_and_then(plan.extra, other.extra);
    spliced(plan.room.openings, other.room.openings);
    spliced(plan.pipes, other.pipes);
    spliced(plan.circuits, other.circuits);
    spliced(plan.scenery, other.scenery);
    spliced(plan.people, other.people);
    spliced(plan.beats, other.beats);
    spliced(plan.cameras, other.cameras);
    spliced(plan.shots, other.shots);
    spliced(plan.booms, other.booms);
    spliced(plan.lamps, other.lamps);
    spliced(plan.kit, other.kit);
    spliced(plan.accepted, other.accepted);
    return plan;
}

RC_GTEST_PROP(ReadChanges, SayTheSameAsReadingAllOfAPlanSplicedFromTwo, ()) {
    const Plan before = any_plan();
    const Plan after = spliced(before, any_plan());
    RC_CLASSIFY(read(written(after)).has_value(), "can be read");
    RC_ASSERT(disagreement(before, after) == "");
    RC_ASSERT(disagreement(before, before) == "");
}

/// A plan with one of everything, that a change can break.
Plan whole_plan() {
    const auto plan = read(R"({"format": 1, "title": "whole",
        "room": {"outline": [[0, 0], [9, 0], [9, 6], [0, 6]], "height": 4,
                 "openings": [{"id": "door", "kind": "door", "wall": 1, "from_start": 1,
                               "width": 1, "head": 2},
                              {"id": "window", "kind": "window", "wall": 1, "from_start": 3,
                               "width": 1, "sill": 1, "head": 2}]},
        "grid": {"origin": [0, 0], "pitch": [1, 1], "count": [5, 5], "height": 3.5},
        "pipes": [{"id": "bar", "from": [1, 1], "to": [5, 1], "height": 3}],
        "circuits": [{"id": "C1", "volts": 230, "breaker_amps": 16, "outlets": [[0, 1]]}],
        "scenery": [{"id": "table", "kind": "box", "at": [2, 2], "width": 1, "depth": 1,
                     "height": 1},
                    {"id": "sofa", "kind": "box", "at": [4, 2], "width": 2, "depth": 1,
                     "height": 1},
                    {"id": "stool", "item": "stool", "at": [6, 2]}],
        "people": [{"id": "Ana"}, {"id": "Bo"}],
        "beats": [{"id": "1", "marks": {"Ana": {"at": [2, 3], "faces": "Bo"},
                                        "Bo": {"at": [3, 3]}}},
                  {"id": "2", "marks": {"Bo": "off"}}],
        "cameras": [{"id": "camera 1", "sensor": "2/3-type 16:9", "lens": "field zoom 18x"}],
        "shots": [{"id": "1A", "beats": ["1", "2"], "camera": "camera 1", "at": [5, 5],
                   "subjects": ["Ana"], "cuts_to": ["2A"]},
                  {"id": "2A", "beats": ["2"], "camera": "camera 1", "at": [6, 5]}],
        "booms": [{"id": "boom", "operator": [1, 1], "microphone": [2, 2], "beats": ["1"]}],
        "lamps": [{"id": "key", "instrument": "Fresnel 1 kW", "hang": "B2", "aim": "Ana",
                   "circuit": "C1", "beats": ["1"]},
                  {"id": "fill", "instrument": "Fresnel 1 kW", "pipe": "bar", "along": 1},
                  {"id": "back", "instrument": "Fresnel 1 kW", "wall": 4, "along": 1,
                   "height": 2}],
        "kit": [{"item": "Fresnel 1 kW", "count": 3}],
        "accepted": [{"check": "off-the-set", "shot": "1A", "reason": "seen"}],
        "arrangement": {"groups": [{"things": ["table", "sofa"]}], "locked": ["wall 4"],
                        "hidden": ["stool"]}})");
    EXPECT_TRUE(plan) << errors_of(plan);
    return plan ? *plan : Plan{};
}

/// A change that leads to a plan that cannot be read, with what is wrong then.
struct Fault {
    const char* what;
    std::function<void(Plan&)> make;
};

const double kNan = std::numeric_limits<double>::quiet_NaN();

plan::BoxPiece& box(Plan& plan) {
    return std::get<BoxPiece>(plan.scenery[0].shape);
}

/// What is wrong within one part.
const std::vector<Fault> kFaultsOfParts{
    {"control character", [](Plan& plan) { plan.title = "a\tb"; }},
    {"no UTF-8", [](Plan& plan) { plan.scenery[1].finish = "\xff"; }},
    {"empty name", [](Plan& plan) { plan.people[1].id = {""}; }},
    {"name with a space at its end", [](Plan& plan) { plan.lamps[0].id = {"key "}; }},
    {"long name", [](Plan& plan) { plan.scenery[0].id = {std::string(201, 'n')}; }},
    {"size of 0", [](Plan& plan) { box(plan).height = {}; }},
    {"no number", [](Plan& plan) { box(plan).at.x() = kNan; }},
    {"far off", [](Plan& plan) { box(plan).at.y() = 1001; }},
    {"stature", [](Plan& plan) { plan.people[0].stature = Length::metres(3); }},
    {"level above 1", [](Plan& plan) { plan.lamps[1].level = 1.01; }},
    {"shot of no beat", [](Plan& plan) { plan.shots[1].beats.clear(); }},
    {"pipe of no length", [](Plan& plan) { plan.pipes[0].to = plan.pipes[0].from; }},
    {"height of a mark",
     [](Plan& plan) {
         std::get<Mark>(plan.beats[0].marks[{"Ana"}]).elevation = Length::metres(-1001);
     }},
    {"grid without a pitch", [](Plan& plan) { plan.grid->pitch_x = {}; }},
    {"ratio below 1", [](Plan& plan) { plan.targets.lighting_ratio = 0.5; }},
    {"count", [](Plan& plan) { plan.kit[0].count = -1; }},
    {"extra that is no JSON", [](Plan& plan) { plan.scenery[2].extra.json = "{"; }},
    {"long list", [](Plan& plan) { plan.accepted.assign(kMostItems + 1, plan.accepted.front()); }}};

/// What is wrong between parts, most of them untouched.
const std::vector<Fault> kFaultsBetweenParts{
    {"name twice", [](Plan& plan) { plan.scenery[1].id = {"Bo"}; }},
    {"same thing twice", [](Plan& plan) { plan.scenery.push_back(plan.scenery[0]); }},
    {"name like an angle", [](Plan& plan) { plan.booms[0].id = {"90deg"}; }},
    {"person gone", [](Plan& plan) { plan.people.pop_back(); }},
    {"all people gone", [](Plan& plan) { plan.people.clear(); }},
    {"person of a mark renamed", [](Plan& plan) { plan.people[1].id = {"Cy"}; }},
    {"facing oneself",
     [](Plan& plan) { std::get<Mark>(plan.beats[0].marks[{"Ana"}]).faces = ThingName{"Ana"}; }},
    {"beat gone", [](Plan& plan) { plan.beats.erase(plan.beats.begin()); }},
    {"beats swapped", [](Plan& plan) { std::swap(plan.beats[0], plan.beats[1]); }},
    {"camera gone", [](Plan& plan) { plan.cameras.clear(); }},
    {"shot gone", [](Plan& plan) { plan.shots.pop_back(); }},
    {"accepted shot gone", [](Plan& plan) { plan.shots.erase(plan.shots.begin()); }},
    {"cut to itself", [](Plan& plan) { plan.shots[1].cuts_to = {{"2A"}}; }},
    {"circuit gone", [](Plan& plan) { plan.circuits.clear(); }},
    {"pipe gone", [](Plan& plan) { plan.pipes.clear(); }},
    {"pipe too short", [](Plan& plan) { plan.pipes[0].to = {1.5, 1}; }},
    {"grid gone", [](Plan& plan) { plan.grid.reset(); }},
    {"grid too small", [](Plan& plan) { plan.grid->rows = 1; }},
    {"room gone", [](Plan& plan) { plan.room = {}; }},
    {"wall gone",
     [](Plan& plan) {
         plan.room.outline.pop_back();
         plan.room.walls.pop_back();
     }},
    {"room that crosses itself",
     [](Plan& plan) { std::swap(plan.room.outline[0], plan.room.outline[1]); }},
    {"wall too low for its door",
     [](Plan& plan) { plan.room.walls[0].height = Length::metres(1); }},
    {"wall too short for its lamp", [](Plan& plan) { plan.room.outline[3] = {0, 0.5}; }},
    {"openings over each other",
     [](Plan& plan) { plan.room.openings[1].from_start = Length::metres(1.5); }},
    {"no such finish", [](Plan& plan) { plan.room.walls[2].finish = "no finish"; }},
    {"no such stock",
     [](Plan& plan) { plan.scenery[2].shape = StockPiece{"no stock", {1, 1}, {}}; }},
    {"no such lens", [](Plan& plan) { plan.cameras[0].lens = "no lens"; }},
    {"no such instrument", [](Plan& plan) { plan.lamps[2].instrument = "no lamp"; }},
    {"focal length outside the lens", [](Plan& plan) { plan.shots[1].focal = Length::metres(2); }},
    {"kit twice", [](Plan& plan) { plan.kit.push_back(plan.kit[0]); }},
    {"hidden thing gone", [](Plan& plan) { plan.scenery.pop_back(); }},
    {"group of one", [](Plan& plan) { plan.arrangement.groups[0].things.pop_back(); }},
    {"locked wall that is none", [](Plan& plan) { plan.arrangement.locked = {"wall 5"}; }}};

void expect_refused(const std::vector<Fault>& faults) {
    for (const Fault& fault : faults) {
        const Plan before = whole_plan();
        Plan after = before;
        fault.make(after);
        EXPECT_FALSE(read(written(after))) << fault.what;
        EXPECT_FALSE(read_changes(before, after, tables())) << fault.what;
    }
}

TEST(ReadChanges, RefuseWhatIsWrongWithinAPart) {
    expect_refused(kFaultsOfParts);
}

TEST(ReadChanges, RefuseWhatIsWrongBetweenParts) {
    expect_refused(kFaultsBetweenParts);
}

TEST(ReadChanges, AreWhatWasReadBackOfThem) {
    const Plan before = whole_plan();
    Plan after = before;
    box(after).at = {2.5, -0.0};
    const auto read_back = read_changes(before, after, tables());
    ASSERT_TRUE(read_back);
    EXPECT_EQ(read_back->plan, after);
    EXPECT_FALSE(std::signbit(std::get<BoxPiece>(read_back->plan.scenery[0].shape).at.y()));
    // What did not change is not even written: all of it is far longer.
    EXPECT_LT(read_back->most_bytes, written(after).size() / 2);
}

} // namespace
} // namespace throwline::plan
