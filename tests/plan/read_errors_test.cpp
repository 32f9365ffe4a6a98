#include "plan/reading_support.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <gtest/gtest.h>

namespace throwline::plan {
namespace {

using testing::errors_of;
using testing::plan_with;
using testing::read;

constexpr const char* kCamera =
    R"("cameras": [{"id": "camera 1", "sensor": "2/3-type 16:9", "lens": "field zoom 18x"}],
"beats": [{"id": "1"}, {"id": "2"}], "people": [{"id": "potter"}],)";

/// A plan whose member lies in lines 2 and following, and the one error that it must give.
struct Fault {
    const char* name;
    std::string members;
    int line;
    int column;
    const char* pointer;
    const char* message;
};

std::string shot_with(const std::string& members) {
    return std::string{kCamera} + "\n\"shots\": [{\"id\": \"1A\", \"camera\": \"camera 1\",\n"
           + "\"beats\": [\"1\"], \"at\": [1, 1],\n" + members + "}]";
}

std::string lamp_with(const std::string& members) {
    return "\"grid\": {\"origin\": [1, 1], \"pitch\": [1, 1], \"count\": [3, 2], \"height\": 3},\n"
           "\"lamps\": [{\"id\": \"1\", \"instrument\": \"Fresnel 1 kW\",\n"
           + members + "}]";
}

std::string mark_with(const std::string& members) {
    return "\"people\": [{\"id\": \"a\"}, {\"id\": \"b\"}],\n"
           "\"beats\": [{\"id\": \"1\", \"marks\": {\"a\": {\"at\": [1, 1],\n"
           + members + "}}}]";
}

class ReadErrors : public ::testing::TestWithParam<Fault> {};

TEST_P(ReadErrors, NameThePlaceAndWhatIsAllowed) {
    const Fault& fault = GetParam();
    const auto plan = read(plan_with(fault.members));
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 1U) << errors_of(plan);
    const Error& error = plan.error().front();
    EXPECT_EQ(error.message, fault.message);
    EXPECT_EQ(error.place, (Place{"plan.json", fault.pointer, fault.line, fault.column}));
}

INSTANTIATE_TEST_SUITE_P(
    Values, ReadErrors,
    ::testing::Values(
        Fault{"UnknownKey", R"("lamsp": [])", 2, 1, "/lamsp",
              R"("lamsp" is no key of plan; nearest is "lamps")"},
        Fault{"FarUnknownKey", R"("people": [{"id": "a", "qqqqqqqqq": 1}])", 2, 24,
              "/people/0/qqqqqqqqq",
              R"("qqqqqqqqq" is no key of person; allowed are id, stature, kind, extra)"},
        Fault{"MissingKey", R"("circuits": [{"volts": 230}])", 2, 14, "/circuits/0",
              R"(circuit needs "id")"},
        Fault{"WrongType", R"("lamps": {})", 2, 10, "/lamps",
              "expected a list [...], found an object"},
        Fault{"WrongLength", R"("people": [{"id": "a", "stature": true}])", 2, 35,
              "/people/0/stature",
              "expected a length (a number of metres, or text such as \"3.5 m\" or \"10ft 6in\"), "
              "found true"},
        Fault{"TooTall", R"("people": [{"id": "a", "stature": 170}])", 2, 35, "/people/0/stature",
              "170 m is out of range; allowed is 0.4 m to 2.8 m"},
        Fault{"NoUnits", R"("units": "metrics")", 2, 10, "/units",
              R"("metrics" is no unit system; nearest is "metric"; allowed are metric, imperial)"},
        Fault{"NoPose", mark_with(R"("pose": "sitt")"), 4, 9, "/beats/0/marks/a/pose",
              R"("sitt" is no pose; nearest is "sit"; allowed are stand, sit, lie, crouch)"},
        Fault{"NoPoint", mark_with(R"("path": [[1, 2, 3]])"), 4, 10, "/beats/0/marks/a/path/0",
              "expected a point [x, y], found an array"},
        Fault{"NoDate", R"("site": {"date": "2025-02-29"})", 2, 18, "/site/date",
              "expected a date of the calendar, year-month-day, such as \"2026-03-14\", found "
              "\"2025-02-29\""},
        Fault{"NoTime", R"("site": {"hours": ["09:00", "25:00"]})", 2, 29, "/site/hours/1",
              "expected a time of day such as \"09:00\", from 00:00 to 24:00, found \"25:00\""},
        Fault{"NoLongitude", R"("site": {"latitude": 52})", 2, 9, "/site",
              "latitude and longitude are given both or not at all"},
        Fault{"NoLatitude", R"("site": {"latitude": 91, "longitude": 0})", 2, 22, "/site/latitude",
              "91 is out of range; allowed is -90 to 90 degrees"},
        Fault{"NoShare", lamp_with(R"("hang": "A1", "level": 80)"), 4, 24, "/lamps/0/level",
              "80 is out of range; allowed is 0 to 1"},
        Fault{"NoPitch",
              R"("grid": {"origin": [0, 0], "pitch": [0, 1], "count": [2, 2], "height": 3})", 2, 38,
              "/grid/pitch/0",
              "pipes of a grid cannot stand in one place; the pitch must not be 0"},
        Fault{
            "HugeCount",
            R"("grid": {"origin": [0, 0], "pitch": [1, 1], "count": [2000000000, 2], "height": 3})",
            2, 55, "/grid/count/0", "expected a whole number from 1 to 100, found 2000000000"}),
    [](const auto& fault) { return std::string{fault.param.name}; });

INSTANTIATE_TEST_SUITE_P(
    Names, ReadErrors,
    ::testing::Values(
        Fault{"Twice", "\"people\": [{\"id\": \"a\"},\n{\"id\": \"a\"}]", 3, 8, "/people/1/id",
              "\"a\" is already the name of a person in line 2"},
        Fault{"OverKinds",
              "\"people\": [{\"id\": \"a\"}],\n\"scenery\": [{\"id\": \"a\", \"item\": \"stool\", "
              "\"at\": [1, 1]}]",
              3, 20, "/scenery/0/id", "\"a\" is already the name of a person in line 2"},
        Fault{"LikeAnAngle", R"("people": [{"id": "90deg"}])", 2, 19, "/people/0/id",
              "\"90deg\" reads as an angle; choose another name"},
        Fault{"Empty", R"("people": [{"id": ""}])", 2, 19, "/people/0/id",
              "a name must not be empty"},
        Fault{"NobodyMarked",
              "\"people\": [{\"id\": \"potter\"}],\n\"beats\": [{\"id\": \"1\", \"marks\": "
              "{\"poter\": \"off\"}}]",
              3, 33, "/beats/0/marks/poter", R"(no person is called "poter"; nearest is "potter")"},
        Fault{"FacingNobody", mark_with(R"("faces": "c d e f")"), 4, 10, "/beats/0/marks/a/faces",
              "no person, camera, lamp, boom or piece of scenery is called \"c d e f\""},
        Fault{"FacingOneself", mark_with(R"("faces": "a")"), 4, 10, "/beats/0/marks/a/faces",
              "\"a\" cannot be turned to itself"},
        Fault{"NoSuchSubject", shot_with(R"("subjects": ["pottre"])"), 6, 14, "/shots/0/subjects/0",
              R"(no person is called "pottre"; nearest is "potter")"},
        Fault{"CutToNothing", shot_with(R"("cuts_to": ["9"])"), 6, 13, "/shots/0/cuts_to/0",
              "no shot is called \"9\""},
        Fault{"NoGridPlace", lamp_with(R"("hang": "D1")"), 4, 9, "/lamps/0/hang",
              "\"D1\" is no place on the grid; it has A1 to C2"},
        Fault{"NoPipe", lamp_with(R"("pipe": "p", "along": 1)"), 4, 9, "/lamps/0/pipe",
              "no pipe is called \"p\"; there is none at all"},
        Fault{"NoWall", lamp_with(R"("wall": 5, "along": 1, "height": 2)"), 4, 9, "/lamps/0/wall",
              "there is no wall 5; the room has walls 1 to 4"},
        Fault{"NoCircuit", lamp_with(R"("hang": "A1", "circuit": "C1")"), 4, 26, "/lamps/0/circuit",
              "no circuit is called \"C1\"; there is none at all"},
        Fault{"NoFilter", lamp_with(R"("hang": "A1", "filters": ["quater blue"])"), 4, 27,
              "/lamps/0/filters/0",
              "no filter is called \"quater blue\"; nearest is \"quarter blue\" in the catalogue"},
        Fault{"NoKit", R"("kit": [{"item": "Fresnel 1kW", "count": 2}])", 2, 18, "/kit/0/item",
              "no sensor, lens, instrument, filter, stock item or support is called \"Fresnel "
              "1kW\"; nearest is \"Fresnel 1 kW\" in the catalogue"},
        Fault{
            "NoCorner",
            R"("survey": {"corners": ["A", "B", "C"], "readings": [{"from": "A", "to": "X", "length": 3}]})",
            2, 73, "/survey/readings/0/to", "no corner or floor point is called \"X\""}),
    [](const auto& fault) { return std::string{fault.param.name}; });

INSTANTIATE_TEST_SUITE_P(
    Sense, ReadErrors,
    ::testing::Values(
        Fault{"TwoMounts", lamp_with(R"("hang": "A1", "stand": [1, 1], "height": 2)"), 3, 11,
              "/lamps/0",
              "a lamp is held in one way, by one of hang, pipe, stand, wall, practical; found "
              "hang, stand"},
        Fault{"DropOnAStand", lamp_with(R"("stand": [1, 1], "height": 2, "drop": 1)"), 4, 39,
              "/lamps/0/drop", "\"drop\" goes with hang, pipe, not with \"stand\""},
        Fault{"StandWithoutHeight", lamp_with(R"("stand": [1, 1])"), 3, 11, "/lamps/0",
              R"(a lamp with "stand" needs "height")"},
        Fault{"DropToTheFloor", lamp_with(R"("hang": "A1", "drop": 3)"), 4, 23, "/lamps/0/drop",
              "a drop of 3 m from a pipe 3 m high ends on or below the floor"},
        Fault{"BeyondTheWall", lamp_with(R"("wall": 2, "along": 4.5, "height": 2)"), 4, 21,
              "/lamps/0/along", "4.5 m is beyond the end of the wall, which is 4.000 m long"},
        Fault{"FocalInMillimetres", shot_with(R"("focal": 28)"), 6, 10, "/shots/0/focal",
              "28 is a focal length of 28 metres; write \"28mm\" for millimetres"},
        Fault{"NoSuchFocal", shot_with(R"("focal": "2 mm")"), 6, 10, "/shots/0/focal",
              "2.0 mm is outside the lens \"field zoom 18x\", 7.6 mm to 137.0 mm"},
        Fault{"BeatsBackwards",
              std::string{kCamera} + "\n\"shots\": [{\"id\": \"1A\", \"camera\": \"camera 1\",\n"
                  + "\"beats\": [\"2\",\n\"1\"], \"at\": [1, 1]}]",
              6, 1, "/shots/0/beats/1", "beat \"1\" comes before beat \"2\" in the plan"},
        Fault{"NoBeats",
              std::string{kCamera} + "\n\"shots\": [{\"id\": \"1A\", \"camera\": \"camera 1\",\n"
                  + "\"beats\": [], \"at\": [1, 1]}]",
              5, 10, "/shots/0/beats", "a shot is taken in at least one beat"},
        Fault{"PipeWithoutLength",
              R"("pipes": [{"id": "p", "from": [1, 1], "to": [1, 1], "height": 3}])", 2, 45,
              "/pipes/0/to", "a pipe must not end where it begins"},
        Fault{"CrossingPrism",
              "\"scenery\": [{\"id\": \"x\", \"kind\": \"prism\", \"height\": 1,\n\"outline\": "
              "[[0, 0], [1, 1], [1, 0], [0, 1]]}]",
              3, 12, "/scenery/0/outline",
              "the outline crosses itself; give the corners in walking order"},
        Fault{
            "FoldedDrape",
            R"("scenery": [{"id": "x", "kind": "drape", "height": 1, "along": [[0, 0], [0, 0]]}])",
            2, 73, "/scenery/0/along/1", "this point is in the place of the one before it"},
        Fault{"RatioBelowOne", R"("targets": {"lighting_ratio": 0.5})", 2, 31,
              "/targets/lighting_ratio",
              "(key + fill) : fill is never below 1; give 1 or more, or 0 when open"}),
    [](const auto& fault) { return std::string{fault.param.name}; });

std::string room_with(const std::string& members) {
    return "{\"format\": 1, \"title\": \"t\", \"room\": {\"height\": 3,\n" + members + "}}";
}

std::string opening(const std::string& members) {
    return "\"outline\": [[0, 0], [6, 0], [6, 4], [0, 4]], \"openings\": [\n{\"id\": \"d\", "
           "\"kind\": \"door\",\n"
           + members + "}]";
}

struct RoomFault {
    const char* name;
    std::string members;
    const char* pointer;
    const char* message;
};

class RoomErrors : public ::testing::TestWithParam<RoomFault> {};

TEST_P(RoomErrors, SayWhatIsWrongWithTheWalls) {
    const auto plan = read(room_with(GetParam().members));
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 1U) << errors_of(plan);
    EXPECT_EQ(plan.error().front().message, GetParam().message);
    EXPECT_EQ(plan.error().front().place.pointer, GetParam().pointer);
}

INSTANTIATE_TEST_SUITE_P(
    Room, RoomErrors,
    ::testing::Values(
        RoomFault{"TwoCorners", R"("outline": [[0, 0], [6, 0]])", "/room/outline",
                  "an outline has 3 to 1000 corners, this one 2"},
        RoomFault{"Closed", R"("outline": [[0, 0], [6, 0], [6, 4], [0, 0]])", "/room/outline/3",
                  "the last corner is in the place of the first; leave it out, the outline closes "
                  "by itself"},
        RoomFault{"Repeated", R"("outline": [[0, 0], [6, 0], [6, 0], [0, 4]])", "/room/outline/2",
                  "this corner is in the place of the one before it"},
        RoomFault{"Crossing", R"("outline": [[0, 0], [6, 4], [6, 0], [0, 4]])", "/room/outline",
                  "the outline crosses itself; give the corners in walking order"},
        RoomFault{"WideDoor", opening(R"("wall": 2, "from_start": 3.5, "width": 1, "head": 2)"),
                  "/room/openings/0/width",
                  "the opening ends 4.5 m along wall 2, which is 4.000 m long"},
        RoomFault{"HighDoor", opening(R"("wall": 2, "from_start": 1, "width": 1, "head": 3.2)"),
                  "/room/openings/0/head", "the head, 3.2 m, is above wall 2, which is 3 m high"},
        RoomFault{"SillAboveHead",
                  opening(R"("wall": 2, "from_start": 1, "width": 1, "sill": 2, "head": 1)"),
                  "/room/openings/0/head", "the head, 1 m, must be above the sill, 2 m"},
        RoomFault{"Overlapping", opening(R"("wall": 2, "from_start": 1, "width": 1, "head": 2},
                    {"id": "e", "kind": "door", "wall": 2, "from_start": 1.5, "width": 1, "head": 2)"),
                  "/room/openings/1", "openings \"d\" and \"e\" overlap in wall 2"},
        RoomFault{"WallTwice",
                  R"("outline": [[0, 0], [6, 0], [6, 4]], "walls": [{"wall": 2}, {"wall": 2}])",
                  "/room/walls/1/wall", "wall 2 is given twice"},
        RoomFault{"NoSuchWall", R"("outline": [[0, 0], [6, 0], [6, 4]], "walls": [{"wall": 4}])",
                  "/room/walls/0/wall", "expected a whole number from 1 to 3, found 4"}),
    [](const auto& fault) { return std::string{fault.param.name}; });

TEST(ReadErrors, AreAllReportedInTheOrderOfTheFile) {
    const auto plan = read(plan_with("\"people\": [{\"id\": \"a\", \"stature\": \"tall\"}],\n"
                                     "\"beats\": [{\"id\": 1}],\n\"lamp\": []"));
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 3U) << errors_of(plan);
    EXPECT_EQ(plan.error()[0].place.pointer, "/people/0/stature");
    EXPECT_EQ(plan.error()[1].place.pointer, "/beats/0/id");
    EXPECT_EQ(plan.error()[2].place.pointer, "/lamp");
}

TEST(ReadErrors, BeyondTheLimitAreCounted) {
    std::string people;
    for (int i = 0; i < 300; ++i) {
        people += fmt::format("{}{{\"id\": {}}}", i == 0 ? "" : ", ", i);
    }
    const auto plan = read(plan_with("\"people\": [" + people + "]"));
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 201U);
    EXPECT_EQ(plan.error().back().message, "and 100 more");
}

TEST(ReadErrors, NewerFormatIsTheOnlyComplaint) {
    const auto plan = read(R"({"format": 2, "title": "t", "rooms": []})");
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 1U) << errors_of(plan);
    EXPECT_EQ(plan.error().front().message,
              "format 2 is newer than this program, which reads formats up to 1; use a newer "
              "version");
}

/// Files of the corpus whose names begin with one of these.
std::vector<std::filesystem::path> corpus(std::initializer_list<std::string_view> prefixes) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry :
         std::filesystem::directory_iterator{THROWLINE_SOURCE_DIR "/tests/corpus/plan"}) {
        const std::string name = entry.path().filename().string();
        if (std::any_of(prefixes.begin(), prefixes.end(),
                        [&](std::string_view prefix) { return name.starts_with(prefix); })) {
            files.push_back(entry.path());
        }
    }
    return files;
}

TEST(ReadErrors, AreGivenForEveryBadPlanOfTheCorpus) {
    const auto files = corpus({"form_", "sense_", "text_"});
    EXPECT_GE(files.size(), 45U);
    for (const auto& file : files) {
        const auto plan = read_plan_file(file, testing::tables());
        ASSERT_FALSE(plan) << file;
        EXPECT_GT(plan.error().front().place.line, 0) << file << errors_of(plan);
    }
}

TEST(ReadErrors, AreGivenForNoGoodPlanOfTheCorpus) {
    const auto files = corpus({"good_"});
    EXPECT_GE(files.size(), 2U);
    for (const auto& file : files) {
        EXPECT_EQ(errors_of(read_plan_file(file, testing::tables())), "") << file;
    }
}

} // namespace
} // namespace throwline::plan
