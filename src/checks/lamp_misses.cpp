#include "checks/light_checks.h"
#include "checks/wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <optional>

namespace throwline::checks {

namespace {

bool lights_people(plan::LampRole role) {
    return role == plan::LampRole::key || role == plan::LampRole::fill
           || role == plan::LampRole::back;
}

/// The face that comes nearest to a lamp's axis in any beat.
struct Nearest {
    Angle off_axis = Angle::degrees(180);
    std::string person;
    std::string beat;
};

std::optional<Nearest> nearest_face(const CheckInput& input, std::size_t lamp_index) {
    std::optional<Nearest> nearest;
    for (const BeatScene& beat : input.beats) {
        const stage::PlacedLamp& lamp = beat.stage.lamps[lamp_index];
        if (lamp.beam.peak_cd <= 0.0) {
            continue; // it does not burn in this beat
        }
        for (const stage::Figure& figure : beat.stage.figures) {
            const Vec3 to_face = (figure.face - lamp.face).normalized();
            const Angle off =
                Angle::radians(std::acos(std::clamp(to_face.dot(lamp.axis), -1.0, 1.0)));
            const bool counts = figure.kind == plan::PersonKind::cast;
            if (counts && (!nearest || off < nearest->off_axis)) {
                nearest = Nearest{off, figure.person.name, beat.beat->id.name};
            }
        }
    }
    return nearest;
}

Finding missing(const stage::PlacedLamp& lamp, const Nearest& nearest) {
    Finding finding;
    finding.check = "lamp-aim";
    finding.severity = Severity::caution;
    finding.things = {lamp.lamp.name};
    finding.at = floor_of(lamp.point);
    finding.weight = nearest.off_axis.rad();
    finding.message = capitalised(fmt::format("{} takes in nobody's face in any beat; the nearest, "
                                              "{} in beat {}, stands {} off its axis.",
                                              said(lamp.lamp), nearest.person, nearest.beat,
                                              degrees_text(nearest.off_axis, 0)));
    finding.working = {
        "angle between the lamp's axis and the line to the face, against half the field",
        {{"", "nearest face", nearest.person + ", beat " + nearest.beat},
         {"", "half of the field", degrees_text(lamp.beam.field / 2.0, 0)}},
        degrees_text(nearest.off_axis, 0) + " off axis",
        "plain geometry"};
    return finding;
}

} // namespace

std::vector<Finding> lamp_misses(const CheckInput& input, const std::stop_token&) {
    std::vector<Finding> findings;
    if (input.beats.empty()) {
        return findings;
    }
    const std::vector<stage::PlacedLamp>& lamps = input.beats.front().stage.lamps;
    for (std::size_t i = 0; i < lamps.size(); ++i) {
        const std::optional<Nearest> nearest = nearest_face(input, i);
        if (lights_people(lamps[i].role) && nearest
            && nearest->off_axis > lamps[i].beam.field / 2.0) {
            findings.push_back(missing(lamps[i], *nearest));
        }
    }
    return findings;
}

} // namespace throwline::checks
