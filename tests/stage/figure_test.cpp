#include "stage/figure.h"

#include "stage/mesh.h"
#include "stage/rays.h"
#include "support/shipped_catalogue.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>

namespace throwline::stage {
namespace {

constexpr double kOneCentimetre_m = 0.01;

const catalogue::Catalogue& shared_catalogue() {
    static const catalogue::Catalogue catalogue = testing_support::shipped_catalogue();
    return catalogue;
}

Body raised_body(double stature_m, plan::Pose pose, double facing_deg = 0.0, double soles_z_m = 0.0,
                 double seat_z_m = 0.45) {
    plan::Person person;
    person.id = {"potter"};
    person.stature = Length::metres(stature_m);
    plan::Mark mark;
    mark.at = {2.0, 3.0};
    mark.pose = pose;
    return raise_figure(person, mark, Angle::degrees(facing_deg), soles_z_m, seat_z_m,
                        shared_catalogue());
}

struct Span {
    Vec3 low = Vec3::Constant(1e9);
    Vec3 high = Vec3::Constant(-1e9);
};
Span span_of(const Body& body) {
    Span span;
    for (const FigurePart& part : body.parts) {
        for (const Vec3& vertex : part.mesh.vertices) {
            span.low = span.low.cwiseMin(vertex);
            span.high = span.high.cwiseMax(vertex);
        }
    }
    return span;
}

/// Area of the silhouette by part, from far in front, by counting rays.
std::map<Part, double> silhouette_m2(const Body& body, const Vec3& from_side) {
    std::vector<Solid> solids;
    for (const FigurePart& part : body.parts) {
        Solid solid;
        solid.part = part.part;
        solid.mesh = part.mesh;
        solids.push_back(solid);
    }
    const RayScene scene{solids};
    constexpr double kStep_m = 0.004;
    const Vec3 across = from_side.cross(Vec3::UnitZ());
    std::map<Part, double> areas;
    for (double z = kStep_m / 2; z < 2.2; z += kStep_m) {
        for (double x = -0.6; x < 0.6; x += kStep_m) {
            const Vec3 from = raised(floor_of(body.figure.base), z) + 5.0 * from_side + x * across;
            if (const auto hit = scene.nearest_hit(from, -from_side, 10.0)) {
                areas[solids[static_cast<std::size_t>(hit->solid)].part] += kStep_m * kStep_m;
            }
        }
    }
    return areas;
}

TEST(Figure, LandmarksOfAStandingPersonAreSharesOfStature) {
    const Figure figure = raised_body(1.70, plan::Pose::stand, 30.0, 0.2).figure;
    EXPECT_NEAR(figure.crown.z(), 0.2 + 1.70, 1e-9);
    EXPECT_NEAR(figure.eyes.z(), 0.2 + 0.934 * 1.70, kOneCentimetre_m);
    EXPECT_NEAR(figure.chin.z(), 0.2 + 0.864 * 1.70, kOneCentimetre_m);
    EXPECT_NEAR(figure.chest.z(), 0.2 + 0.727 * 1.70, kOneCentimetre_m);
    EXPECT_NEAR(figure.landmark_z_m(0.602), 0.2 + 0.602 * 1.70, 1e-9);
    EXPECT_NEAR((figure.left_eye - figure.right_eye).norm(), 0.063, 0.003);
}

TEST(Figure, TheFaceLooksTheWayThePersonFaces) {
    for (const double facing_deg : {0.0, 90.0, -135.0}) {
        const Figure figure = raised_body(1.80, plan::Pose::stand, facing_deg).figure;
        const Vec2 forward = unit_at(Angle::degrees(facing_deg).rad());
        for (const Vec3& point : {figure.eyes, figure.face, figure.chin, figure.chest}) {
            const Vec2 offset = floor_of(Vec3{point - figure.base});
            EXPECT_GT(offset.dot(forward), 0.05);
            EXPECT_NEAR(cross(forward, offset), 0.0, 1e-9);
        }
        const Vec2 left = floor_of(Vec3{figure.left_eye - figure.right_eye});
        EXPECT_GT(cross(forward, left), 0.0);
    }
}

TEST(Figure, ABodyIsClosedPartByPartAndAsTallAsThePerson) {
    for (const plan::Pose pose :
         {plan::Pose::stand, plan::Pose::sit, plan::Pose::lie, plan::Pose::crouch}) {
        const Body body = raised_body(1.75, pose, 20.0);
        EXPECT_EQ(body.parts.size(), 6U);
        for (const FigurePart& part : body.parts) {
            EXPECT_TRUE(is_closed(part.mesh)) << name_of(part.part);
            EXPECT_GT(volume_m3(part.mesh), 0.0) << name_of(part.part);
        }
        EXPECT_GE(span_of(body).low.z(), -1e-9);
    }
    const Span standing = span_of(raised_body(1.75, plan::Pose::stand));
    EXPECT_NEAR(standing.high.z(), 1.75, 1e-6);
    EXPECT_NEAR(standing.low.z(), 0.0, 1e-9);
    // Facing +x: breadth across the shoulders lies along y.
    EXPECT_NEAR(standing.high.y() - standing.low.y(), 0.284 * 1.75, kOneCentimetre_m);
}

// Silhouette of a standing person: .21113 of stature squared; legs 47.2 %, torso with arms 45.6 %,
// neck 1.5 %, head 5.7 % (strips between ANSUR II landmarks).
TEST(Figure, TheSilhouetteHasTheAreaOfAPerson) {
    const Body body = raised_body(1.70, plan::Pose::stand, 0.0);
    std::map<Part, double> areas = silhouette_m2(body, Vec3::UnitX());
    const double whole = 0.21113 * 1.70 * 1.70;
    double sum = 0.0;
    for (const auto& [part, area] : areas) {
        sum += area;
    }
    EXPECT_NEAR(sum, whole, 0.1 * whole);
    EXPECT_NEAR(areas[Part::legs] + areas[Part::feet], 0.472 * whole, 0.1 * 0.472 * whole);
    EXPECT_NEAR(areas[Part::torso] + areas[Part::arms], 0.456 * whole, 0.1 * 0.456 * whole);
    EXPECT_NEAR(areas[Part::head], 0.057 * whole, 0.1 * 0.057 * whole);
    EXPECT_NEAR(areas[Part::neck], 0.015 * whole, 0.3 * 0.015 * whole);
}

TEST(Figure, WhoSitsHasEyesAtSittingEyeHeightAboveTheSeat) {
    // ANSUR II: sitting eye height 805 mm for men of 1756.2 mm, 748 mm for women of 1628.5 mm.
    EXPECT_NEAR(raised_body(1.7562, plan::Pose::sit, 0, 0, 0.45).figure.eyes.z(), 0.45 + 0.805,
                0.01);
    EXPECT_NEAR(raised_body(1.6285, plan::Pose::sit, 0, 0, 0.45).figure.eyes.z(), 0.45 + 0.748,
                0.01);
    EXPECT_NEAR(raised_body(1.7562, plan::Pose::sit, 0, 0, 0.45).figure.crown.z(), 0.45 + 0.918,
                0.01);
}

TEST(Figure, WhoSitsReachesForwardWithThighsAndDownWithShins) {
    const Body body = raised_body(1.70, plan::Pose::sit, 90.0, 0.0, 0.45);
    const Span span = span_of(body);
    EXPECT_NEAR(span.low.z(), 0.0, 0.02);
    // Facing +y from y = 3: buttock to knee is about .35 of stature, most of it in front.
    EXPECT_GT(span.high.y(), 3.0 + 0.25 * 1.70);
    EXPECT_LT(span.high.y(), 3.0 + 0.40 * 1.70);
    // On a bar stool the feet hang.
    EXPECT_GT(span_of(raised_body(1.70, plan::Pose::sit, 90.0, 0.0, 0.75)).low.z(), 0.05);
}

TEST(Figure, WhoLiesIsLongAndLowWithTheFaceUp) {
    const Body body = raised_body(1.70, plan::Pose::lie, 0.0, 0.0, 0.5);
    const Span span = span_of(body);
    EXPECT_NEAR(span.high.x() - span.low.x(), 1.70, 0.02);
    EXPECT_NEAR((span.high.x() + span.low.x()) / 2.0, 2.0, 0.02);
    EXPECT_GE(span.low.z(), 0.5 - 1e-9);
    // Toes up: no higher than a foot is long.
    EXPECT_LT(span.high.z(), 0.5 + 0.35);
    EXPECT_GT(body.figure.eyes.z(), 0.5 + 0.1);
    EXPECT_LT(body.figure.crown.x(), body.figure.base.x());
}

TEST(Figure, WhoCrouchesIsLowerThanWhoSits) {
    const double crouched = raised_body(1.70, plan::Pose::crouch).figure.crown.z();
    EXPECT_LT(crouched, raised_body(1.70, plan::Pose::sit).figure.crown.z());
    EXPECT_GT(crouched, 0.5 * 1.70);
}

TEST(Figure, SeatsFitByPoplitealHeight) {
    // ANSUR II: 430 mm for men of 1756.2 mm, 388 mm for women of 1628.5 mm.
    EXPECT_NEAR(fitting_seat_m(Length::metres(1.7562), shared_catalogue()), 0.430, 0.01);
    EXPECT_NEAR(fitting_seat_m(Length::metres(1.6285), shared_catalogue()), 0.388, 0.01);
}

RC_GTEST_PROP(Figure, LandmarksRiseWithTheirShare, ()) {
    const auto pose =
        *rc::gen::element(plan::Pose::stand, plan::Pose::sit, plan::Pose::crouch, plan::Pose::lie);
    const double stature_m = *rc::gen::inRange(100, 210) / 100.0;
    const Figure figure = raised_body(stature_m, pose).figure;
    double below = figure.landmark_z_m(-0.1);
    for (double share = -0.05; share < 1.05; share += 0.05) {
        const double here = figure.landmark_z_m(share);
        RC_ASSERT(here >= below - 1e-12);
        below = here;
    }
}

RC_GTEST_PROP(Figure, TheEyesAreSeenFromStraightAhead, ()) {
    const auto pose = *rc::gen::element(plan::Pose::stand, plan::Pose::sit, plan::Pose::crouch);
    const double stature_m = *rc::gen::inRange(110, 205) / 100.0;
    const double facing_deg = *rc::gen::inRange(-180, 180);
    const Body body = raised_body(stature_m, pose, facing_deg);
    std::vector<Solid> solids;
    for (const FigurePart& part : body.parts) {
        Solid solid;
        solid.mesh = part.mesh;
        solids.push_back(solid);
    }
    const RayScene scene{solids};
    const Vec3 ahead = raised(unit_at(Angle::degrees(facing_deg).rad()), 0.0);
    const Figure& figure = body.figure;
    for (const Vec3& point :
         {figure.eyes, figure.left_eye, figure.right_eye, figure.face, figure.chin, figure.chest}) {
        const bool seen_from_front = !scene.is_blocked({point + 3.0 * ahead, point});
        const bool seen_from_behind = !scene.is_blocked({point - 3.0 * ahead, point});
        RC_ASSERT(seen_from_front);
        RC_ASSERT(!seen_from_behind);
    }
}

} // namespace
} // namespace throwline::stage
