#include "checks/light_text.h"
#include "checks/wording.h"
#include "command/figures_output.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::command {

namespace {

std::string length_text(double length_m, UnitSystem units) {
    return shown(Length::metres(length_m), units);
}

std::string sharp_text(const checks::ShotFigures& figures, UnitSystem units) {
    if (!figures.sharp) {
        return "focused nearer than its focal length";
    }
    const std::string far = figures.sharp->far_limit ? shown(*figures.sharp->far_limit, units)
                                                     : std::string{"as far as it goes"};
    return fmt::format("focused at {}, sharp from {} to {}",
                       shown(figures.view.focus_distance, units),
                       shown(figures.sharp->near_limit, units), far);
}

std::string head_line(const checks::ShotFigures& figures, UnitSystem units) {
    const stage::ShotView& view = figures.view;
    return fmt::format("{}, beat {}, {}: {} {}, takes in {} by {}, lens {} up, tilted {}; {}\n",
                       figures.shot.name, figures.beat.name, figures.camera.name,
                       checks::focal_text(view.focal), checks::stop_text(view.stop),
                       degrees_text(view.angle.horizontal), degrees_text(view.angle.vertical),
                       length_text(view.pose.lens.z(), units), degrees_text(view.pose.tilt),
                       sharp_text(figures, units));
}

std::string size_text(const checks::SubjectFigures& subject,
                      const std::optional<ShotSize>& wanted) {
    if (!subject.frame) {
        return "no upright figure to name a size by";
    }
    const std::string size = optics::name_of(subject.frame->size);
    return wanted ? fmt::format("{} (wanted: {})", size, optics::name_of(*wanted)) : size;
}

std::string subject_line(const checks::SubjectFigures& subject,
                         const std::optional<ShotSize>& wanted, UnitSystem units) {
    std::string line = fmt::format(
        "  {}: {} away, frame {} there", subject.person.name, length_text(subject.depth_m, units),
        checks::size_text(subject.coverage.width, subject.coverage.height, units));
    if (subject.frame) {
        line += fmt::format(" from {} to {} up", length_text(subject.frame->bottom_z_m, units),
                            length_text(subject.frame->top_z_m, units));
    }
    const std::string seen =
        subject.sight ? checks::share_text(subject.sight->body.share) + " of what is framed seen"
                      : std::string{"out of the frame"};
    return line
           + fmt::format("; {}; {}; {}\n", size_text(subject, wanted), seen,
                         subject.sharp ? "sharp" : "not sharp");
}

std::string exposure_text(const checks::MarkLight& mark, double stop) {
    if (!mark.stops_over) {
        return "no light";
    }
    return fmt::format("{} {} {}", checks::stops_text(std::abs(*mark.stops_over)),
                       *mark.stops_over < 0.0 ? "under" : "over", checks::stop_text(stop));
}

std::string light_line(const checks::MarkLight& mark, double stop, UnitSystem units) {
    const std::string ratio =
        mark.ratio ? fixed(*mark.ratio, 1) + ":1" : std::string{"no fill to tell it by"};
    return fmt::format("    light: {} on the face, {} level; {}; lighting ratio {}\n",
                       checks::level_text(mark.facing_lx, units),
                       checks::level_text(mark.horizontal_lx, units), exposure_text(mark, stop),
                       ratio);
}

std::string pool_text(const std::optional<photometry::ConeFootprint>& pool, UnitSystem units) {
    return pool ? checks::size_text(pool->length(), pool->width(), units) : std::string{"open"};
}

std::string direction_text(const checks::LampAtMark& at) {
    if (!at.direction) {
        return "straight above or below";
    }
    const double azimuth_rad = at.direction->azimuth.rad();
    return fmt::format(
        "{} to camera {}, {} up", degrees_text(Angle::radians(std::abs(azimuth_rad)), 0),
        azimuth_rad >= 0.0 ? "right" : "left", degrees_text(at.direction->elevation, 0));
}

std::string lamp_line(const checks::LampAtMark& at, const stage::Stage& stage, UnitSystem units) {
    const stage::PlacedLamp& lamp = stage.lamps[static_cast<std::size_t>(at.lamp)];
    std::string line = fmt::format(
        "      {} ({}): throw {}, {}; {} on the face, {} level; beam {} at the face, {} on the "
        "floor",
        checks::said(lamp.lamp), photometry::name_of(lamp.role),
        length_text(at.light.throw_m, units), direction_text(at),
        checks::level_text(at.facing_lx, units), checks::level_text(at.horizontal_lx, units),
        pool_text(at.beam_at_face, units), pool_text(at.beam_on_floor, units));
    if (!at.light.blockers.empty()) {
        line += "; hidden by " + checks::blockers_text(stage, at.light);
    }
    return line + "\n";
}

/// A lamp whose field takes in the face, or that gives it more than a hundredth of its light.
bool lights(const checks::LampAtMark& at, const checks::MarkLight& mark) {
    return at.in_field || at.facing_lx > 0.01 * mark.facing_lx;
}

std::string lamp_lines(const checks::MarkLight& mark, const stage::Stage& stage, UnitSystem units) {
    std::vector<const checks::LampAtMark*> lamps;
    for (const checks::LampAtMark& at : mark.lamps) {
        if (lights(at, mark)) {
            lamps.push_back(&at);
        }
    }
    std::stable_sort(lamps.begin(), lamps.end(),
                     [](const auto* a, const auto* b) { return a->facing_lx > b->facing_lx; });
    std::string text;
    for (const checks::LampAtMark* at : lamps) {
        text += lamp_line(*at, stage, units);
    }
    return text;
}

} // namespace

std::string figures_text(const std::vector<ShotRow>& rows, UnitSystem units) {
    std::string text;
    for (const ShotRow& row : rows) {
        text += head_line(row.figures, units);
        for (std::size_t i = 0; i < row.figures.subjects.size(); ++i) {
            text += subject_line(row.figures.subjects[i], row.figures.wanted, units);
            if (!row.stage->lamps.empty()) {
                text += light_line(row.marks[i], row.figures.view.stop, units);
                text += lamp_lines(row.marks[i], *row.stage, units);
            }
        }
    }
    return text;
}

} // namespace throwline::command
