#include "checks/camera_checks.h"
#include "checks/framing.h"
#include "checks/wording.h"
#include "optics/hood.h"
#include "stage/light_at.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Points across and down a bright face.
constexpr int kFacePoints = 5;
/// In front of the face, so that the housing behind it does not hide it.
constexpr double kBeforeFace_m = 0.005;
/// The field of a beam ends where it has fallen to a tenth of its peak (IES meaning).
constexpr double kFieldShare = 0.1;
/// Light from farther off the axis meets the side of the lens.
constexpr Angle kSideways = Angle::degrees(90.0);
/// Where the hood leaves less of the glass lit than this, nothing is said (own choice).
constexpr double kLeastLitGlass = 0.25;

/// What one lamp does to one lens.
struct Glare {
    const stage::PlacedLamp* lamp = nullptr;
    stage::LampLight light;
    /// Share of the bright face that the frame shows.
    double shown_share = 0.0;
    /// Of the lamp off the optical axis.
    Angle off_lens_axis;
    bool practical = false;

    /// Whether the lens stands in the lamp's field, and not behind its barn doors.
    bool is_lit() const {
        return light.intensity_cd >= kFieldShare * lamp->beam.peak_cd && light.passed_share > 0.0;
    }
};

std::vector<Vec3> face_points(const stage::PlacedLamp& lamp) {
    std::vector<Vec3> points;
    for (int row = 0; row < kFacePoints; ++row) {
        for (int column = 0; column < kFacePoints; ++column) {
            const double x = (2.0 * column + 1.0) / kFacePoints - 1.0;
            const double y = (2.0 * row + 1.0) / kFacePoints - 1.0;
            if (!lamp.instrument->round_face || x * x + y * y <= 1.0) {
                points.push_back(lamp.face + lamp.axis * kBeforeFace_m
                                 + lamp.right * (x * lamp.instrument->face_width.m() / 2.0)
                                 + lamp.up * (y * lamp.instrument->face_height.m() / 2.0));
            }
        }
    }
    return points;
}

/// Lanterns and the like shine all round; other faces show only from in front.
bool faces(const stage::PlacedLamp& lamp, const Vec3& point) {
    return lamp.beam.field.deg() >= 180.0 || lamp.axis.dot(point - lamp.face) > 0.0;
}

double shown_share(const ShotScene& scene, const stage::ShotView& view,
                   const stage::PlacedLamp& lamp) {
    if (!faces(lamp, view.pose.lens)) {
        return 0.0;
    }
    const std::vector<Vec3> points = face_points(lamp);
    int shown_points = 0;
    for (const Vec3& point : points) {
        if (view.frame.contains(point)
            && !scene.stage.rays->is_blocked({view.pose.lens, point}, {view.owner, lamp.owner})) {
            ++shown_points;
        }
    }
    return shown_points / static_cast<double>(points.size());
}

bool is_practical(const plan::Plan& plan, const stage::PlacedLamp& lamp) {
    const plan::Lamp* found = plan::find(plan, lamp.lamp);
    return lamp.role == plan::LampRole::practical
           || (found != nullptr && std::holds_alternative<plan::PracticalMount>(found->mount));
}

std::vector<Glare> glares_at(const ShotScene& scene, const stage::ShotView& view,
                             const plan::Plan& plan) {
    std::vector<Glare> glares;
    for (stage::LampLight& light : stage::light_at(scene.stage, view.pose.lens, view.owner)) {
        const stage::PlacedLamp& lamp = scene.stage.lamps[static_cast<std::size_t>(light.lamp)];
        if (lamp.beam.peak_cd <= 0.0) {
            continue;
        }
        Glare& glare = glares.emplace_back();
        glare.lamp = &lamp;
        glare.light = std::move(light);
        glare.shown_share = shown_share(scene, view, *glare.lamp);
        glare.off_lens_axis = Angle::radians(
            std::acos(std::clamp(glare.light.to_lamp.dot(view.frame.axes().forward), -1.0, 1.0)));
        glare.practical = is_practical(plan, *glare.lamp);
    }
    return glares;
}

Finding lamp_finding(const ShotScene& scene, const Glare& glare, Severity severity) {
    Finding finding = finding_in(scene, "into-the-lens", severity);
    finding.things = {glare.lamp->lamp.name, scene.shot->camera.name};
    finding.at = floor_of(glare.lamp->face);
    return finding;
}

std::string place_of(const stage::ShotView& view, const Vec3& point) {
    const std::optional<Vec2> at = view.frame.project(point);
    return at ? place_in_frame(*at) : "edge";
}

Finding in_frame_finding(const ShotScene& scene, const stage::ShotView& view, const Glare& glare) {
    const Severity severity = glare.practical  ? Severity::note
                              : glare.is_lit() ? Severity::error
                                               : Severity::caution;
    Finding finding = lamp_finding(scene, glare, severity);
    finding.weight = glare.shown_share;
    finding.message =
        fmt::format("{} shows {} of its bright face {}, {}{}.", capitalised(said(glare.lamp->lamp)),
                    share_text(glare.shown_share), in_shot(*scene.shot, scene.beat->id),
                    place_of(view, glare.lamp->face),
                    glare.practical  ? ", as part of the set"
                    : glare.is_lit() ? ", and shines into the lens"
                                     : "");
    finding.working = {
        "points of the bright face that are in the frame with nothing in front / all its points",
        {{"", "lens off the lamp's axis", angle_text(glare.light.off_axis)},
         {"", "field angle of the lamp", angle_text(glare.lamp->beam.field)}},
        share_text(glare.shown_share),
        "plain geometry"};
    return finding;
}

/// The hood as deep as it can be for the widest picture of the lens: its opening clears the corner
/// ray from the rim of the front glass. Own model; makers' hoods differ.
optics::Hood hood_of(const stage::ShotView& view) {
    const catalogue::Lens& lens = *view.lens;
    const Length glass = lens.front_diameter / 2.0;
    const double corner = view.sensor->diagonal() / (lens.focal_min * 2.0);
    return {glass + lens.hood_length * corner, lens.hood_length, glass};
}

/// Directions from which light reaches the front glass.
optics::HoodShade shade_of(const stage::ShotView& view) {
    if (view.lens->front_diameter.m() <= 0.0) {
        return {kSideways, kSideways};
    }
    return optics::hood_shade(hood_of(view));
}

/// Share of the glass that the hood leaves lit, taken to fall evenly from where shading begins to
/// where it is complete.
double lit_glass(Angle off_axis, const optics::HoodShade& shade) {
    if (off_axis >= kSideways || off_axis >= shade.complete) {
        return 0.0;
    }
    return off_axis <= shade.begins
               ? 1.0
               : (shade.complete - off_axis).rad() / (shade.complete - shade.begins).rad();
}

Working hood_working(const stage::ShotView& view, const Glare& glare,
                     const optics::HoodShade& shade, UnitSystem units) {
    const optics::Hood hood = hood_of(view);
    return {"light is shaded from atan((R - r) / L) on and kept off beyond atan((R + r) / L)",
            {{"R", "opening of the hood, taken to clear the widest picture",
              focal_text(hood.opening_radius)},
             {"r", "radius of the front glass", focal_text(hood.glass_radius)},
             {"L", "length of the hood", focal_text(hood.length)},
             {"", "shaded from", angle_text(shade.begins)},
             {"", "kept off from", angle_text(shade.complete)},
             {"", "lens off the lamp's axis", angle_text(glare.light.off_axis)},
             {"", "field angle of the lamp", angle_text(glare.lamp->beam.field)},
             {"", "throw to the lens", shown(Length::metres(glare.light.throw_m), units)}},
            angle_text(glare.off_lens_axis) + " off the axis of the lens",
            "plain geometry; the hood is a model of our own"};
}

/// A glass that the hood shades in part is worth a word only, and so is a practical: it is dim and
/// belongs where it is.
std::optional<Finding> flare_finding(const ShotScene& scene, const stage::ShotView& view,
                                     const Glare& glare, UnitSystem units) {
    const optics::HoodShade shade = shade_of(view);
    const double lit = lit_glass(glare.off_lens_axis, shade);
    if (!glare.is_lit() || glare.light.seen_share <= 0.0 || lit < kLeastLitGlass) {
        return std::nullopt;
    }
    const bool part = lit < 1.0;
    const bool minor = part || glare.practical;
    Finding finding = lamp_finding(scene, glare, minor ? Severity::note : Severity::caution);
    finding.weight =
        glare.light.seen_share * lit * (1.0 - glare.off_lens_axis.deg() / kSideways.deg());
    finding.message = fmt::format(
        "{} strikes the front glass of {} {} from outside the frame, {}, {} off its axis; the hood "
        "{} from {} on, so set a flag or close a barn door.",
        capitalised(said(glare.lamp->lamp)), said(scene.shot->camera),
        in_shot(*scene.shot, scene.beat->id), place_of(view, glare.lamp->face),
        angle_text(glare.off_lens_axis),
        part ? "shades it only in part and keeps it off" : "shades",
        angle_text(part ? shade.complete : shade.begins));
    finding.working = hood_working(view, glare, shade, units);
    return finding;
}

} // namespace

std::vector<Finding> into_the_lens(const CheckInput& input, const std::stop_token& stop) {
    return over_shots(
        input, stop,
        [&](const ShotScene& scene, const stage::ShotView& view, std::vector<Finding>& found) {
            for (const Glare& glare : glares_at(scene, view, input.plan)) {
                if (glare.shown_share > 0.0) {
                    found.push_back(in_frame_finding(scene, view, glare));
                } else if (std::optional<Finding> finding =
                               flare_finding(scene, view, glare, input.plan.units)) {
                    found.push_back(std::move(*finding));
                }
            }
        });
}

} // namespace throwline::checks
