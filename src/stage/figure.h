#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"
#include "stage/solid.h"

namespace throwline::stage {

/// A person on a mark: the points that checks ask about, and the body.
struct Figure {
    plan::Id<plan::Person> person;
    plan::PersonKind kind = plan::PersonKind::cast;
    plan::Pose pose = plan::Pose::stand;
    Length stature;
    /// Anticlockwise from +x.
    Angle facing;
    /// Under the middle of the body, at the height of the soles.
    Vec3 base = Vec3::Zero();
    Vec3 crown = Vec3::Zero();
    /// Between the eyes, on the face.
    Vec3 eyes = Vec3::Zero();
    Vec3 left_eye = Vec3::Zero();
    Vec3 right_eye = Vec3::Zero();
    Vec3 chin = Vec3::Zero();
    /// Middle of the face, on its surface: where a level on the face is taken.
    Vec3 face = Vec3::Zero();
    Vec3 chest = Vec3::Zero();
    /// Index into Stage::owners; set by the stage.
    int owner = -1;

    /// Height of a standing landmark (share of stature) carried into this pose, above the floor:
    /// what a frame's lower edge "cuts at the chest" means for somebody who sits.
    double landmark_z_m(double share_of_stature) const;
    /// Of what the soles stand on, or the body lies on, above the floor.
    double soles_z_m = 0.0;
    /// How far the upper body is lowered against standing, metres.
    double lowered_m = 0.0;
    /// Height of the seat of the standing body, share of stature.
    double seat_share = 0.0;
};

/// The body of a figure, part by part.
struct FigurePart {
    Part part = Part::torso;
    Mesh mesh;
};

struct Body {
    Figure figure;
    std::vector<FigurePart> parts;
};

/// Raises a person on a mark. Heights and breadths are shares of stature from the catalogue's
/// landmarks (ANSUR II means). `seat_z_m` and `soles_z_m` are above the floor; `facing` is
/// resolved.
Body raise_figure(const plan::Person& person, const plan::Mark& mark, Angle facing,
                  double soles_z_m, double seat_z_m, const catalogue::Catalogue& catalogue);

/// Height of the seat above the soles that fits a person (popliteal height).
double fitting_seat_m(Length stature, const catalogue::Catalogue& catalogue);

} // namespace throwline::stage
