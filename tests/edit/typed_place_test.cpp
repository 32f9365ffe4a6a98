#include "edit/typed_place.h"

#include "base/quantity.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <numbers>
#include <rapidcheck/gtest.h>

namespace throwline::edit {
namespace {

const Vec2 kStart{1.0, 2.0};

/// Where a text leads from the start while the pointer is straight right of it; far away for none.
Vec2 typed_at(std::string_view text, const Vec2& towards = Vec2::UnitX(),
              UnitSystem units = UnitSystem::metric) {
    const Result<Vec2> place = typed_place(text, kStart, kStart + towards, units);
    if (!place) {
        ADD_FAILURE() << text << ": " << place.error().message;
    }
    return place.value_or(Vec2{1e9, 1e9});
}

void expect_near(const Vec2& found, const Vec2& wanted) {
    EXPECT_NEAR(found.x(), wanted.x(), 1e-9);
    EXPECT_NEAR(found.y(), wanted.y(), 1e-9);
}

std::string why_not(std::string_view text, const Vec2& towards = Vec2::UnitX()) {
    const Result<Vec2> place = typed_place(text, kStart, kStart + towards, UnitSystem::metric);
    return place ? std::string{} : place.error().message;
}

Vec2 at_deg(double angle_deg) {
    return unit_at(angle_deg * std::numbers::pi / 180.0);
}

TEST(TypedPlace, LengthGoesTowardsThePointer) {
    expect_near(typed_at("3.2 m"), {4.2, 2.0});
    expect_near(typed_at("3,2 m"), {4.2, 2.0});
    expect_near(typed_at("250 cm", {0.0, -7.0}), {1.0, -0.5});
    expect_near(typed_at("3m 20"), {4.2, 2.0});
}

TEST(TypedPlace, BareNumbersAreOfThePlan) {
    expect_near(typed_at("3"), {4.0, 2.0});
    expect_near(typed_at("10", Vec2::UnitX(), UnitSystem::imperial), {1.0 + 3.048, 2.0});
    expect_near(typed_at("10'6", Vec2::UnitX(), UnitSystem::imperial), {1.0 + 3.2004, 2.0});
}

TEST(TypedPlace, PointerNearlyAtAMultipleOf15DegreesMeansIt) {
    expect_near(typed_at("2 m", at_deg(2.9)), {3.0, 2.0});
    expect_near(typed_at("2 m", at_deg(87.1)), {1.0, 4.0});
    expect_near(typed_at("2 m", at_deg(27.0)), kStart + 2.0 * at_deg(30.0));
    expect_near(typed_at("2 m", at_deg(-178.0)), {-1.0, 2.0});
}

TEST(TypedPlace, PointerBetweenThemMeansItsOwnDirection) {
    expect_near(typed_at("2 m", at_deg(7.0)), kStart + 2.0 * at_deg(7.0));
    expect_near(typed_at("2 m", at_deg(33.5)), kStart + 2.0 * at_deg(33.5));
}

TEST(TypedPlace, DirectionIsAnticlockwiseFromTheRight) {
    expect_near(typed_at("2 m 90°"), {1.0, 4.0});
    expect_near(typed_at("2 m 90deg"), {1.0, 4.0});
    expect_near(typed_at("2 m 90 deg"), {1.0, 4.0});
    expect_near(typed_at("2 at 90"), {1.0, 4.0});
    expect_near(typed_at("2 m at -90"), {1.0, 0.0});
    expect_near(typed_at("2 m at 12° 30'"), kStart + 2.0 * at_deg(12.5));
    expect_near(typed_at("5 7.5°"), kStart + 5.0 * at_deg(7.5));
}

TEST(TypedPlace, DirectionNeedsNoPointer) {
    expect_near(typed_at("2 m at 90", Vec2::Zero()), {1.0, 4.0});
}

TEST(TypedPlace, TwoLengthsGoAcrossAndUp) {
    expect_near(typed_at("2 m, 1.5 m"), {3.0, 3.5});
    expect_near(typed_at("2, 1.5"), {3.0, 3.5});
    expect_near(typed_at("-2; 0"), {-1.0, 2.0});
    expect_near(typed_at("2,5; -1,5"), {3.5, 0.5});
    expect_near(typed_at("6', 3'", Vec2::UnitX(), UnitSystem::imperial),
                {1.0 + 1.8288, 2.0 + 0.9144});
}

TEST(TypedPlace, SaysInASentenceWhatIsWrong) {
    EXPECT_NE(why_not("two metres"), "");
    EXPECT_NE(why_not("2 m at noon"), "");
    EXPECT_NE(why_not("2 m, up"), "");
    EXPECT_NE(why_not("over, 2 m"), "");
    EXPECT_NE(why_not(""), "");
    EXPECT_EQ(why_not("0 m"), "a length is above 0; point the other way instead");
    EXPECT_EQ(why_not("-2 m"), "a length is above 0; point the other way instead");
    EXPECT_EQ(why_not("0, 0"), "that is where the line begins");
    EXPECT_EQ(why_not("2000 m"), "a plan reaches 1000 m from its origin, no farther");
    EXPECT_EQ(why_not("2 m", Vec2::Zero()),
              "point to where the line goes, or type a direction: 2 m at 90");
}

RC_GTEST_PROP(TypedPlace, IsAsFarAwayAsTyped, ()) {
    const double length_m = *rc::gen::inRange(1, 90'000) / 100.0;
    const double pointed_rad = *rc::gen::inRange(0, 62'831) / 10'000.0;
    const Result<Vec2> place = typed_place(fmt::format("{} m", length_m), Vec2::Zero(),
                                           unit_at(pointed_rad), UnitSystem::metric);
    RC_ASSERT(place.has_value());
    RC_ASSERT(std::abs(place->norm() - length_m) < 1e-9);
    // No farther off the pointer than the snap.
    RC_ASSERT(std::abs(wrapped(angle_of(*place) - pointed_rad)) < 3.001 * std::numbers::pi / 180.0);
}

RC_GTEST_PROP(TypedPlace, AnyTextIsAPlaceOrASentence, (const std::string& text)) {
    const Result<Vec2> place = typed_place(text, kStart, Vec2::Zero(), UnitSystem::imperial);
    const bool is_either = place ? place->allFinite() : !place.error().message.empty();
    RC_ASSERT(is_either);
}

} // namespace
} // namespace throwline::edit
