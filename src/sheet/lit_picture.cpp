#include "sheet/lit_picture.h"

#include "sheet/frame_canvas.h"
#include "sheet/lit_levels.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace throwline::sheet {

namespace {

/// Lines are pale on tones darker than this.
constexpr double kPaleLinesBelow = 0.30;
/// The hatch leaves the light to be seen.
constexpr double kHatchStrength = 0.45;
/// Outside the room nothing is known of the light.
constexpr double kOutside = 0.5;
/// Faces turned from the axis of their lamp by less than about 30 degrees are its bright face.
constexpr double kBrightFace = 0.87;
/// Where the curve begins to bend.
constexpr double kShoulder = 0.6;

/// shown_tone() at many places, looked up: it is asked for every ray. Entries lie evenly along
/// s / (1 + s), closest where it is dark.
class ToneTable {
  public:
    ToneTable() {
        for (std::size_t i = 0; i < kEntries; ++i) {
            const double along = static_cast<double>(i) / kEntries;
            tones_[i] = shown_tone(along / (1.0 - along));
        }
    }
    double at(double share) const {
        const double along = share / (1.0 + share) * kEntries;
        const auto entry = std::min(static_cast<std::size_t>(along), kEntries - 2);
        const double rest = std::min(along - static_cast<double>(entry), 1.0);
        return tones_[entry] + rest * (tones_[entry + 1] - tones_[entry]);
    }

  private:
    static constexpr std::size_t kEntries = 4096;
    std::array<double, kEntries> tones_{};
};

/// A tone mixed with a hue by a share.
Colour mixed(double tone, const Colour& hue, double share) {
    return Colour::Constant(tone) * (1.0 - share) + hue * tone * share;
}

/// Index into Stage::lamps by owner, -1 for what is no burning lamp.
std::vector<int> burning_lamps(const stage::Stage& stage) {
    std::vector<int> lamps(stage.owners.size(), -1);
    for (std::size_t i = 0; i < stage.lamps.size(); ++i) {
        if (stage.lamps[i].beam.peak_cd > 0.0 && stage.lamps[i].owner >= 0) {
            lamps[static_cast<std::size_t>(stage.lamps[i].owner)] = static_cast<int>(i);
        }
    }
    return lamps;
}

class Shading {
  public:
    Shading(const LitFrame& frame, const FrameSurfaces& surfaces, const LitLevels& levels)
        : frame_{frame}, surfaces_{surfaces}, levels_{levels}, burning_{burning_lamps(frame.stage)},
          bounced_lx_{bounced_level_lx(frame.stage)} {}

    Colour colour(int column, int row) const {
        const FrameSurface& here = surfaces_.at(column, row);
        if (here.owner < 0) {
            return Colour::Constant(kOutside);
        }
        const stage::Solid& solid = frame_.stage.solids[static_cast<std::size_t>(here.solid)];
        if (glows(here, solid)) {
            return Colour::Ones();
        }
        const double level_lx = levels_.at(column, row) + bounced_lx_;
        return tinted(solid, tones_.at(level_lx / frame_.needed_lx * solid.reflectance));
    }

  private:
    bool glows(const FrameSurface& here, const stage::Solid& solid) const {
        const int index = burning_[static_cast<std::size_t>(here.owner)];
        if (index < 0 || solid.part != stage::Part::housing) {
            return false;
        }
        const stage::PlacedLamp& lamp = frame_.stage.lamps[static_cast<std::size_t>(index)];
        return stage::is_all_round(lamp) || here.normal.dot(lamp.axis) > kBrightFace;
    }

    Colour tinted(const stage::Solid& solid, double tone) const {
        switch (solid.kind) {
        case stage::OwnerKind::room:
        case stage::OwnerKind::scenery:
            return Colour::Constant(tone);
        case stage::OwnerKind::cast:
        case stage::OwnerKind::crew:
            return mixed(tone, kPeopleLight, 0.12);
        case stage::OwnerKind::camera:
            return mixed(tone, kCameraLight, 0.3);
        case stage::OwnerKind::lamp:
            return mixed(tone, kLampLight, 0.3);
        case stage::OwnerKind::boom:
            return mixed(tone, kSoundLight, 0.3);
        }
        return Colour::Constant(tone);
    }

    const LitFrame& frame_;
    const FrameSurfaces& surfaces_;
    const LitLevels& levels_;
    std::vector<int> burning_;
    double bounced_lx_;
    ToneTable tones_;
};

} // namespace

double shown_tone(double luminance_share) {
    const double above = luminance_share - kShoulder;
    const double range = 1.0 - kShoulder;
    const double bent =
        above > 0.0 ? kShoulder + range * (1.0 - std::exp(-above / range)) : luminance_share;
    const double light = std::clamp(bent, 0.0, 1.0);
    return light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055;
}

bool has_light(const stage::Stage& stage) {
    return std::any_of(stage.lamps.begin(), stage.lamps.end(),
                       [](const stage::PlacedLamp& lamp) { return lamp.beam.peak_cd > 0.0; });
}

std::shared_ptr<const Pixels> lit_picture(const LitFrame& frame, int side_px,
                                          const std::stop_token& stop) {
    auto pixels =
        std::make_shared<Pixels>(blank_frame(optics::aspect_of(frame.view.frame), side_px));
    const FrameSurfaces surfaces = surfaces_over_frame(
        frame.stage, frame.view, kRaysAcross * pixels->width, kRaysAcross * pixels->height, stop);
    if (stop.stop_requested()) {
        return nullptr;
    }
    const LitLevels levels =
        levels_over_frame(frame.stage, surfaces, kRaysAcross, frame.needed_lx, stop);
    const Shading shading{frame, surfaces, levels};
    FrameCanvas canvas{frame.stage, surfaces};
    canvas.hatch_every = hatch_for(side_px);
    canvas.hatch_strength = kHatchStrength;
    canvas.hatch_pales = 0.0;
    canvas.pale_lines_below = kPaleLinesBelow;
    const auto colour = [&](int column, int row) { return shading.colour(column, row); };
    if (stop.stop_requested() || !paint_frame(*pixels, canvas, colour, stop)) {
        return nullptr;
    }
    return pixels;
}

} // namespace throwline::sheet
