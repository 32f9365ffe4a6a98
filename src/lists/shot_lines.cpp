#include "lists/shot_lines.h"

#include "checks/framing.h"
#include "checks/subject_frame.h"
#include "checks/wording.h"
#include "lists/cells.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::lists {

namespace {

std::size_t first_beat(const plan::Plan& plan, const plan::Shot& shot) {
    std::size_t first = plan.beats.size();
    for (std::size_t i = plan.beats.size(); i-- > 0;) {
        const bool in_beat =
            std::find(shot.beats.begin(), shot.beats.end(), plan.beats[i].id) != shot.beats.end();
        first = in_beat ? i : first;
    }
    return first;
}

} // namespace

std::vector<const plan::Shot*> in_shooting_order(const plan::Plan& plan) {
    std::vector<std::pair<std::size_t, const plan::Shot*>> by_beat;
    for (const plan::Shot& shot : plan.shots) {
        by_beat.emplace_back(first_beat(plan, shot), &shot);
    }
    std::stable_sort(by_beat.begin(), by_beat.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<const plan::Shot*> shots;
    for (const auto& [beat, shot] : by_beat) {
        shots.push_back(shot);
    }
    return shots;
}

std::vector<ShotLine> shot_lines(const checks::Analysis& analysis) {
    std::vector<ShotLine> lines;
    for (const plan::Shot* shot : in_shooting_order(*analysis.plan)) {
        ShotLine& line = lines.emplace_back(ShotLine{shot, {}});
        for (const checks::ShotScene& scene : analysis.shots) {
            if (scene.shot == shot) {
                line.scenes.push_back(&scene);
            }
        }
    }
    return lines;
}

std::string size_got_text(const checks::ShotScene& scene) {
    std::vector<std::string> sizes;
    std::vector<std::string> with_names;
    if (!scene.view) {
        return {};
    }
    for (const stage::Figure* figure : checks::subjects_on_floor(scene)) {
        if (const auto frame = checks::subject_frame(*scene.view, *figure)) {
            sizes.push_back(optics::name_of(frame->size));
            with_names.push_back(sizes.back() + " of " + figure->person.name);
        }
    }
    const bool same =
        std::adjacent_find(sizes.begin(), sizes.end(), std::not_equal_to<>{}) == sizes.end();
    return sizes.empty() ? std::string{} : same ? sizes.front() : joined(with_names);
}

std::string subjects_text(const plan::Shot& shot) {
    return joined(names_of(shot.subjects));
}

std::string beats_text(const plan::Shot& shot) {
    return joined(names_of(shot.beats));
}

std::string beat_heading(const plan::Beat& beat) {
    if (beat.id.empty()) {
        return "The whole plan";
    }
    const std::string name = checks::capitalised(checks::said(beat.id));
    return beat.name.empty() ? name : name + ", " + beat.name;
}

double move_length_m(const plan::Shot& shot) {
    double sum_m = 0.0;
    Vec2 from = shot.at;
    for (const Vec2& to : shot.moves) {
        sum_m += (to - from).norm();
        from = to;
    }
    return sum_m;
}

std::optional<Length> subject_distance(const checks::ShotScene& scene) {
    const std::vector<const stage::Figure*> subjects = checks::subjects_on_floor(scene);
    if (!scene.view || subjects.empty()) {
        return std::nullopt;
    }
    return Length::metres(scene.view->frame.depth(subjects.front()->face));
}

std::vector<std::string> unresolved_remarks(const std::vector<ShotLine>& lines) {
    std::vector<std::string> remarks;
    for (const ShotLine& line : lines) {
        for (const checks::ShotScene* scene : line.scenes) {
            if (!scene->view) {
                remarks.push_back(fmt::format("{} finds nobody to look at in {}.",
                                              checks::capitalised(checks::said(line.shot->id)),
                                              checks::said(scene->beat->id)));
            }
        }
    }
    return remarks;
}

} // namespace throwline::lists
