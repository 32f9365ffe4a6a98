#include "sheet/frame_picture.h"

#include "base/parallel.h"
#include "sheet/frame_surfaces.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace throwline::sheet {

namespace {

using Colour = Eigen::Array3d;

/// Rays across and down a pixel.
constexpr int kRays = 2;
/// The inks of the sheet as light (0..1), for mixing with tones.
const Colour kInk{0.12, 0.14, 0.16};
const Colour kPeople{0.0, 0.62, 0.45};
const Colour kCamera{0.0, 0.45, 0.70};
const Colour kLamp{0.90, 0.62, 0.0};
const Colour kSound{0.80, 0.47, 0.65};
const Colour kNotDressed{0.84, 0.37, 0.0};

/// Tones stay this light, so that lines stand out and a copy keeps them apart.
constexpr double kDarkest = 0.42;
constexpr double kLightest = 0.98;
/// How dark a line is: around a thing, and where a surface of it turns.
constexpr double kOutline = 0.92;
constexpr double kCrease = 0.5;

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
    const checks::ShotScene& scene;
    const FrameSurfaces& surfaces;
    Vec3 light;
    /// Rays between two lines of the hatch.
    int hatch_every = 14;
    int hatch_wide = 2;
};

bool is_subject(const plan::Shot& shot, const std::string& owner) {
    return std::any_of(shot.subjects.begin(), shot.subjects.end(),
                       [&](const plan::Id<plan::Person>& person) { return person.name == owner; });
}

Colour surface_colour(const Studio& studio, const FrameSurface& surface) {
    if (surface.owner < 0) {
        return Colour::Constant(kLightest);
    }
    const stage::Solid& solid = studio.scene.stage.solids[static_cast<std::size_t>(surface.solid)];
    const double tone = tone_of(solid, surface.normal, studio.light);
    switch (solid.kind) {
    case stage::OwnerKind::room:
    case stage::OwnerKind::scenery:
        return Colour::Constant(tone);
    case stage::OwnerKind::cast:
        return mixed(tone, kPeople, is_subject(*studio.scene.shot, solid.owner) ? 0.5 : 0.22);
    case stage::OwnerKind::crew:
        return mixed(tone, kPeople, 0.12);
    case stage::OwnerKind::camera:
        return mixed(tone, kCamera, 0.4);
    case stage::OwnerKind::lamp:
        return mixed(tone, kLamp, 0.5);
    case stage::OwnerKind::boom:
        return mixed(tone, kSound, 0.5);
    }
    return Colour::Constant(tone);
}

/// The hatch of what is not dressed, the lines running up to the right.
Colour hatched_over(const Studio& studio, const Colour& colour, int column, int row) {
    const bool on_line = (column + row) % studio.hatch_every < studio.hatch_wide;
    const Colour paler = colour + (1.0 - colour) * 0.45;
    return on_line ? Colour{paler * 0.15 + kNotDressed * 0.85} : paler;
}

/// How dark the line is that passes here.
double line_at(const Studio& studio, int column, int row) {
    const FrameSurface& here = studio.surfaces.at(column, row);
    double dark = 0.0;
    for (const auto& [right, down] :
         {std::pair{1, 0}, std::pair{0, 1}, std::pair{-1, 0}, std::pair{0, -1}}) {
        const int c = column + right;
        const int r = row + down;
        if (c < 0 || r < 0 || c >= studio.surfaces.columns || r >= studio.surfaces.rows) {
            continue;
        }
        switch (seam_between(studio.scene.stage, here, studio.surfaces.at(c, r))) {
        case Seam::none:
            break;
        case Seam::crease:
            dark = std::max(dark, kCrease);
            break;
        case Seam::outline:
            dark = std::max(dark, kOutline);
            break;
        }
    }
    return dark;
}

Colour ray_colour(const Studio& studio, int column, int row) {
    const FrameSurface& surface = studio.surfaces.at(column, row);
    Colour colour = surface_colour(studio, surface);
    if (surface.backing == checks::Backing::undressed) {
        colour = hatched_over(studio, colour, column, row);
    }
    const double dark = line_at(studio, column, row);
    return colour * (1.0 - dark) + kInk * dark;
}

void paint_row(const Studio& studio, Pixels& pixels, int row) {
    for (int column = 0; column < pixels.width; ++column) {
        Colour sum = Colour::Zero();
        for (int down = 0; down < kRays; ++down) {
            for (int across = 0; across < kRays; ++across) {
                sum += ray_colour(studio, kRays * column + across, kRays * row + down);
            }
        }
        const Colour mean = sum / (kRays * kRays);
        for (int channel = 0; channel < 3; ++channel) {
            const auto index =
                static_cast<std::size_t>(3 * (row * pixels.width + column) + channel);
            pixels.rgb[index] =
                static_cast<std::uint8_t>(std::lround(255.0 * std::clamp(mean[channel], 0.0, 1.0)));
        }
    }
}

Pixels blank(double aspect, int side_px) {
    Pixels pixels;
    const auto other = [&](double share) {
        return std::max(1, static_cast<int>(std::lround(side_px * share)));
    };
    pixels.width = aspect >= 1.0 ? side_px : other(aspect);
    pixels.height = aspect >= 1.0 ? other(1.0 / aspect) : side_px;
    pixels.rgb.resize(3U * static_cast<std::size_t>(pixels.width)
                      * static_cast<std::size_t>(pixels.height));
    return pixels;
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

std::shared_ptr<const Pixels> frame_picture(const checks::ShotScene& scene, int side_px) {
    if (!scene.view) {
        return nullptr;
    }
    auto pixels = std::make_shared<Pixels>(blank(optics::aspect_of(scene.view->frame), side_px));
    const FrameSurfaces surfaces = surfaces_over_frame(
        scene.stage, *scene.view, kRays * pixels->width, kRays * pixels->height);
    Studio studio{scene, surfaces, light_of(*scene.view)};
    studio.hatch_every = std::max(10, kRays * side_px / 60);
    parallel_for(static_cast<std::size_t>(pixels->height),
                 [&](std::size_t row) { paint_row(studio, *pixels, static_cast<int>(row)); });
    return pixels;
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
