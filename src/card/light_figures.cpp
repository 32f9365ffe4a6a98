/// What lamps give and faces get, with how it came about.

#include "base/words.h"
#include "card/card_kinds.h"
#include "checks/light_text.h"
#include "checks/wording.h"
#include "photometry/exposure.h"
#include "photometry/ratio.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::card {

namespace {

const checks::BeatScene* beat_scene(const CardInput& input) {
    if (input.analysis == nullptr) {
        return nullptr;
    }
    for (const checks::BeatScene& scene : input.analysis->beats) {
        if (scene.beat->id == input.context.now.beat) {
            return &scene;
        }
    }
    return nullptr;
}

Figure throw_figure(const stage::PlacedLamp& lamp, const Length distance, UnitSystem units) {
    const Vec3 face = lamp.face;
    const Vec3 target = *lamp.target;
    return {"throw", "Throw", shown(distance, units), [=] {
                const auto place = [units](const Vec3& at) {
                    return fmt::format("{}, {}, {} up", shown(Length::metres(at.x()), units),
                                       shown(Length::metres(at.y()), units),
                                       shown(Length::metres(at.z()), units));
                };
                return Working{"throw = distance from the bright face to the aim",
                               {{"", "bright face", place(face)}, {"", "aim", place(target)}},
                               shown(distance, units),
                               "plain geometry"};
            }};
}

Figure level_figure(const stage::LampLight& light, UnitSystem units) {
    const std::string value = checks::level_text(light.level_square_lx(), units);
    const bool soft = light.panel.has_value();
    const double intensity_cd = light.intensity_cd;
    const double share = light.seen_share;
    const Length distance = Length::metres(light.throw_m);
    return {"level", "Level at the aim", value, [=] {
                return Working{
                    soft ? "E = Lambert's polygon formula over the bright face x share seen"
                         : "E = I / d^2 x share seen",
                    {{"I", "intensity towards the aim", checks::intensity_text(intensity_cd)},
                     {"d", "throw", shown(distance, units)},
                     {"", "share of the bright face seen", share_text(share)}},
                    value,
                    soft ? "configuration-factor literature, from memory"
                         : "inverse-square law, plain geometry"};
            }};
}

Figure pool_figure(const char* key, const char* label, Length distance, Angle full_angle,
                   UnitSystem units) {
    return {key, label, shown(photometry::spot_diameter(distance, full_angle), units),
            [=] { return photometry::spot_diameter_working(distance, full_angle); }};
}

void pool_sentence(Card& card, const stage::PlacedLamp& lamp, Length distance, UnitSystem units) {
    // A beam of half a turn or more has no rim.
    if (lamp.beam.field.deg() >= 180.0 || lamp.beam.peak_cd <= 0.0) {
        return;
    }
    say(card,
        {"Its pool is ",
         pool_figure("beam_pool", "Pool to half the peak", distance, lamp.beam.beam, units),
         " across to half the peak, ",
         pool_figure("field_pool", "Pool to a tenth of the peak", distance, lamp.beam.field, units),
         " to a tenth."});
}

/// From which side it comes for the lens of the shot of now.
void direction_sentence(Card& card, const CardInput& input, const stage::PlacedLamp& lamp) {
    for (const checks::ShotScene& scene : input.analysis->shots) {
        if (scene.shot->id != input.context.now.shot || !scene.view) {
            continue;
        }
        const auto* named =
            std::get_if<plan::ThingName>(&plan::find(*input.analysis->plan, lamp.lamp)->aim);
        const stage::Figure* figure =
            named != nullptr ? scene.stage.figure({named->name}) : nullptr;
        if (figure == nullptr) {
            continue;
        }
        const Vec3 eyes = figure->eyes;
        const Vec3 lens = scene.view->pose.lens;
        const Vec3 face = lamp.face;
        const auto direction = photometry::lamp_direction(eyes, lens, face);
        if (!direction) {
            continue;
        }
        const double azimuth_deg = direction->azimuth.deg();
        say(card,
            {"From " + named->name + " it stands ",
             Figure{"direction", "Direction of the lamp",
                    fmt::format("{} up and {} to camera {}", degrees_text(direction->elevation, 0),
                                degrees_text(Angle::degrees(std::abs(azimuth_deg)), 0),
                                azimuth_deg >= 0.0 ? "right" : "left"),
                    [=] { return photometry::lamp_direction_working(eyes, lens, face); }},
             "."});
        return;
    }
}

double level_by_role(const checks::MarkLight& mark, const stage::Stage& stage,
                     plan::LampRole role) {
    double level_lx = 0.0;
    for (const checks::LampAtMark& at : mark.lamps) {
        const bool is_it = stage.lamps[static_cast<std::size_t>(at.lamp)].role == role;
        level_lx += is_it ? at.facing_lx : 0.0;
    }
    return level_lx;
}

Figure face_figure(const checks::MarkLight& light, const stage::Stage& stage, UnitSystem units) {
    const std::string value = checks::level_text(light.facing_lx, units);
    return {"level_" + light.shot.name, "Level on the face in shot " + light.shot.name, value,
            [value, terms = checks::lamp_terms(light, stage, units)] {
                return Working{"level on the face, turned to the camera = sum over the lamps of "
                               "I cos i / d^2 x share seen",
                               terms, value,
                               "inverse square and cosine laws; soft faces by Lambert's polygon "
                               "formula"};
            }};
}

Figure stops_figure(const checks::MarkLight& light, const photometry::ExposureSetting& setting,
                    double stop, UnitSystem units) {
    const double over = *light.stops_over;
    const std::string value =
        checks::stops_text(std::abs(over)) + (over < 0.0 ? " under" : " over");
    const double level_lx = light.facing_lx;
    return {"stops_" + light.shot.name, "Exposure in shot " + light.shot.name, value, [=] {
                Working working = photometry::illuminance_for_stop_working(setting, stop);
                working.inputs.push_back({"", "the stop needs", working.result});
                working.inputs.push_back({"", "on the face", checks::level_text(level_lx, units)});
                working.formula += "; stops = log2(level / E)";
                working.result = value;
                return working;
            }};
}

Figure ratio_figure(const checks::MarkLight& light, const stage::Stage& stage) {
    const photometry::KeyAndFill levels{level_by_role(light, stage, plan::LampRole::key),
                                        level_by_role(light, stage, plan::LampRole::fill)};
    return {"ratio_" + light.shot.name, "Lighting ratio in shot " + light.shot.name,
            fixed(*light.ratio, 1) + ":1",
            [levels] { return photometry::lighting_ratio_working(levels); }};
}

void face_sentence(Card& card, const CardInput& input, const checks::ShotScene& scene,
                   const checks::MarkLight& light) {
    const UnitSystem units = input.context.plan.units;
    const plan::Plan& plan = *input.analysis->plan;
    std::vector<Piece> pieces{"In shot " + light.shot.name + " the face gets ",
                              face_figure(light, scene.stage, units)};
    if (light.stops_over) {
        const plan::Camera* camera = plan::find(plan, scene.shot->camera);
        const photometry::ExposureSetting setting{camera->iso, camera->exposure_s,
                                                  plan.targets.meter_constant};
        pieces.insert(pieces.end(), {", ", stops_figure(light, setting, scene.view->stop, units),
                                     " what " + stop_text(scene.view->stop) + " asks for"});
    }
    if (light.ratio) {
        pieces.insert(pieces.end(), {", ratio ", ratio_figure(light, scene.stage)});
    }
    pieces.emplace_back(".");
    say(card, std::move(pieces));
}

} // namespace

void lamp_figures(Card& card, const CardInput& input, const plan::Lamp& lamp) {
    const checks::BeatScene* scene = beat_scene(input);
    const UnitSystem units = input.context.plan.units;
    for (std::size_t i = 0; scene != nullptr && i < scene->stage.lamps.size(); ++i) {
        const stage::PlacedLamp& placed = scene->stage.lamps[i];
        if (placed.lamp != lamp.id || !placed.target) {
            continue;
        }
        // The aim may be a face, which does not hide itself.
        const auto* named = std::get_if<plan::ThingName>(&lamp.aim);
        const stage::Figure* figure =
            named != nullptr ? scene->stage.figure({named->name}) : nullptr;
        const stage::LampLight light =
            stage::light_from(scene->stage, static_cast<int>(i), *placed.target,
                              figure != nullptr ? figure->owner : -1);
        const Length distance = Length::metres(light.throw_m);
        std::vector<Piece> pieces{"Throws ", throw_figure(placed, distance, units)};
        if (placed.beam.peak_cd > 0.0) {
            pieces.insert(pieces.end(), {" and gives ", level_figure(light, units),
                                         " square to the beam at its aim"});
            if (!light.blockers.empty()) {
                pieces.emplace_back("; hidden by " + checks::blockers_text(scene->stage, light));
            }
            pieces.emplace_back(".");

        } else {
            pieces.emplace_back("; it is dark in this beat.");
        }
        say(card, std::move(pieces));
        pool_sentence(card, placed, distance, units);
        direction_sentence(card, input, placed);
    }
}

void face_figures(Card& card, const CardInput& input, const plan::Id<plan::Person>& person) {
    if (input.analysis == nullptr) {
        return;
    }
    const checks::Analysis& known = *input.analysis;
    const checks::CheckInput check{*known.plan, input.context.catalogue, known.shots, known.beats};
    for (const checks::ShotScene& scene : known.shots) {
        const auto& subjects = scene.shot->subjects;
        const bool is_seen = std::find(subjects.begin(), subjects.end(), person) != subjects.end();
        if (scene.beat->id != input.context.now.beat || !is_seen) {
            continue;
        }
        for (const checks::MarkLight& light : checks::light_at_marks(check, scene)) {
            if (light.person == person) {
                face_sentence(card, input, scene, light);
            }
        }
    }
}

} // namespace throwline::card
