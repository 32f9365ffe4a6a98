#include "catalogue/shipped.h"
#include "support/number.h"

#include <algorithm>
#include <cmath>
#include <set>

using namespace throwline;
using namespace throwline::catalogue;

namespace {

class ShippedTables : public testing::Test {
  protected:
    Catalogue shipped = shipped_catalogue();
};

template <class Row>
void expect_sourced_and_unique(const std::vector<Row>& rows, std::size_t at_least) {
    EXPECT_GE(rows.size(), at_least);
    std::set<std::string> names;
    for (const Row& row : rows) {
        EXPECT_GE(row.source.size(), 5U) << row.name;
        EXPECT_TRUE(names.insert(row.name).second) << row.name;
    }
}

double largest_circle_mm(const std::vector<Lens>& lenses, double squeeze) {
    double largest = 0.0;
    for (const Lens& lens : lenses) {
        largest = lens.squeeze == squeeze ? std::max(largest, lens.image_circle.mm()) : largest;
    }
    return largest;
}

} // namespace

TEST_F(ShippedTables, HoldEnoughRowsEachWithASource) {
    expect_sourced_and_unique(shipped.sensors, 24);
    expect_sourced_and_unique(shipped.lenses, 30);
    expect_sourced_and_unique(shipped.instruments, 40);
    expect_sourced_and_unique(shipped.filters, 40);
    expect_sourced_and_unique(shipped.stock, 50);
    expect_sourced_and_unique(shipped.supports, 12);
    expect_sourced_and_unique(shipped.landmarks, kLandmarks.size());
    expect_sourced_and_unique(shipped.finishes, 12);
    expect_sourced_and_unique(shipped.papers, 18);
    expect_sourced_and_unique(shipped.scales, 20);
}

TEST_F(ShippedTables, FurnitureAloneIsFiftyPieces) {
    const auto furniture =
        std::count_if(shipped.stock.begin(), shipped.stock.end(), [](const StockItem& item) {
            return item.use == StockUse::seat || item.use == StockUse::table
                   || item.use == StockUse::storage || item.use == StockUse::bed
                   || item.use == StockUse::appliance;
        });
    EXPECT_GE(furniture, 50);
}

TEST_F(ShippedTables, HoldWhatPlansNameMostOften) {
    EXPECT_NE(shipped.sensor("2/3-type 16:9"), nullptr);
    EXPECT_NE(shipped.sensor("super 35 16:9"), nullptr);
    EXPECT_NE(shipped.lens("field zoom 18x"), nullptr);
    EXPECT_NE(shipped.lens("prime 35 T1.5"), nullptr);
    EXPECT_NE(shipped.support("pedestal"), nullptr);
    EXPECT_NE(shipped.instrument("Fresnel 1 kW"), nullptr);
    EXPECT_NE(shipped.instrument("LED panel 60x30 soft"), nullptr);
    EXPECT_NE(shipped.filter("quarter blue"), nullptr);
    EXPECT_NE(shipped.stock_item("work table 6x2.5"), nullptr);
    EXPECT_NE(shipped.stock_item("stool"), nullptr);
    EXPECT_NE(shipped.finish("black drape"), nullptr);
    EXPECT_NE(shipped.finish("pale grey"), nullptr);
    EXPECT_NE(shipped.paper("A3"), nullptr);
    EXPECT_NE(shipped.paper("arch D"), nullptr);
}

TEST_F(ShippedTables, EverySensorHasALensThatCoversIt) {
    for (const SensorMode& mode : shipped.sensors) {
        EXPECT_GE(largest_circle_mm(shipped.lenses, mode.squeeze), mode.diagonal().mm())
            << mode.name;
    }
}

TEST_F(ShippedTables, CircleOfConfusionFollowsTheDiagonal) {
    // Diagonals and circles as listed for the formats, to the digits given there.
    EXPECT_NEAR(shipped.sensor("36x24")->circle_of_confusion.mm(), 0.0288, 5e-5);
    EXPECT_NEAR(shipped.sensor("2/3-type 16:9")->circle_of_confusion.mm(), 0.0073, 5e-5);
    EXPECT_NEAR(shipped.sensor("Super 35 4-perf")->diagonal().mm(), 31.11, 0.005);
    EXPECT_NEAR(shipped.sensor("65 mm 5-perf")->diagonal().mm(), 57.44, 0.005);
}

TEST_F(ShippedTables, CropsHaveTheShapeTheyAreNamedAfter) {
    const auto shape = [this](std::string_view name) {
        const SensorMode* mode = shipped.sensor(name);
        return mode->squeeze * (mode->width / mode->height);
    };
    EXPECT_NEAR(shape("2/3-type 2.39 crop"), 2.39, 0.005);
    EXPECT_NEAR(shape("36x24 1.85 crop"), 1.85, 0.005);
    EXPECT_NEAR(shape("Super 35 9:16 crop"), 9.0 / 16.0, 0.005);
    EXPECT_NEAR(shape("35 mm anamorphic 2x"), 2.3656, 0.0005);
    EXPECT_NEAR(shape("35 mm anamorphic 1.8x"), 2.4, 0.0005);
}

TEST_F(ShippedTables, ZoomRatioOfTheNameIsThatOfTheLens) {
    for (const Lens& lens : shipped.lenses) {
        const std::size_t space = lens.name.rfind(' ');
        if (lens.name.back() != 'x' || space == std::string::npos) {
            continue;
        }
        const double named = support::number_at_start(lens.name.substr(space + 1));
        EXPECT_NEAR(lens.focal_max / lens.focal_min, named, 0.06 * named) << lens.name;
    }
    EXPECT_DOUBLE_EQ(shipped.lens("field zoom 18x")->extender, 2.0);
}

TEST_F(ShippedTables, LensesAreBiggerThanTheirOpening) {
    for (const Lens& lens : shipped.lenses) {
        // The entrance pupil f / T cannot be wider than the glass in front of it.
        EXPECT_LE(lens.focal_min.mm() / lens.stop_wide, lens.front_diameter.mm()) << lens.name;
        EXPECT_LE(lens.focal_max.mm() / lens.stop_long, lens.front_diameter.mm()) << lens.name;
        EXPECT_GT(lens.close_focus, lens.length * 0.5) << lens.name;
    }
}

TEST_F(ShippedTables, NeutralFiltersPassTenToTheMinusDensity) {
    EXPECT_NEAR(shipped.filter("ND 0.3")->transmission, std::pow(10.0, -0.3), 5e-5);
    EXPECT_NEAR(shipped.filter("ND 1.2")->transmission, std::pow(10.0, -1.2), 5e-5);
    EXPECT_DOUBLE_EQ(shipped.filter("full blue")->mired_shift, -137.0);
    EXPECT_DOUBLE_EQ(shipped.filter("half orange")->mired_shift, 109.0);
}

TEST_F(ShippedTables, StrongerFiltersPassLess) {
    const auto passes = [this](std::string_view name) {
        return shipped.filter(name)->transmission;
    };
    for (const char* const series : {"blue", "orange", "plus green", "minus green"}) {
        double last = 0.0;
        for (const char* const strength : {"full ", "half ", "quarter ", "eighth "}) {
            const double now = passes(std::string{strength} + series);
            EXPECT_GT(now, last) << strength << series;
            last = now;
        }
    }
    EXPECT_GT(passes("light diffusion"), passes("medium diffusion"));
    EXPECT_GT(passes("medium diffusion"), passes("heavy diffusion"));
}

TEST_F(ShippedTables, LandmarksRiseFromAnkleToEye) {
    double below = 0.0;
    for (const char* const name :
         {"ankle", "knee", "mid_thigh", "crotch", "wrist", "hip", "waist", "chest", "suprasternale",
          "acromion", "cervicale", "chin", "eye"}) {
        EXPECT_GT(shipped.landmark(name), below) << name;
        below = shipped.landmark(name);
    }
    // A seated person's eyes on a fitting seat: 1.24 m for 1.7562 m, 1.14 m for 1.6285 m.
    const double seated = shipped.landmark("popliteal") + shipped.landmark("sitting_eye_height");
    EXPECT_NEAR(seated * 1.7562, 1.24, 0.015);
    EXPECT_NEAR(seated * 1.6285, 1.14, 0.015);
}

TEST_F(ShippedTables, StockCanStandInAStudio) {
    for (const StockItem& item : shipped.stock) {
        EXPECT_LE(item.height.m(), 4.0) << item.name;
        EXPECT_LE(std::max(item.width.m(), item.depth.m()), 3.0) << item.name;
        EXPECT_LT(item.mass_kg, 400.0) << item.name;
        EXPECT_TRUE(item.use != StockUse::seat || item.seat_height.m() >= 0.35) << item.name;
        EXPECT_TRUE(item.shape != StockShape::round || item.width == item.depth) << item.name;
    }
    EXPECT_NEAR(shipped.stock_item("flat 4x10 ft")->width.ft(), 4.0, 1e-3);
    EXPECT_NEAR(shipped.stock_item("flat 4x10 ft")->height.ft(), 10.0, 1e-3);
    EXPECT_NEAR(shipped.stock_item("work table 6x2.5")->depth.ft(), 2.5, 1e-3);
}

TEST_F(ShippedTables, LampStandsAndCameraSupportsAreKeptApart) {
    EXPECT_TRUE(shipped.support("tripod")->for_camera);
    EXPECT_FALSE(shipped.support("grip stand")->for_camera);
    EXPECT_FALSE(shipped.support("tall light stand")->for_camera);
}

TEST_F(ShippedTables, ScalesAndSheetsAreTheStandardOnes) {
    const auto ratio = [this](std::string_view name) {
        const auto found = std::find_if(shipped.scales.begin(), shipped.scales.end(),
                                        [&](const DrawingScale& s) { return s.name == name; });
        return found == shipped.scales.end() ? 0.0 : found->ratio;
    };
    EXPECT_DOUBLE_EQ(ratio("1/4 in = 1 ft"), 48.0);
    EXPECT_DOUBLE_EQ(ratio("1-1/2 in = 1 ft"), 8.0);
    EXPECT_DOUBLE_EQ(ratio("1:50"), 50.0);
    for (const DrawingScale& scale : shipped.scales) {
        const bool extra = scale.name == "1:25" || scale.name == "1:250";
        EXPECT_EQ(scale.standard, !extra) << scale.name;
    }
    EXPECT_DOUBLE_EQ(shipped.paper("A0")->height.mm(), 1189.0);
    EXPECT_DOUBLE_EQ(shipped.paper("tabloid")->height.in(), 17.0);
    EXPECT_DOUBLE_EQ(shipped.paper("ansi E")->width.in(), 34.0);
}
