#include "ui/floor/floor_painter.h"

#include "support/small_plan.h"
#include "ui/desk_case.h"
#include "ui/floor/carried_item.h"

#include <QMimeData>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

PictureWanted wanted(double mm_per_m = 10.0) {
    PictureWanted made;
    made.plan = std::make_shared<const plan::Plan>(testing_support::bare_room());
    made.catalogue = support::shared_catalogue();
    made.now.beat = {"1"};
    made.mm_per_m = mm_per_m;
    made.window = {-20.0, -100.0, 140.0, 120.0};
    return made;
}

TEST(FloorPicture, TheNewestQuestionIsAnswered) {
    FloorPicture picture;
    for (const double mm_per_m : {5.0, 6.0, 7.0, 8.0}) {
        picture.ask(wanted(mm_per_m), false);
    }
    ASSERT_TRUE(support::came_to([&] { return !picture.is_busy(); }));
    EXPECT_EQ(picture.latest()->of.mm_per_m, 8.0);
}

TEST(FloorPicture, WhatIsStoppedIsNotShown) {
    FloorPicture picture;
    std::vector<double> shown;
    QObject::connect(&picture, &FloorPicture::arrived, &picture,
                     [&] { shown.push_back(picture.latest()->of.mm_per_m); });
    picture.ask(wanted(5.0), true);
    picture.ask(wanted(6.0), true);
    ASSERT_TRUE(support::came_to([&] { return !picture.is_busy(); }));
    EXPECT_EQ(shown, std::vector<double>{6.0});
}

TEST(FloorPicture, HasDevicePixelsEnoughForTheScreen) {
    PictureWanted twice = wanted();
    twice.device_pixel_ratio = 2.0;
    const std::optional<QImage> plain = painted_floor(wanted(), {});
    const std::optional<QImage> fine = painted_floor(twice, {});
    ASSERT_TRUE(plain && fine);
    EXPECT_NEAR(fine->width(), 2 * plain->width(), 2);
    EXPECT_EQ(fine->devicePixelRatio(), 2.0);
}

TEST(FloorPicture, LiesOnTheGroundOfItsTheme) {
    for (const Theme theme : {Theme::light, Theme::dark}) {
        PictureWanted of = wanted();
        of.theme = theme;
        const std::optional<QImage> image = painted_floor(of, {});
        ASSERT_TRUE(image);
        EXPECT_EQ(image->pixelColor(1, 1), floor_ground(theme));
    }
}

TEST(FloorPicture, IsNotMadeWhenStoppedBeforehand) {
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(painted_floor(wanted(), stop.get_token()));
}

TEST(ThickenLines, NoLineIsThinnerThanAsked) {
    sheet::Drawing drawing;
    sheet::Path fine;
    fine.pen.width_mm = 0.1;
    sheet::Circle thick;
    thick.pen.width_mm = 0.5;
    sheet::Path without;
    without.pen.width_mm = 0.0;
    drawing.layers.push_back({"", {fine, thick, without}, Vec2::Zero()});
    thicken_lines(drawing, 0.26);
    const std::vector<sheet::Mark>& marks = drawing.layers.front().marks;
    EXPECT_EQ(std::get<sheet::Path>(marks[0]).pen.width_mm, 0.26);
    EXPECT_EQ(std::get<sheet::Circle>(marks[1]).pen.width_mm, 0.5);
    EXPECT_EQ(std::get<sheet::Path>(marks[2]).pen.width_mm, 0.0);
}

TEST(CarriedItem, IsReadFromItsJsonOnly) {
    QMimeData data;
    EXPECT_FALSE(carried_item(data));
    data.setData(item_mime_type(), R"({"shelf": "lamp", "item": "Fresnel 650 W"})");
    ASSERT_TRUE(carried_item(data));
    EXPECT_EQ(carried_item(data)->shelf, edit::Shelf::lamp);
    EXPECT_EQ(carried_item(data)->item, "Fresnel 650 W");
    data.setData(item_mime_type(), R"({"shelf": "cellar"})");
    EXPECT_FALSE(carried_item(data));
    data.setData(item_mime_type(), "no json");
    EXPECT_FALSE(carried_item(data));
}

} // namespace
} // namespace throwline::ui
