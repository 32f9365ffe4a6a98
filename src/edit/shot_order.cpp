#include "edit/in_order.h"
#include "edit/new_names.h"
#include "edit/on_paper.h"
#include "edit/order.h"
#include "edit/shot_ends.h"
#include "plan/places.h"
#include "plan/renames.h"

#include <map>
#include <set>

namespace throwline::edit {

namespace {

/// To where a shot of nobody looks: up the page, 3 m from the camera.
const Vec2 kAhead{0.0, 3.0};

/// Where a camera without a place is put for a shot: 3 m down the page from its subjects.
Vec2 place_before(const std::vector<plan::Id<plan::Person>>& subjects,
                  const std::map<plan::Id<plan::Person>, plan::Mark>& marks) {
    Vec2 middle = Vec2::Zero();
    for (const plan::Id<plan::Person>& subject : subjects) {
        middle += marks.at(subject).at / static_cast<double>(subjects.size());
    }
    return middle - kAhead;
}

/// "2A", "2B", ... "2Z", "2AA".
std::string next_shot_name(const plan::Plan& plan, const std::string& beat) {
    const std::set<std::string> taken = taken_names(plan);
    for (int number = 0;; ++number) {
        // Letters as grid positions have them: A..Z, AA, AB, ...
        const std::string position = plan::grid_name(number, 0);
        const std::string name = beat + position.substr(0, position.size() - 1);
        if (!taken.contains(name)) {
            return name;
        }
    }
}

/// A shot of everybody of the cast who is there, from where the camera is.
plan::Shot new_shot(const Context& context, const plan::Id<plan::Beat>& beat,
                    const plan::Camera& by) {
    plan::Shot shot;
    shot.id.name = next_shot_name(context.plan, beat.name);
    shot.beats = {beat};
    shot.camera = by.id;
    const auto marks = plan::marks_at(context.plan, beat);
    for (const plan::Person& person : context.plan.people) {
        if (person.kind == plan::PersonKind::cast && marks.contains(person.id)) {
            shot.subjects.push_back(person.id);
        }
    }
    const auto place = plan::camera_place(context.plan, by, beat, context.now.shot);
    shot.at = place ? place->at : place_before(shot.subjects, marks);
    if (shot.subjects.empty()) {
        shot.aim = raised(shot.at + kAhead, by.eye_height.m());
    } else {
        shot.size = ShotSize::medium;
    }
    return shot;
}

/// Behind the other shots that begin in a beat and those of the beats before it.
std::ptrdiff_t place_behind(const plan::Plan& plan, const plan::Id<plan::Beat>& beat) {
    const std::size_t wanted = index_of(plan.beats, beat);
    std::size_t at = 0;
    for (std::size_t i = 0; i < plan.shots.size(); ++i) {
        const std::vector<plan::Id<plan::Beat>>& beats = plan.shots[i].beats;
        if (!beats.empty() && index_of(plan.beats, beats.front()) <= wanted) {
            at = i + 1;
        }
    }
    return static_cast<std::ptrdiff_t>(at);
}

tl::unexpected<Error> no_shot(const plan::Id<plan::Shot>& shot) {
    return failure(fmt::format("there is no shot {}", shot.name));
}

} // namespace

Result<Step> shot_added(const Context& context, const plan::Id<plan::Beat>& beat,
                        const plan::Id<plan::Camera>& camera) {
    if (plan::find(context.plan, beat) == nullptr) {
        return beat.empty() ? failure("make a beat first: a shot belongs to one") : no_beat(beat);
    }
    const plan::Camera* by = plan::find(context.plan, camera);
    if (by == nullptr) {
        return failure("put a camera on the floor first");
    }
    const plan::Shot shot = new_shot(context, beat, *by);
    if (!is_on_paper(shot.at) || !is_on_paper(shot.at + kAhead)) {
        return failure(std::string{kOffPaper});
    }
    Step step{fmt::format("New shot {}", shot.id.name), context.plan, {}};
    step.plan.shots.insert(step.plan.shots.begin() + place_behind(context.plan, beat), shot);
    return step;
}

Result<Step> shot_removed(const Context& context, const plan::Id<plan::Shot>& shot) {
    if (plan::find(context.plan, shot) == nullptr) {
        return no_shot(shot);
    }
    Step step{fmt::format("Take shot {} away", shot.name), context.plan, {}};
    end_shot(step.plan, shot);
    return step;
}

Result<Step> shot_moved(const Context& context, const plan::Id<plan::Shot>& shot, int to,
                        const plan::Id<plan::Beat>& into) {
    Step step{fmt::format("Move shot {}", shot.name), context.plan, {}};
    std::vector<plan::Shot>& shots = step.plan.shots;
    const std::size_t from = index_of(shots, shot);
    if (from == shots.size()) {
        return no_shot(shot);
    }
    if (!into.empty()) {
        if (plan::find(context.plan, into) == nullptr) {
            return no_beat(into);
        }
        std::vector<plan::Id<plan::Beat>>& beats = shots[from].beats;
        if (std::find(beats.begin(), beats.end(), into) == beats.end()) {
            beats = {into};
        }
    }
    const auto last = static_cast<int>(shots.size()) - 1;
    move_to(shots, from, static_cast<std::size_t>(std::clamp(to, 0, last)));
    return step;
}

Result<Step> shot_renamed(const Context& context, const plan::Id<plan::Shot>& shot,
                          const std::string& id) {
    if (plan::find(context.plan, shot) == nullptr) {
        return no_shot(shot);
    }
    if (id.empty()) {
        return failure("a shot needs a name");
    }
    if (const auto good = check_new_name(context.plan, shot.name, id); !good) {
        return tl::unexpected{good.error()};
    }
    Step step{fmt::format("Rename shot {}", shot.name), context.plan, {}};
    plan::rename(step.plan, shot, id);
    return step;
}

} // namespace throwline::edit
