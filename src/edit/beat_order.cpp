#include "edit/order.h"

#include "edit/beat_names.h"
#include "edit/in_order.h"
#include "edit/moves.h"
#include "edit/new_names.h"
#include "edit/shot_ends.h"
#include "plan/places.h"
#include "plan/renames.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <set>
#include <variant>

namespace throwline::edit {

namespace {

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

/// Where somebody is: their mark without the way to it, or off the floor.
using Whereabouts = std::variant<plan::Mark, plan::OffFloor>;

Whereabouts whereabouts(const std::map<plan::Id<plan::Person>, plan::Mark>& marks,
                        const plan::Id<plan::Person>& person) {
    const auto found = marks.find(person);
    if (found == marks.end()) {
        return plan::OffFloor{};
    }
    plan::Mark mark = found->second;
    mark.path.clear();
    return mark;
}

/// Everybody keeps the mark that they had in each beat of the old order: what was carried on then,
/// and would be another now, is written down.
void keep_marks(const plan::Plan& old, plan::Plan& plan) {
    std::map<plan::Id<plan::Person>, Whereabouts> now;
    for (plan::Beat& beat : plan.beats) {
        const auto marks = plan::marks_at(old, beat.id);
        for (const plan::Person& person : plan.people) {
            const Whereabouts then = whereabouts(marks, person.id);
            Whereabouts& here = now.try_emplace(person.id, plan::OffFloor{}).first->second;
            if (here != then) {
                beat.marks.try_emplace(person.id, then);
                here = then;
            }
        }
    }
}

void end_in_shots(plan::Plan& plan, const plan::Id<plan::Beat>& beat) {
    std::vector<plan::Id<plan::Shot>> ended;
    for (plan::Shot& shot : plan.shots) {
        std::erase(shot.beats, beat);
        if (shot.beats.empty()) {
            ended.push_back(shot.id);
        }
    }
    for (const plan::Id<plan::Shot>& shot : ended) {
        end_shot(plan, shot);
    }
}

template <class Thing>
bool is_only_in(const Thing& thing, const plan::Id<plan::Beat>& beat) {
    return thing.beats.size() == 1 && thing.beats.front() == beat;
}

/// A boom that was there in this beat alone is gone with it, and not there in all beats instead.
Result<plan::Plan> without_booms_of(const Context& context, const plan::Id<plan::Beat>& beat) {
    std::vector<Thing> only_here;
    for (const plan::Boom& boom : context.plan.booms) {
        if (is_only_in(boom, beat)) {
            only_here.push_back({Kind::boom, boom.id.name, 0});
        }
    }
    Result<plan::Plan> plan = context.plan;
    if (!only_here.empty()) {
        plan = removed(context, only_here).map([](Step step) { return std::move(step.plan); });
    }
    if (plan) {
        for (plan::Boom& boom : plan->booms) {
            std::erase(boom.beats, beat);
        }
    }
    return plan;
}

/// A lamp that burned in this beat alone stays hung, and burns in the beat before it, or the first;
/// `at` is where the beat was.
void end_in_lamps(plan::Plan& plan, const plan::Id<plan::Beat>& beat, std::size_t at) {
    for (plan::Lamp& lamp : plan.lamps) {
        const bool was_only_here = is_only_in(lamp, beat);
        std::erase(lamp.beats, beat);
        if (was_only_here && !plan.beats.empty()) {
            lamp.beats = {plan.beats[at == 0 ? 0 : at - 1].id};
        }
        if (lamp.aim_beat == beat) {
            lamp.aim_beat = {};
        }
    }
}

} // namespace

std::string next_beat_name(const plan::Plan& plan) {
    for (std::size_t number = plan.beats.size() + 1;; ++number) {
        const plan::Id<plan::Beat> id{std::to_string(number)};
        if (plan::find(plan, id) == nullptr) {
            return id.name;
        }
    }
}

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
    const std::size_t at = index_of(context.plan.beats, id);
    if (at == context.plan.beats.size()) {
        return no_beat(id);
    }
    Result<plan::Plan> rest = without_booms_of(context, id);
    if (!rest) {
        return tl::unexpected{rest.error()};
    }
    Step step{fmt::format("Take beat {} away", id.name), std::move(*rest), {}};
    plan::Plan& plan = step.plan;
    if (at + 1 < plan.beats.size()) {
        for (const auto& [person, change] : plan.beats[at].marks) {
            plan.beats[at + 1].marks.emplace(person, change);
        }
    }
    end_in_shots(plan, id);
    plan.beats.erase(plan.beats.begin() + static_cast<std::ptrdiff_t>(at));
    end_in_lamps(plan, id, at);
    return step;
}

Result<Step> beat_moved(const Context& context, const plan::Id<plan::Beat>& id, int to) {
    Step step{fmt::format("Move beat {}", id.name), context.plan, {}};
    plan::Plan& plan = step.plan;
    const std::size_t from = index_of(plan.beats, id);
    if (from == plan.beats.size()) {
        return no_beat(id);
    }
    const auto last = static_cast<int>(plan.beats.size()) - 1;
    move_to(plan.beats, from, static_cast<std::size_t>(std::clamp(to, 0, last)));
    keep_marks(context.plan, plan);
    put_beats_in_order(plan);
    return step;
}

Result<Step> beat_renamed(const Context& context, const plan::Id<plan::Beat>& beat,
                          const std::string& id) {
    if (plan::find(context.plan, beat) == nullptr) {
        return no_beat(beat);
    }
    if (id.empty()) {
        return failure("a beat needs a name");
    }
    if (const auto good = check_new_name(context.plan, beat.name, id); !good) {
        return tl::unexpected{good.error()};
    }
    Step step{fmt::format("Rename beat {}", beat.name), context.plan, {}};
    plan::rename(step.plan, beat, id);
    return step;
}

} // namespace throwline::edit
