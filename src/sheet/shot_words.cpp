#include "sheet/shot_words.h"

#include "base/length_text.h"
#include "checks/light_text.h"
#include "checks/wording.h"
#include "lists/place_text.h"
#include "lists/shot_lines.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

std::string length_words(double length_m, UnitSystem units) {
    return shown(Length::metres(length_m), units);
}

std::string tilt_words(Angle tilt) {
    const double tilt_rad = tilt.rad();
    const std::string words = checks::angle_text(Angle::radians(std::abs(tilt_rad)));
    constexpr double kLevel_rad = 0.001;
    if (std::abs(tilt_rad) < kLevel_rad) {
        return "level";
    }
    return fmt::format("tilted {} {}", words, tilt_rad < 0.0 ? "down" : "up");
}

std::string subject_words(const checks::SubjectFigures& subject,
                          const std::optional<optics::ShotSize>& wanted, UnitSystem units) {
    std::string words = fmt::format("{} away", length_words(subject.depth_m, units));
    if (const std::string size = size_words(subject, wanted); !size.empty()) {
        words += fmt::format("; {}", size);
    }
    words += subject.sight
                 ? fmt::format("; {} of it seen", checks::share_text(subject.sight->body.share))
                 : std::string{"; out of the frame"};
    return words + (subject.sharp ? "; sharp" : "; not sharp");
}

/// The key that gives a mark most, or nothing.
const checks::LampAtMark* key_of(const checks::MarkLight& mark, const stage::Stage& stage) {
    const checks::LampAtMark* key = nullptr;
    for (const checks::LampAtMark& at : mark.lamps) {
        const stage::PlacedLamp& lamp = stage.lamps[static_cast<std::size_t>(at.lamp)];
        if (lamp.role == plan::LampRole::key && at.facing_lx > 0.0
            && (key == nullptr || at.facing_lx > key->facing_lx)) {
            key = &at;
        }
    }
    return key;
}

std::string key_words(const checks::LampAtMark& key, const stage::Stage& stage, UnitSystem units) {
    const stage::PlacedLamp& lamp = stage.lamps[static_cast<std::size_t>(key.lamp)];
    std::string words =
        fmt::format("{}, {}", checks::said(lamp.lamp), checks::level_text(key.facing_lx, units));
    if (key.direction) {
        const double azimuth_rad = key.direction->azimuth.rad();
        words += fmt::format(
            ", {} to camera {}, {} up", degrees_text(Angle::radians(std::abs(azimuth_rad)), 0),
            azimuth_rad >= 0.0 ? "right" : "left", degrees_text(key.direction->elevation, 0));
    }
    return words;
}

std::string light_words(const checks::MarkLight& mark, const stage::Stage& stage, double stop,
                        UnitSystem units) {
    if (!mark.stops_over) {
        return "no light on the face";
    }
    std::string words =
        fmt::format("{} on the face, {} {} {}", checks::level_text(mark.facing_lx, units),
                    checks::stops_text(std::abs(*mark.stops_over)),
                    *mark.stops_over < 0.0 ? "under" : "over", checks::stop_text(stop));
    if (const checks::LampAtMark* key = key_of(mark, stage)) {
        words += fmt::format("; key {}", key_words(*key, stage, units));
    }
    return words;
}

ShotShown shown_at(const SheetInput& input, const plan::Shot& shot,
                   const std::vector<const checks::ShotScene*>& scenes) {
    const plan::Plan& plan = *input.analysis.plan;
    ShotShown found;
    found.shot = &shot;
    found.camera = plan::find(plan, shot.camera);
    for (const checks::ShotScene* scene : scenes) {
        if (scene->shot->id != shot.id || found.figures) {
            continue;
        }
        found.scene = scene;
        found.figures = checks::figures_of(*scene);
        if (found.figures) {
            found.marks = checks::light_at_marks(
                {plan, input.catalogue, input.analysis.shots, input.analysis.beats}, *scene);
        }
    }
    return found;
}

void add_camera(std::vector<WordEntry>& entries, const plan::Plan& plan, const ShotShown& shown) {
    const checks::ShotFigures& figures = *shown.figures;
    if (shown.camera != nullptr) {
        entries.emplace_back("Camera",
                             fmt::format("{}, {}", shown.camera->id.name, shown.camera->support));
    }
    entries.emplace_back("Lens", fmt::format("{}; takes in {} by {}", lens_words(figures),
                                             degrees_text(figures.view.angle.horizontal),
                                             degrees_text(figures.view.angle.vertical)));
    entries.emplace_back("Height", height_words(figures, plan.units));
    std::string place = lists::place_text(plan, shown.shot->at);
    if (const std::string grid = lists::grid_place_text(plan, shown.shot->at); !grid.empty()) {
        place += fmt::format("; under {}", grid);
    }
    entries.emplace_back("Place", place);
    entries.emplace_back("Focus", focus_words(figures, plan.units));
}

void add_subjects(std::vector<WordEntry>& entries, const plan::Plan& plan, const ShotShown& shown) {
    const checks::ShotFigures& figures = *shown.figures;
    for (std::size_t i = 0; i < figures.subjects.size(); ++i) {
        const checks::SubjectFigures& subject = figures.subjects[i];
        entries.emplace_back(subject.person.name,
                             subject_words(subject, figures.wanted, plan.units));
        if (i < shown.marks.size() && !shown.scene->stage.lamps.empty()) {
            entries.emplace_back(
                "", light_words(shown.marks[i], shown.scene->stage, figures.view.stop, plan.units));
        }
    }
}

} // namespace

std::vector<ShotShown> shots_shown(const SheetInput& input, const Selection& selection) {
    std::vector<ShotShown> all;
    for (const plan::Shot* shot : lists::in_shooting_order(*input.analysis.plan)) {
        ShotShown found = shown_at(input, *shot, selection.shots);
        if (found.scene != nullptr) {
            all.push_back(std::move(found));
        }
    }
    return all;
}

std::string lens_words(const checks::ShotFigures& figures) {
    return fmt::format("{}, {}", checks::focal_text(figures.view.focal),
                       checks::stop_text(figures.view.stop));
}

std::string focus_words(const checks::ShotFigures& figures, UnitSystem units) {
    const std::string at = shown(figures.view.focus_distance, units);
    if (!figures.sharp) {
        return fmt::format("at {}, nearer than the focal length", at);
    }
    return fmt::format("at {}, sharp from {} {}", at, shown(figures.sharp->near_limit, units),
                       figures.sharp->far_limit
                           ? fmt::format("to {}", shown(*figures.sharp->far_limit, units))
                           : std::string{"on"});
}

std::string height_words(const checks::ShotFigures& figures, UnitSystem units) {
    return fmt::format("lens {} up, {}", length_words(figures.view.pose.lens.z(), units),
                       tilt_words(figures.view.pose.tilt));
}

std::string size_words(const checks::SubjectFigures& subject,
                       const std::optional<optics::ShotSize>& wanted) {
    if (!subject.frame) {
        return {};
    }
    const std::string size = optics::name_of(subject.frame->size);
    return wanted && *wanted != subject.frame->size
               ? fmt::format("{}, wanted {}", size, optics::name_of(*wanted))
               : size;
}

std::string move_words(const plan::Plan& plan, const plan::Shot& shot) {
    std::string words;
    for (const Vec2& place : shot.moves) {
        words +=
            fmt::format("{}to {}", words.empty() ? "" : "; then ", lists::place_text(plan, place));
    }
    if (!words.empty()) {
        words += fmt::format("; {} in all", length_words(lists::move_length_m(shot), plan.units));
    }
    return words;
}

std::string beat_words(const plan::Plan& plan, const plan::Shot& shot) {
    std::string words;
    for (const plan::Id<plan::Beat>& id : shot.beats) {
        const plan::Beat* beat = plan::find(plan, id);
        words += fmt::format("{}{}", words.empty() ? "" : "; ", id.name);
        if (beat != nullptr && !beat->name.empty()) {
            words += fmt::format(", {}", beat->name);
        }
    }
    return words;
}

std::vector<WordEntry> words_about(const SheetInput& input, const ShotShown& shown) {
    const plan::Plan& plan = *input.analysis.plan;
    std::vector<WordEntry> entries;
    entries.emplace_back("Beat", beat_words(plan, *shown.shot));
    if (shown.figures) {
        add_camera(entries, plan, shown);
        add_subjects(entries, plan, shown);
    } else {
        entries.emplace_back("Frame", "finds nobody to look at");
    }
    entries.emplace_back("Moves", move_words(plan, *shown.shot));
    entries.emplace_back("Framing", shown.shot->composition);
    for (const std::string& note : shown.shot->notes) {
        entries.emplace_back("Note", note);
    }
    std::erase_if(entries, [](const WordEntry& entry) { return entry.second.empty(); });
    return entries;
}

} // namespace throwline::sheet
