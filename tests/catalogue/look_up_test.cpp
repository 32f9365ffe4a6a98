#include "catalogue/catalogue.h"

#include <gtest/gtest.h>
#include <stdexcept>

using namespace throwline;
using namespace throwline::catalogue;

namespace {

Catalogue made_by_hand() {
    Catalogue catalogue;
    catalogue.finishes = {{"Pale Grey", 0.5, "test"}, {"pale grey", 0.6, "test"}};
    catalogue.landmarks = {{"eye", 0.93, "test"}};
    SensorMode mode;
    mode.name = "3 by 4";
    mode.width = Length::millimetres(3.0);
    mode.height = Length::millimetres(4.0);
    catalogue.sensors = {mode};
    return catalogue;
}

} // namespace

TEST(LookUp, PrefersTheExactName) {
    const Catalogue catalogue = made_by_hand();
    EXPECT_DOUBLE_EQ(catalogue.finish("pale grey")->reflectance, 0.6);
    EXPECT_DOUBLE_EQ(catalogue.finish("Pale Grey")->reflectance, 0.5);
}

TEST(LookUp, ForgivesCaseAndSpaces) {
    const Catalogue catalogue = made_by_hand();
    ASSERT_NE(catalogue.finish("  PALE \t grey "), nullptr);
    EXPECT_DOUBLE_EQ(catalogue.finish("  PALE \t grey ")->reflectance, 0.5);
    EXPECT_NE(catalogue.sensor("3 BY 4"), nullptr);
}

TEST(LookUp, FindsNothingUnderAnotherName) {
    const Catalogue catalogue = made_by_hand();
    EXPECT_EQ(catalogue.finish("palegrey"), nullptr);
    EXPECT_EQ(catalogue.finish(""), nullptr);
    EXPECT_EQ(catalogue.lens("3 by 4"), nullptr);
    EXPECT_EQ(catalogue.instrument("3 by 4"), nullptr);
    EXPECT_EQ(catalogue.filter("3 by 4"), nullptr);
    EXPECT_EQ(catalogue.stock_item("3 by 4"), nullptr);
    EXPECT_EQ(catalogue.support("3 by 4"), nullptr);
    EXPECT_EQ(catalogue.paper("3 by 4"), nullptr);
}

TEST(LookUp, AMissingLandmarkIsABug) {
    const Catalogue catalogue = made_by_hand();
    EXPECT_DOUBLE_EQ(catalogue.landmark("eye"), 0.93);
    EXPECT_THROW(static_cast<void>(catalogue.landmark("tail")), std::logic_error);
}

TEST(LookUp, DiagonalIsByPythagoras) {
    EXPECT_DOUBLE_EQ(made_by_hand().sensor("3 by 4")->diagonal().mm(), 5.0);
}
