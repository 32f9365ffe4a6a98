#include "edit/order.h"

#include "edit/new_names.h"
#include "edit/placing.h"
#include "edit/shot_ends.h"
#include "plan/places.h"
#include "plan/renames.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

template <class Entity>
std::size_t index_of(const std::vector<Entity>& entities, const plan::Id<Entity>& id) {
    const auto at = std::find_if(entities.begin(), entities.end(),
                                 [&](const Entity& entity) { return entity.id == id; });
    return static_cast<std::size_t>(at - entities.begin());
}

template <class Entity>
void move_to(std::vector<Entity>& entities, std::size_t from, std::size_t to) {
    const auto begin = entities.begin();
    const auto at = [&](std::size_t index) { return begin + static_cast<std::ptrdiff_t>(index); };
    if (from < to) {
        std::rotate(at(from), at(from + 1), at(to + 1));
    } else {
        std::rotate(at(to), at(from), at(from + 1));
    }
}

/// Beats of a shot, boom or lamp stand in the order of the plan.
void put_in_order(const plan::Plan& plan, std::vector<plan::Id<plan::Beat>>& beats) {
    std::stable_sort(beats.begin(), beats.end(), [&](const auto& a, const auto& b) {
        return index_of(plan.beats, a) < index_of(plan.beats, b);
    });
}

void put_beats_in_order(plan::Plan& plan) {
    for (plan::Shot& shot : plan.shots) {
        put_in_order(plan, shot.beats);
    }
    for (plan::Boom& boom : plan.booms) {
        put_in_order(plan, boom.beats);
    }
    for (plan::Lamp& lamp : plan.lamps) {
        put_in_order(plan, lamp.beats);
    }
}

/// "3" after "2"; names of beats are mostly numbers.
std::string next_beat_name(const plan::Plan& plan) {
    std::set<std::string> taken = taken_names(plan);
    for (std::size_t number = plan.beats.size() + 1;; ++number) {
        const std::string name = std::to_string(number);
        if (!taken.contains(name)) {
            return name;
        }
    }
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

tl::unexpected<Error> no_beat(const plan::Id<plan::Beat>& beat) {
    return failure(fmt::format("there is no beat {}", beat.name));
}

tl::unexpected<Error> no_shot(const plan::Id<plan::Shot>& shot) {
    return failure(fmt::format("there is no shot {}", shot.name));
}

} // namespace

Result<Step> beat_added(const Context& context, const plan::Id<plan::Beat>& after,
                        const std::string& name) {
    Step step{{}, context.plan, {}};
    plan::Beat beat;
    beat.id.name = next_beat_name(context.plan);
    beat.name = name;
    std::size_t at = 0;
    if (!after.empty()) {
        at = index_of(step.plan.beats, after);
        if (at == step.plan.beats.size()) {
            return no_beat(after);
        }
        ++at;
    }
    step.name = fmt::format("New beat {}", beat.id.name);
    step.plan.beats.insert(step.plan.beats.begin() + static_cast<std::ptrdiff_t>(at), beat);
    return step;
}

Result<Step> beat_removed(const Context& context, const plan::Id<plan::Beat>& id) {
    Step step{fmt::format("Take beat {} away", id.name), context.plan, {}};
    plan::Plan& plan = step.plan;
    const std::size_t at = index_of(plan.beats, id);
    if (at == plan.beats.size()) {
        return no_beat(id);
    }
    if (at + 1 < plan.beats.size()) {
        for (const auto& [person, change] : plan.beats[at].marks) {
            plan.beats[at + 1].marks.emplace(person, change);
        }
    }
    std::vector<plan::Id<plan::Shot>> ended;
    for (plan::Shot& shot : plan.shots) {
        std::erase(shot.beats, id);
        if (shot.beats.empty()) {
            ended.push_back(shot.id);
        }
    }
    for (const plan::Id<plan::Shot>& shot : ended) {
        end_shot(plan, shot);
    }
    // What was there in this beat alone is gone with it, and not there in all beats instead.
    const auto only_here = [&](const auto& thing) {
        return thing.beats.size() == 1 && thing.beats.front() == id;
    };
    std::erase_if(plan.booms, only_here);
    for (plan::Boom& boom : plan.booms) {
        std::erase(boom.beats, id);
    }
    for (plan::Lamp& lamp : plan.lamps) {
        if (!only_here(lamp)) {
            std::erase(lamp.beats, id);
        } else if (plan.beats.size() > 1) {
            lamp.beats = {plan.beats[at == 0 ? 1 : at - 1].id};
        } else {
            lamp.beats.clear();
        }
        if (lamp.aim_beat == id) {
            lamp.aim_beat = {};
        }
    }
    plan.beats.erase(plan.beats.begin() + static_cast<std::ptrdiff_t>(at));
    return step;
}

Result<Step> beat_moved(const Context& context, const plan::Id<plan::Beat>& id, int to) {
    Step step{fmt::format("Move beat {}", id.name), context.plan, {}};
    plan::Plan& plan = step.plan;
    const std::size_t from = index_of(plan.beats, id);
    if (from == plan.beats.size()) {
        return no_beat(id);
    }
    // Everybody keeps the mark that they had in each beat, so what was carried on is written down.
    for (plan::Beat& beat : plan.beats) {
        const auto marks = plan::marks_at(context.plan, beat.id);
        for (const plan::Person& person : plan.people) {
            const auto mark = marks.find(person.id);
            if (mark == marks.end()) {
                beat.marks.insert_or_assign(person.id, plan::OffFloor{});
            } else if (!beat.marks.contains(person.id)) {
                plan::Mark carried = mark->second;
                carried.path.clear();
                beat.marks.emplace(person.id, carried);
            }
        }
    }
    const auto last = static_cast<int>(plan.beats.size()) - 1;
    move_to(plan.beats, from, static_cast<std::size_t>(std::clamp(to, 0, last)));
    put_beats_in_order(plan);
    return step;
}

Result<Step> beat_renamed(const Context& context, const plan::Id<plan::Beat>& beat,
                          const std::string& id) {
    if (plan::find(context.plan, beat) == nullptr) {
        return no_beat(beat);
    }
    if (id.empty() || (id != beat.name && taken_names(context.plan).contains(id))) {
        return failure(id.empty() ? "a beat needs a name"
                                  : fmt::format("something is called {} already", id));
    }
    Step step{fmt::format("Rename beat {}", beat.name), context.plan, {}};
    plan::rename(step.plan, beat, id);
    return step;
}

Result<Step> shot_added(const Context& context, const plan::Id<plan::Beat>& beat,
                        const plan::Id<plan::Camera>& camera) {
    const plan::Camera* by = plan::find(context.plan, camera);
    if (plan::find(context.plan, beat) == nullptr) {
        return beat.empty() ? failure("make a beat first: a shot belongs to one") : no_beat(beat);
    }
    if (by == nullptr) {
        return failure("put a camera on the floor first");
    }
    Step step{{}, context.plan, {}};
    plan::Shot shot;
    shot.id.name = next_shot_name(context.plan, beat.name);
    shot.beats = {beat};
    shot.camera = camera;
    if (const auto place = plan::camera_place(context.plan, *by, beat, context.now.shot)) {
        shot.at = place->at;
    }
    const auto marks = plan::marks_at(context.plan, beat);
    for (const plan::Person& person : context.plan.people) {
        if (person.kind == plan::PersonKind::cast && marks.contains(person.id)) {
            shot.subjects.push_back(person.id);
        }
    }
    if (shot.subjects.empty()) {
        // Straight up the page, at the height of the lens, until somebody is there to look at.
        const double height_m = by->eye_height.m();
        shot.aim = raised(shot.at + Vec2{0.0, 3.0}, height_m);
    } else {
        shot.size = ShotSize::medium;
    }
    // After the other shots of the beat and those before it.
    const std::size_t place_in_order = index_of(context.plan.beats, beat);
    std::size_t at = 0;
    for (std::size_t i = 0; i < step.plan.shots.size(); ++i) {
        if (index_of(context.plan.beats, step.plan.shots[i].beats.front()) <= place_in_order) {
            at = i + 1;
        }
    }
    step.name = fmt::format("New shot {}", shot.id.name);
    step.plan.shots.insert(step.plan.shots.begin() + static_cast<std::ptrdiff_t>(at), shot);
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
    if (id.empty() || (id != shot.name && taken_names(context.plan).contains(id))) {
        return failure(id.empty() ? "a shot needs a name"
                                  : fmt::format("something is called {} already", id));
    }
    Step step{fmt::format("Rename shot {}", shot.name), context.plan, {}};
    plan::rename(step.plan, shot, id);
    return step;
}

} // namespace throwline::edit
