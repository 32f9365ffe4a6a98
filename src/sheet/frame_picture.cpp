#include "sheet/frame_picture.h"

#include "sheet/frame_canvas.h"

#include <algorithm>
#include <cmath>

namespace throwline::sheet {

namespace {

/// Tones stay this light, so that lines stand out and a copy keeps them apart.
constexpr double kDarkest = 0.42;
constexpr double kLightest = 0.98;

/// A light over the camera's left shoulder, so that faces of a box differ.
Vec3 light_of(const stage::ShotView& view) {
    const optics::CameraAxes& axes = view.frame.axes();
    return (-0.5 * axes.right - 0.65 * axes.down - 0.55 * axes.forward).normalized();
}

double tone_of(const stage::Solid& solid, const Vec3& normal, const Vec3& light) {
    const double turned = 0.5 + 0.5 * normal.dot(light);
    const double shade = 0.55 + 0.45 * turned;
    const double surface = 0.72 + 0.36 * std::sqrt(std::clamp(solid.reflectance, 0.0, 1.0));
    return std::clamp(shade * surface, kDarkest, kLightest);
}

/// A tone mixed with a hue by a share.
Colour mixed(double tone, const Colour& hue, double share) {
    return Colour::Constant(tone) * (1.0 - share) + hue * tone * share;
}

/// How the picture is made.
struct Studio {
    const stage::Stage& stage;
    const plan::Shot& shot;
    Vec3 light;
};

bool is_subject(const plan::Shot& shot, const std::string& owner) {
    return std::any_of(shot.subjects.begin(), shot.subjects.end(),
                       [&](const plan::Id<plan::Person>& person) { return person.name == owner; });
}

Colour surface_colour(const Studio& studio, const FrameSurface& surface) {
    if (surface.owner < 0) {
        return Colour::Constant(kLightest);
    }
    const stage::Solid& solid = studio.stage.solids[static_cast<std::size_t>(surface.solid)];
    const double tone = tone_of(solid, surface.normal, studio.light);
    switch (solid.kind) {
    case stage::OwnerKind::room:
    case stage::OwnerKind::scenery:
        return Colour::Constant(tone);
    case stage::OwnerKind::cast:
        return mixed(tone, kPeopleLight, is_subject(studio.shot, solid.owner) ? 0.5 : 0.22);
    case stage::OwnerKind::crew:
        return mixed(tone, kPeopleLight, 0.12);
    case stage::OwnerKind::camera:
        return mixed(tone, kCameraLight, 0.4);
    case stage::OwnerKind::lamp:
        return mixed(tone, kLampLight, 0.5);
    case stage::OwnerKind::boom:
        return mixed(tone, kSoundLight, 0.5);
    }
    return Colour::Constant(tone);
}

std::vector<Vec2> corners_of(const Box& box) {
    return {{box.left, box.top},
            {box.right(), box.top},
            {box.right(), box.bottom()},
            {box.left, box.bottom()}};
}

Box inner_share(const Box& box, double share) {
    return {box.left + box.width * (1.0 - share) / 2.0, box.top + box.height * (1.0 - share) / 2.0,
            box.width * share, box.height * share};
}

} // namespace

std::shared_ptr<const Pixels> frame_picture_of(const stage::Stage& stage,
                                               const stage::ShotView& view, const plan::Shot& shot,
                                               int side_px, const std::stop_token& stop) {
    auto pixels = std::make_shared<Pixels>(blank_frame(optics::aspect_of(view.frame), side_px));
    const FrameSurfaces surfaces = surfaces_over_frame(stage, view, kRaysAcross * pixels->width,
                                                       kRaysAcross * pixels->height, stop);
    const Studio studio{stage, shot, light_of(view)};
    FrameCanvas canvas{stage, surfaces};
    canvas.hatch_every = hatch_for(side_px);
    const auto colour = [&](int column, int row) {
        return surface_colour(studio, surfaces.at(column, row));
    };
    if (stop.stop_requested() || !paint_frame(*pixels, canvas, colour, stop)) {
        return nullptr;
    }
    return pixels;
}

std::shared_ptr<const Pixels> frame_picture(const checks::ShotScene& scene, int side_px) {
    return scene.view ? frame_picture_of(scene.stage, *scene.view, *scene.shot, side_px) : nullptr;
}

Box picture_box(const Box& box, const Pixels& pixels) {
    const double aspect = static_cast<double>(pixels.width) / pixels.height;
    const double width_mm = std::min(box.width, box.height * aspect);
    return {box.left, box.top, width_mm, width_mm / aspect};
}

void draw_frame_picture(Marks& marks, const Box& box, std::shared_ptr<const Pixels> pixels,
                        bool with_safe_areas) {
    marks.emplace_back(
        Picture{std::move(pixels), {box.left, box.top}, {box.width, 0.0}, {0.0, box.height}, 1.0});
    if (with_safe_areas) {
        marks.emplace_back(outline(corners_of(inner_share(box, kActionSafe)),
                                   pen(Ink::lettering, kConstruction_mm, LinePattern::dash, 0.8)));
        marks.emplace_back(outline(corners_of(inner_share(box, kTitleSafe)),
                                   pen(Ink::lettering, kConstruction_mm, LinePattern::dot, 0.8)));
    }
    marks.emplace_back(outline(corners_of(box), pen(Ink::lettering, kStanding_mm)));
}

} // namespace throwline::sheet
