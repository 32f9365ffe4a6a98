#include "edit/hung_order.h"

#include "optics/picture_area.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

double aspect_of(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                 const plan::Shot& shot) {
    const plan::Camera* camera = plan::find(plan, shot.camera);
    const catalogue::SensorMode* sensor =
        camera == nullptr ? nullptr : catalogue.sensor(camera->sensor);
    const catalogue::Lens* lens = camera == nullptr ? nullptr : catalogue.lens(camera->lens);
    return sensor == nullptr || lens == nullptr ? HungShot{}.aspect
                                                : optics::effective_sensor(*sensor, *lens).aspect();
}

HungShot hung(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
              const plan::Shot& shot) {
    HungShot made{shot.id, {}, aspect_of(plan, catalogue, shot)};
    if (shot.beats.size() > 1) {
        made.goes_on_to = shot.beats.back();
    }
    return made;
}

bool hangs_on(const plan::Shot& shot, const plan::Id<plan::Beat>& beat) {
    return !shot.beats.empty() && shot.beats.front() == beat;
}

int index_of(const plan::Plan& plan, const plan::Id<plan::Beat>& beat) {
    const auto at = std::find_if(plan.beats.begin(), plan.beats.end(),
                                 [&](const plan::Beat& other) { return other.id == beat; });
    return static_cast<int>(at - plan.beats.begin());
}

/// The shots of a plan but one, in order.
std::vector<const plan::Shot*> others(const plan::Plan& plan,
                                      const plan::Id<plan::Shot>& left_out) {
    std::vector<const plan::Shot*> shots;
    for (const plan::Shot& shot : plan.shots) {
        if (shot.id != left_out) {
            shots.push_back(&shot);
        }
    }
    return shots;
}

/// Place among all other shots that comes before the one at `slot` of a beat; behind the last shot
/// of the beat, or of the beats before it, when there is none.
int place_of_slot(const plan::Plan& plan, const std::vector<const plan::Shot*>& shots,
                  const plan::Id<plan::Beat>& beat, int slot) {
    const int wanted = index_of(plan, beat);
    int after = 0;
    int passed = 0;
    for (std::size_t i = 0; i < shots.size(); ++i) {
        if (hangs_on(*shots[i], beat) && passed++ == slot) {
            return static_cast<int>(i);
        }
        if (!shots[i]->beats.empty() && index_of(plan, shots[i]->beats.front()) <= wanted) {
            after = static_cast<int>(i) + 1;
        }
    }
    return after;
}

/// Where a shot hangs: its beat, and its place among those of the beat.
struct Hook {
    int beat = 0;
    int slot = 0;
    /// How many others hang there.
    int others = 0;
};

Hook hook_of(const plan::Plan& plan, const plan::Shot& shot) {
    Hook hook{index_of(plan, shot.beats.front()), 0, 0};
    bool seen = false;
    for (const plan::Shot& other : plan.shots) {
        if (other.id == shot.id) {
            seen = true;
        } else if (hangs_on(other, shot.beats.front())) {
            hook.slot += seen ? 0 : 1;
            ++hook.others;
        }
    }
    return hook;
}

int shots_on(const plan::Plan& plan, const plan::Id<plan::Beat>& beat) {
    return static_cast<int>(
        std::count_if(plan.shots.begin(), plan.shots.end(),
                      [&](const plan::Shot& shot) { return hangs_on(shot, beat); }));
}

} // namespace

double walking_time_s(double length_m) {
    return length_m / kWalkingPace_m_per_s;
}

std::vector<HungBeat> hung_order(const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    std::vector<HungBeat> order;
    for (const plan::Beat& beat : plan.beats) {
        HungBeat& made = order.emplace_back();
        made.beat = beat.id;
        if (order.size() > 1) {
            made.walks = walks_into(plan, beat.id);
        }
        for (const Walk& walk : made.walks) {
            made.longest_walk_m = std::max(made.longest_walk_m, walk.length_m);
        }
        for (const plan::Shot& shot : plan.shots) {
            if (hangs_on(shot, beat.id)) {
                made.shots.push_back(hung(plan, catalogue, shot));
            }
        }
    }
    return order;
}

Result<Step> shot_hung(const Context& context, const plan::Id<plan::Shot>& shot,
                       const plan::Id<plan::Beat>& beat, int slot) {
    const int to = place_of_slot(context.plan, others(context.plan, shot), beat, slot);
    return shot_moved(context, shot, to, beat);
}

Result<Step> shot_stepped(const Context& context, const plan::Id<plan::Shot>& shot, int by) {
    const plan::Plan& plan = context.plan;
    const plan::Shot* found = plan::find(plan, shot);
    if (found == nullptr || found->beats.empty()) {
        return failure(fmt::format("there is no shot {}", shot.name));
    }
    Hook hook = hook_of(plan, *found);
    hook.slot += by;
    if (hook.slot < 0 && hook.beat > 0) {
        --hook.beat;
        hook.slot = shots_on(plan, plan.beats[static_cast<std::size_t>(hook.beat)].id);
    } else if (hook.slot > hook.others && hook.beat + 1 < static_cast<int>(plan.beats.size())) {
        ++hook.beat;
        hook.slot = 0;
    } else if (hook.slot < 0 || hook.slot > hook.others) {
        return failure(
            fmt::format("shot {} is the {} one already", shot.name, by < 0 ? "first" : "last"));
    }
    return shot_hung(context, shot, plan.beats[static_cast<std::size_t>(hook.beat)].id, hook.slot);
}

Result<Step> beat_stepped(const Context& context, const plan::Id<plan::Beat>& beat, int by) {
    const int to = index_of(context.plan, beat) + by;
    if (to < 0 || to >= static_cast<int>(context.plan.beats.size())) {
        return failure(
            fmt::format("beat {} is the {} one already", beat.name, by < 0 ? "first" : "last"));
    }
    return beat_moved(context, beat, to);
}

Result<Step> beat_retold(const Context& context, const plan::Id<plan::Beat>& beat,
                         const std::string& name) {
    Step step{fmt::format("Name beat {}", beat.name), context.plan, {}};
    for (plan::Beat& other : step.plan.beats) {
        if (other.id == beat) {
            other.name = name;
            return step;
        }
    }
    return failure(fmt::format("there is no beat {}", beat.name));
}

} // namespace throwline::edit
