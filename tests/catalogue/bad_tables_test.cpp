#include "catalogue/row_reader.h"
#include "catalogue/shipped.h"
#include "catalogue/temporary_folder.h"

#include <fmt/format.h>

using namespace throwline;
using namespace throwline::catalogue;

namespace {

struct BadFile {
    std::string text;
    /// "pointer: message" of the first error.
    std::string expected;
};

std::string first_error(const Checked<Catalogue>& result) {
    if (result) {
        return "accepted";
    }
    const Error& error = result.error().front();
    return error.place.pointer + ": " + error.message;
}

std::string lamp_with(const std::string& keys) {
    return R"({"instruments": [{"name": "x", "kind": "par", "watts": 10, "mass_kg": 1,
        "body_width_mm": 9, "body_depth_mm": 9, "body_height_mm": 9, "face_width_mm": 5,
        "colour_temperature_k": 3200, "clearance_m": 1, )"
           + keys + "}]}";
}

std::string lens_with(const std::string& keys) {
    return R"({"lenses": [{"name": "x", "close_focus_m": 1, "image_circle_mm": 40, "length_mm": 100,
        "front_diameter_mm": 80, "hood_length_mm": 0, )"
           + keys + "}]}";
}

void expect_refused(const std::vector<BadFile>& files) {
    const TemporaryFolder folder;
    for (const BadFile& bad : files) {
        const auto file = folder.write("own.json", bad.text);
        const Checked<Catalogue> result = with_own_items({}, file);
        EXPECT_EQ(first_error(result), bad.expected) << bad.text;
        if (!result && !bad.text.empty()) {
            EXPECT_GT(result.error().front().place.line, 0) << bad.text;
        }
    }
}

} // namespace

TEST(BadTables, WrongShapesAreRefused) {
    expect_refused({
        {"", ": the file is empty"},
        {"[]", ": expected an object of tables, found an array"},
        {"\"sensors\"", ": expected an object of tables, found a string"},
        {R"({"sensors": {}})", "/sensors: expected an array, found an object"},
        {R"({"sensors": null})", "/sensors: expected an array, found null"},
        {R"({"sensors": [[]]})", "/sensors/0: expected an object, found an array"},
        {R"({"sensors": [{}]})", "/sensors/0: the key \"name\" is missing"},
        {R"({"sensors": [], "sensors": []})",
         "/sensors: key \"sensors\" is given twice, before in line 1"},
        {R"({"xyzzy": []})", "/xyzzy: there is no table \"xyzzy\"; there are: sensors, lenses, "
                             "instruments, filters, stock, supports, landmarks, finishes, papers, "
                             "scales"},
    });
}

TEST(BadTables, WrongTypesAndRangesAreRefused) {
    expect_refused({
        {R"({"sensors": [{"name": 5, "width_mm": 1, "height_mm": 1}]})",
         "/sensors/0/name: expected a string, found a number"},
        {R"({"sensors": [{"name": " ", "width_mm": 1, "height_mm": 1}]})",
         "/sensors/0/name: this may not be empty"},
        {R"({"sensors": [{"name": "x", "width_mm": "1", "height_mm": 1}]})",
         "/sensors/0/width_mm: expected a number, found a string"},
        {R"({"sensors": [{"name": "x", "width_mm": -36, "height_mm": 24}]})",
         "/sensors/0/width_mm: -36 is out of range: more than 0, at most 200"},
        {R"({"sensors": [{"name": "x", "width_mm": 0, "height_mm": 24}]})",
         "/sensors/0/width_mm: 0 is out of range: more than 0, at most 200"},
        {R"({"sensors": [{"name": "x", "width_mm": 1e400, "height_mm": 24}]})",
         "/sensors/0/width_mm: the number 1e400 is too large or too small to be held"},
        {R"({"sensors": [{"name": "x", "width_mm": NaN, "height_mm": 24}]})",
         "/sensors/0/width_mm: expected a value, found 'N'"},
        {R"({"supports": [{"name": "x", "footprint_radius_m": 1, "height_min_m": 1,
            "height_max_m": 2, "column_radius_m": 0.1, "for_camera": "yes"}]})",
         "/supports/0/for_camera: expected true or false, found a string"},
        {R"({"filters": [{"name": "x", "kind": "colour", "transmission": 0}]})",
         "/filters/0/transmission: 0 is out of range: more than 0, at most 1"},
        {R"({"filters": [{"name": "x", "kind": "diffusion", "transmission": 1, "spread": 0.5}]})",
         "/filters/0/spread: 0.5 is out of range: at least 1, at most 20"},
        {R"({"filters": [{"name": "x", "kind": "difusion", "transmission": 1}]})",
         "/filters/0/kind: \"difusion\" is not known; did you mean \"diffusion\"?"},
        {R"({"filters": [{"name": "x", "kind": "q", "transmission": 1}]})",
         "/filters/0/kind: \"q\" is none of: conversion, colour, diffusion, neutral"},
        {R"({"landmarks": [{"name": "eye", "share_of_stature": 1.01}]})",
         "/landmarks/0/share_of_stature: 1.01 is out of range: more than 0, at most 1"},
    });
}

TEST(BadTables, RowsThatContradictThemselvesAreRefused) {
    const std::string wider =
        "the field angle (to 10 %) must be wider than the beam angle (to 50 %)";
    const std::string face = "\"face_height_mm\": 5, ";
    expect_refused({
        {lamp_with(face + R"("spot_peak_cd": 9, "spot_beam_deg": 20, "spot_field_deg": 20)"),
         "/instruments/0/spot_field_deg: " + wider},
        {lamp_with(face + R"("spot_peak_cd": 9, "spot_beam_deg": 10, "spot_field_deg": 20,
            "flood_peak_cd": 9, "flood_beam_deg": 50, "flood_field_deg": 40)"),
         "/instruments/0/flood_field_deg: " + wider},
        {lamp_with(face + R"("spot_peak_cd": 9, "spot_beam_deg": 10, "spot_field_deg": 20,
            "flood_peak_cd": 9, "flood_beam_deg": 5, "flood_field_deg": 40)"),
         "/instruments/0/flood_beam_deg: the flood beam is narrower than the spot beam"},
        {lamp_with(face + R"("spot_peak_cd": 9, "spot_beam_deg": 10, "spot_field_deg": 20,
            "flood_beam_deg": 50)"),
         "/instruments/0: the key \"flood_peak_cd\" is missing"},
        {lamp_with(R"("face_height_mm": 4, "spot_peak_cd": 9, "spot_beam_deg": 10,
            "spot_field_deg": 20)"),
         "/instruments/0/face_height_mm: a round face is as high as it is wide"},
        {lens_with(R"("focal_min_mm": 50, "focal_max_mm": 35, "stop_wide": 2, "stop_long": 2)"),
         "/lenses/0/focal_max_mm: the longest focal length is shorter than the shortest"},
        {lens_with(R"("focal_min_mm": 35, "focal_max_mm": 50, "stop_wide": 4, "stop_long": 2)"),
         "/lenses/0/stop_long: the widest stop at the long end is faster than at the wide end"},
        {R"({"papers": [{"name": "x", "family": "iso", "width_mm": 297, "height_mm": 210}]})",
         "/papers/0/width_mm: papers are entered upright: the width may not exceed the height"},
        {R"({"filters": [{"name": "x", "kind": "neutral", "transmission": 1, "mired_shift": 9}]})",
         "/filters/0/mired_shift: a neutral filter shifts no colour"},
        {R"({"stock": [{"name": "x", "use": "seat", "shape": "box", "width_m": 1, "depth_m": 1,
            "height_m": 1, "seat_height_m": 1.2, "mass_kg": 1}]})",
         "/stock/0/seat_height_m: the seat is higher than the whole item"},
        {R"({"stock": [{"name": "x", "use": "seat", "shape": "round", "width_m": 1, "depth_m": 2,
            "height_m": 1, "mass_kg": 1}]})",
         "/stock/0/depth_m: a round item is as deep as it is wide"},
    });
}

TEST(BadTables, OneNameTwiceInAFileIsRefusedHoweverItIsSpelt) {
    expect_refused({{R"({"finishes": [{"name": "Pale  Grey", "reflectance": 0.5},
        {"name": "pale grey", "reflectance": 0.5}]})",
                     "/finishes/1/name: the name \"pale grey\" is used twice, before in line 1"}});
}

TEST(BadTables, AFolderReportsTheFaultsOfAllItsFiles) {
    const TemporaryFolder folder;
    std::filesystem::copy(source_tables(), folder.path(), std::filesystem::copy_options::recursive);
    ASSERT_TRUE(load_catalogue(folder.path()));
    folder.write("papers.json", R"({"papers": [], "scales": []})");
    folder.write("finishes.json", R"({"finishes": [{"name": "x", "reflectance": 0.5}]})");
    folder.write("sensors.json", "{");
    std::filesystem::remove(folder.path() / "filters.json");
    const Checked<Catalogue> loaded = load_catalogue(folder.path());
    ASSERT_FALSE(loaded);
    ASSERT_EQ(loaded.error().size(), 4U) << lines_of(loaded.error());
    const auto names = [&](std::size_t which, const char* file) {
        return text_of(loaded.error()[which]).find(file) != std::string::npos;
    };
    EXPECT_TRUE(names(0, "sensors.json:1:2"));
    EXPECT_TRUE(names(1, "filters.json"));
    EXPECT_TRUE(names(2, "finishes.json:1"));
    EXPECT_TRUE(names(3, "papers.json:1"));
    EXPECT_EQ(loaded.error()[2].message, "the key \"source\" is missing");
    EXPECT_EQ(loaded.error()[3].message, "this file holds the table \"papers\" only");
}

TEST(BadTables, TablesWithoutALandmarkOfTheFigureAreRefused) {
    const TemporaryFolder folder;
    std::filesystem::copy(source_tables(), folder.path(), std::filesystem::copy_options::recursive);
    folder.write(
        "landmarks.json",
        R"({"landmarks": [{"name": "eye", "share_of_stature": 0.93, "source": "x y z"}]})");
    const Checked<Catalogue> loaded = load_catalogue(folder.path());
    ASSERT_FALSE(loaded);
    EXPECT_EQ(loaded.error().size(), kLandmarks.size() - 1);
    EXPECT_EQ(loaded.error().front().message, "the landmark \"chin\" is missing");
}

TEST(BadTables, EveryTruncationOfARealTableIsRefused) {
    const TemporaryFolder folder;
    const std::string whole =
        R"({"papers": [{"name": "x", "family": "iso", "width_mm": 21, "height_mm": 29.7}]})";
    ASSERT_TRUE(with_own_items({}, folder.write("own.json", whole)));
    for (std::size_t length = 0; length < whole.size(); ++length) {
        EXPECT_FALSE(with_own_items({}, folder.write("own.json", whole.substr(0, length))));
    }
}

TEST(BadTables, AFileAboveTheCapIsRefusedUnread) {
    const TemporaryFolder folder;
    const auto file = folder.write("own.json", "{}");
    std::filesystem::resize_file(file, std::uintmax_t{200} * 1024 * 1024);
    const Checked<Catalogue> result = with_own_items({}, file);
    ASSERT_FALSE(result);
    EXPECT_EQ(result.error().size(), 1U);
    EXPECT_NE(text_of(result.error().front()).find(file.string()), std::string::npos);
}

TEST(BadTables, OfVeryManyErrorsTheFirstAreTold) {
    const TemporaryFolder folder;
    const auto times = [](const std::string& text, int count) {
        std::string all;
        for (int i = 0; i < count; ++i) {
            all += fmt::format(fmt::runtime(text), i);
        }
        return all;
    };
    for (const std::string& text :
         {"{\"lenses\": [{" + times("\"key {}\": 0,", 100'000) + "\"name\": \"x\"}]}",
          "{\"lenses\": [" + times("{{\"name\": \"{}\"}},", 100'000) + "{}]}",
          fmt::format("{{{}\"lenses\": []}}", times("\"table {}\": [],", 100'000))}) {
        const Checked<Catalogue> result = with_own_items({}, folder.write("own.json", text));
        ASSERT_FALSE(result);
        EXPECT_EQ(result.error().size(), kMostTableErrors + 1);
        EXPECT_EQ(result.error().back().message, "there are more errors than are told here");
    }
}

TEST(BadTables, HugeAndStrangeTextsAreRefusedInFewWords) {
    const TemporaryFolder folder;
    const std::string huge(1'000'000, '7');
    const std::vector<std::string> texts{
        "{\"finishes\": [{\"name\": \"" + huge + "\", \"reflectance\": 0.5}]}",
        "{\"finishes\": [{\"name\": \"a\\nb\", \"reflectance\": 0.5}]}",
        "{\"finishes\": [{\"name\": \"\\u001b[2J\", \"reflectance\": 0.5}]}",
        "{\"finishes\": [{\"name\": \"x\", \"reflectance\": 1." + huge + "}]}",
        "{\"filters\": [{\"name\": \"x\", \"kind\": \"" + huge + "\", \"transmission\": 1}]}"};
    for (const std::string& text : texts) {
        const Checked<Catalogue> result = with_own_items({}, folder.write("own.json", text));
        ASSERT_FALSE(result) << text.substr(0, 60);
        EXPECT_LT(lines_of(result.error()).size(), 1000U) << text.substr(0, 60);
    }
}
