#include "photometry/throw.h"

#include "base/length_text.h"
#include "photometry/point_source.h"
#include "photometry/words.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::photometry {

namespace {

std::optional<Error> fault_of(const ThrowSetup& setup) {
    const auto fault = [](std::string message) { return Error{std::move(message), {}}; };
    const BeamModel& beam = setup.beam;
    if (!(beam.peak_cd >= 0.0)) {
        return fault(
            fmt::format("the peak is {}; it must be 0 cd or more", shortest(beam.peak_cd)));
    }
    if (!(beam.beam.rad() > 0.0 && beam.beam < Angle::degrees(180.0))) {
        return fault(fmt::format("the beam angle is {}; it must lie between 0 and 180 degrees",
                                 degrees_text(beam.beam)));
    }
    if (!(beam.field >= beam.beam && beam.field <= Angle::degrees(360.0))) {
        return fault(fmt::format("the field angle is {}; it must be at least the beam angle, {}",
                                 degrees_text(beam.field), degrees_text(beam.beam)));
    }
    if (!(setup.height.m() > 0.0)) {
        return fault(fmt::format("the lamp is {} high; it must be above the floor",
                                 distance_text(setup.height)));
    }
    if (setup.run.m() < 0.0) {
        return fault(fmt::format("the run is {}; it must be 0 or more", distance_text(setup.run)));
    }
    if (setup.run.m() == 0.0 && setup.height == setup.at_height) {
        return fault("the lamp and the point it is aimed at are the same");
    }
    return std::nullopt;
}

Angle incidence_on_level(Angle elevation) {
    return Angle::degrees(90.0) - elevation;
}

std::string ellipse_text(const std::optional<ConeFootprint>& ellipse) {
    if (!ellipse) {
        return "open: the beam reaches the horizontal or looks up";
    }
    return fmt::format("{} long, {} wide, from {} to {} out", distance_text(ellipse->length()),
                       distance_text(ellipse->width()), distance_text(ellipse->near_edge),
                       distance_text(ellipse->far_edge));
}

Working slant_working(const ThrowSetup& setup, const ThrowFigures& figures) {
    return {"throw = sqrt(run^2 + (height - at)^2)",
            {{"run", "along the floor", distance_text(setup.run)},
             {"height", "of the lamp", distance_text(setup.height)},
             {"at", "height of the point", distance_text(setup.at_height)}},
            distance_text(figures.slant),
            "plain geometry"};
}

Working elevation_working(const ThrowSetup& setup, const ThrowFigures& figures) {
    return {"elevation = atan((height - at) / run)",
            {{"height", "of the lamp", distance_text(setup.height)},
             {"at", "height of the point", distance_text(setup.at_height)},
             {"run", "along the floor", distance_text(setup.run)}},
            degrees_text(figures.elevation, 2),
            "plain geometry"};
}

Working ellipse_working(const ThrowSetup& setup, const ThrowFigures& figures) {
    return {
        "near = h tan(t - b), far = h tan(t + b), width = 2 h sin b / sqrt(cos^2 t - sin^2 b)",
        {{"h", "height of the lamp", distance_text(setup.height)},
         {"t", "tilt from straight down", degrees_text(incidence_on_level(figures.elevation), 2)},
         {"b", "half the beam angle", degrees_text(setup.beam.beam / 2.0, 2)}},
        ellipse_text(figures.floor_ellipse),
        "plain geometry: conic section"};
}

} // namespace

Result<ThrowFigures> throw_figures(const ThrowSetup& setup) {
    if (const std::optional<Error> fault = fault_of(setup)) {
        return tl::unexpected<Error>{*fault};
    }
    const double run_m = setup.run.m();
    const double rise_m = (setup.height - setup.at_height).m();
    ThrowFigures figures;
    figures.slant = Length::metres(std::hypot(run_m, rise_m));
    figures.elevation = Angle::radians(std::atan2(rise_m, run_m));
    const Angle level_incidence = incidence_on_level(figures.elevation);
    figures.horizontal_lx = illuminance_lx(setup.beam.peak_cd, figures.slant, level_incidence);
    figures.facing_lx = illuminance_lx(setup.beam.peak_cd, figures.slant, figures.elevation);
    figures.beam_width = spot_diameter(figures.slant, setup.beam.beam);
    figures.floor_ellipse = cone_footprint(setup.height, level_incidence, setup.beam.beam / 2.0);
    return figures;
}

std::vector<Working> throw_workings(const ThrowSetup& setup) {
    const Result<ThrowFigures> figures = throw_figures(setup);
    if (!figures) {
        return {};
    }
    return {slant_working(setup, *figures),
            elevation_working(setup, *figures),
            illuminance_working(setup.beam.peak_cd, figures->slant,
                                incidence_on_level(figures->elevation)),
            illuminance_working(setup.beam.peak_cd, figures->slant, figures->elevation),
            spot_diameter_working(figures->slant, setup.beam.beam),
            ellipse_working(setup, *figures)};
}

} // namespace throwline::photometry
