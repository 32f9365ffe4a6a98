#include "sheet/frame_words.h"

#include "base/length_text.h"
#include "base/words.h"
#include "checks/subject_frame.h"
#include "stage/framing.h"

#include <fmt/format.h>

namespace throwline::sheet {

namespace {

/// The subject that the shot is named by, when anybody can be measured.
std::optional<checks::SizedSubject> sized_subject(const checks::ShotScene& scene) {
    if (scene.shot->size) {
        return checks::best_sized_subject(scene, *scene.shot->size);
    }
    for (const stage::Figure* figure : stage::subjects_of(scene.stage, *scene.shot)) {
        if (const auto frame = checks::subject_frame(*scene.view, *figure)) {
            return checks::SizedSubject{figure, *frame};
        }
    }
    return std::nullopt;
}

} // namespace

std::string FrameWords::line() const {
    std::string line;
    for (const std::string* word : {&camera, &focal, &angle, &size, &distance, &stop}) {
        if (!word->empty()) {
            line += line.empty() ? *word : fmt::format(" \u00B7 {}", *word);
        }
    }
    return line;
}

FrameWords frame_words(const checks::ShotScene& scene, UnitSystem units) {
    FrameWords words;
    words.camera = scene.shot->camera.name;
    if (!scene.view) {
        return words;
    }
    const stage::ShotView& view = *scene.view;
    words.focal = focal_text(view.focal);
    words.angle = fmt::format("{} \u00D7 {}", degrees_text(view.angle.horizontal),
                              degrees_text(view.angle.vertical));
    words.stop = stop_text(view.stop);
    if (const auto sized = sized_subject(scene)) {
        words.size = optics::name_of(sized->frame.size);
        words.distance = fmt::format("{} to {}", shown(Length::metres(sized->frame.depth_m), units),
                                     sized->figure->person.name);
    } else {
        words.distance = fmt::format("focus {}", shown(view.focus_distance, units));
    }
    return words;
}

} // namespace throwline::sheet
