#include "edit/clip.h"

#include "edit/beat_names.h"
#include "edit/lamp_stand.h"
#include "edit/moves.h"
#include "edit/new_names.h"
#include "edit/pick.h"
#include "edit/placing.h"
#include "plan/places.h"
#include "plan/read_plan.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

const Vec2 kBeside_m{0.5, -0.5};

/// What a clip holds to be put down; pipes that only came to hold lamps are among it when they are
/// not in the plan.
std::vector<Thing> held(const Context& clip) {
    std::vector<Thing> things;
    for (const Thing& thing : things_on_floor(clip)) {
        switch (thing.kind) {
        case Kind::pipe:
        case Kind::scenery:
        case Kind::person:
        case Kind::camera:
        case Kind::lamp:
        case Kind::boom:
            things.push_back(thing);
            break;
        case Kind::wall:
        case Kind::opening:
        case Kind::outlet:
            break;
        }
    }
    return things;
}

/// The clip with names that the plan has not.
Result<std::vector<Thing>> give_names(const Context& context, plan::Plan& clip, const Now& now) {
    std::set<std::string> taken = taken_names(context.plan);
    const std::set<std::string> own = taken_names(clip);
    std::vector<Thing> things;
    for (const Thing& thing : held({clip, context.catalogue, now})) {
        if (!taken.contains(thing.name)) {
            taken.insert(thing.name);
            things.push_back(thing);
            continue;
        }
        std::string name = thing.name;
        do {
            name = new_name(taken, name);
        } while (own.contains(name));
        Result<Step> step = renamed({clip, context.catalogue, now}, thing, name);
        if (!step) {
            return tl::unexpected{step.error()};
        }
        clip = std::move(step->plan);
        things.push_back({thing.kind, name, 0});
    }
    return things;
}

/// A lamp that hung where the plan has nothing to hang from stands there instead.
void hold_here(const plan::Plan& plan, const plan::Plan& clip,
               const catalogue::Catalogue& catalogue, plan::Lamp& lamp) {
    if (plan::lamp_point(plan, lamp)) {
        return;
    }
    const std::optional<Vec3> was = plan::lamp_point(clip, lamp);
    const Vec2 at = was ? floor_of(*was) : Vec2::Zero();
    const double height_m = was ? was->z() : 2.0;
    if (auto stand = stand_at(catalogue, at)) {
        const catalogue::Support* support = catalogue.support(stand->support);
        stand->height =
            std::clamp(Length::metres(height_m), support->height_min, support->height_max);
        lamp.mount = *stand;
    } else {
        lamp.mount = plan::PracticalMount{at, Length::metres(height_m)};
    }
}

template <class Entity>
void append(std::vector<Entity>& to, const std::vector<Entity>& from) {
    to.insert(to.end(), from.begin(), from.end());
}

/// Puts everything down where it was in the clip.
void put_all(const Context& context, const plan::Plan& clip, plan::Plan& plan) {
    append(plan.pipes, clip.pipes);
    append(plan.scenery, clip.scenery);
    append(plan.people, clip.people);
    append(plan.cameras, clip.cameras);
    append(plan.booms, clip.booms);
    for (plan::Lamp lamp : clip.lamps) {
        hold_here(plan, clip, context.catalogue, lamp);
        plan.lamps.push_back(std::move(lamp));
    }
    if (clip.people.empty()) {
        return;
    }
    plan::Beat* beat = find(plan, context.now.beat);
    if (beat == nullptr) {
        if (plan.beats.empty()) {
            plan.beats.emplace_back().id.name = next_beat_name(plan);
        }
        beat = &plan.beats.front();
    }
    for (const auto& [person, mark] : clip.beats.front().marks) {
        beat->marks.insert_or_assign(person, mark);
    }
}

std::optional<Vec2> middle_of(const Context& context, const std::vector<Thing>& things) {
    std::optional<Vec2> low;
    Vec2 high = Vec2::Zero();
    for (const Thing& thing : things) {
        for (const Vec2& corner : outline_of(context, thing)) {
            high = low ? Vec2{high.cwiseMax(corner)} : corner;
            low = low ? Vec2{low->cwiseMin(corner)} : corner;
        }
    }
    return low ? std::optional{Vec2{(*low + high) / 2.0}} : std::nullopt;
}

} // namespace

Result<Step> pasted(const Context& context, std::string_view text,
                    const std::optional<Vec2>& middle) {
    Checked<plan::Plan> clip = plan::read_plan(text, context.catalogue);
    if (!clip || clip->beats.empty()) {
        return failure("what was copied cannot be put on a floor");
    }
    const Now clip_now{clip->beats.front().id, {}};
    Result<std::vector<Thing>> things = give_names(context, *clip, clip_now);
    if (!things) {
        return tl::unexpected{things.error()};
    }
    Step step{{}, context.plan, *things};
    put_all(context, *clip, step.plan);
    Now now = context.now;
    if (now.beat.empty() && !step.plan.beats.empty()) {
        now.beat = step.plan.beats.front().id;
    }
    const Context there{step.plan, context.catalogue, {now.beat, {}}};
    const std::optional<Vec2> was = middle_of(there, *things);
    const Vec2 by_m = middle && was ? Vec2{*middle - *was} : kBeside_m;
    Result<Step> done = moved(there, *things, by_m);
    if (!done) {
        return done;
    }
    done->name = fmt::format("Paste {}", words_for(*things));
    done->made = *things;
    return done;
}

} // namespace throwline::edit
