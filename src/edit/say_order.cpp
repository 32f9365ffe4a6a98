/// Sayings about beats and shots.

#include "edit/say_make.h"

#include "edit/order.h"
#include "plan/places.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

Result<Said> go_to_beat(const Context& context, const Heard& heard) {
    Now now{heard.beats[0], {}};
    for (const plan::Shot& shot : context.plan.shots) {
        if (shot.beats.front() == now.beat) {
            now.shot = shot.id;
            break;
        }
    }
    return Said{NowWish{now}};
}

Result<Said> go_to_shot(const Context& context, const Heard& heard) {
    const plan::Shot& shot = *plan::find(context.plan, heard.shots[0]);
    return Said{NowWish{{shot.beats.front(), shot.id}}};
}

plan::Id<plan::Beat> last_beat(const plan::Plan& plan) {
    return plan.beats.empty() ? plan::Id<plan::Beat>{} : plan.beats.back().id;
}

Result<Said> new_beat(const Context& context, const Heard& heard) {
    const plan::Id<plan::Beat> shown =
        context.now.beat.empty() ? last_beat(context.plan) : context.now.beat;
    const plan::Id<plan::Beat> after = heard.beats.empty() ? shown : heard.beats[0];
    return as_said(beat_added(context, after, heard.texts.empty() ? "" : heard.texts[0]));
}

Result<Said> new_shot(const Context& context, const Heard& heard) {
    const plan::Id<plan::Beat> beat = heard.beats.empty() ? context.now.beat : heard.beats[0];
    if (beat.empty()) {
        return failure("there is no beat yet; say \"new beat\" first");
    }
    return as_said(shot_added(context, beat, {heard.things[0][0].name}));
}

Result<Said> take_beat(const Context& context, const Heard& heard) {
    return as_said(beat_removed(context, heard.beats[0]));
}

Result<Said> take_shot(const Context& context, const Heard& heard) {
    return as_said(shot_removed(context, heard.shots[0]));
}

Result<Said> rename_beat(const Context& context, const Heard& heard) {
    return as_said(beat_renamed(context, heard.beats[0], heard.texts[0]));
}

Result<Said> rename_shot(const Context& context, const Heard& heard) {
    return as_said(shot_renamed(context, heard.shots[0], heard.texts[0]));
}

int place_among(const plan::Plan& plan, const plan::Id<plan::Beat>& beat) {
    const auto found = std::find_if(plan.beats.begin(), plan.beats.end(),
                                    [&](const plan::Beat& one) { return one.id == beat; });
    return static_cast<int>(found - plan.beats.begin());
}

/// Its place once it is taken out of where it was.
Result<Said> move_beat(const Context& context, const Heard& heard) {
    const int from = place_among(context.plan, heard.beats[0]);
    const int other = place_among(context.plan, heard.beats[1]);
    if (from == other) {
        return failure("a beat cannot stand before or after itself");
    }
    const int to = other + (heard.words[0] == "after" ? 1 : 0) - (from < other ? 1 : 0);
    return as_said(beat_moved(context, heard.beats[0], to));
}

/// After the shots that hang on that beat.
Result<Said> move_shot(const Context& context, const Heard& heard) {
    int to = 0;
    int place = 0;
    for (const plan::Shot& shot : context.plan.shots) {
        if (shot.id == heard.shots[0]) {
            continue;
        }
        ++place;
        if (place_among(context.plan, shot.beats.front())
            <= place_among(context.plan, heard.beats[0])) {
            to = place;
        }
    }
    return as_said(shot_moved(context, heard.shots[0], to, heard.beats[0]));
}

constexpr std::array kRows{
    SayingRow{{"go to beat BEAT", "Shows another beat", "go to beat 2"}, go_to_beat},
    SayingRow{{"go to shot SHOT", "Shows another shot", "go to shot 2A"}, go_to_shot},
    SayingRow{{"new beat", "A beat after the one shown", "new beat"}, new_beat},
    SayingRow{{"new beat after BEAT", "A beat after another", "new beat after 2"}, new_beat},
    SayingRow{{"new beat after BEAT called TEXT", "And what happens in it",
               "new beat after 2 called Ana sits down"},
              new_beat},
    SayingRow{{"new shot on CAMERA", "A shot of the beat shown, from where the camera is",
               "new shot on camera 2"},
              new_shot},
    SayingRow{{"new shot on CAMERA in beat BEAT", "The same in another beat",
               "new shot on camera 2 in beat 3"},
              new_shot},
    SayingRow{{"take away beat BEAT", "Takes a beat out of the order", "take away beat 3"},
              take_beat},
    SayingRow{{"take away shot SHOT", "Takes a shot out of the order", "take away shot 2B"},
              take_shot},
    SayingRow{
        {"rename beat BEAT to TEXT", "Gives it another number, everywhere", "rename beat 2 to 2a"},
        rename_beat},
    SayingRow{
        {"rename shot SHOT to TEXT", "Gives it another name, everywhere", "rename shot 2A to 2X"},
        rename_shot},
    SayingRow{{"move beat BEAT before|after BEAT", "Puts a beat elsewhere in the order",
               "move beat 3 before 2"},
              move_beat},
    SayingRow{
        {"move shot SHOT to beat BEAT", "Hangs a shot on another beat", "move shot 2A to beat 3"},
        move_shot}};

} // namespace

std::optional<Now> moment_made(const plan::Plan& before, const plan::Plan& after) {
    for (const plan::Shot& shot : after.shots) {
        if (after.shots.size() > before.shots.size() && plan::find(before, shot.id) == nullptr) {
            return Now{shot.beats.front(), shot.id};
        }
    }
    for (const plan::Beat& beat : after.beats) {
        if (after.beats.size() > before.beats.size() && plan::find(before, beat.id) == nullptr) {
            return Now{beat.id, {}};
        }
    }
    return std::nullopt;
}

std::span<const SayingRow> order_sayings() {
    return kRows;
}

} // namespace throwline::edit
