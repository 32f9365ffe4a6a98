/// Sayings that choose, and that hold things together, still or out of sight.

#include "edit/say_make.h"

#include "edit/moves.h"

#include <array>

namespace throwline::edit {

namespace {

template <bool lock>
Result<Said> lock_or_not(const Context& context, const Heard& heard) {
    return as_said(locked(context, heard.things[0], lock));
}

template <bool hide>
Result<Said> hide_or_not(const Context& context, const Heard& heard) {
    return as_said(hidden(context, heard.things[0], hide));
}

Result<Said> show_all(const Context& context, const Heard&) {
    return as_said(everything_shown(context));
}

Result<Said> group(const Context& context, const Heard& heard) {
    return as_said(grouped(context, heard.things[0]));
}

Result<Said> ungroup(const Context& context, const Heard& heard) {
    return as_said(ungrouped(context, heard.things[0]));
}

Result<Said> choose(const Context&, const Heard& heard) {
    return Said{ChooseWish{heard.things[0]}};
}

Result<Said> choose_nothing(const Context&, const Heard&) {
    return Said{ChooseWish{}};
}

constexpr std::array kRows{
    SayingRow{{"choose THINGS", "Chooses by name", "choose all lamps"}, choose},
    SayingRow{{"choose nothing", "Lets go of what is chosen", "choose nothing"}, choose_nothing},
    SayingRow{{"lock THINGS", "Keeps things where they are", "lock all scenery"},
              lock_or_not<true>},
    SayingRow{{"unlock THINGS", "Lets them move again", "unlock sofa"}, lock_or_not<false>},
    SayingRow{{"show everything", "Shows what is hidden", "show everything"}, show_all},
    SayingRow{{"hide THINGS", "Takes things out of sight, not off the plan", "hide all lamps"},
              hide_or_not<true>},
    SayingRow{{"show THINGS", "Shows what was hidden", "show lamp 3"}, hide_or_not<false>},
    SayingRow{{"group THINGS", "Moves together from then on", "group table and chair left"}, group},
    SayingRow{{"ungroup THINGS", "Each by itself again", "ungroup table"}, ungroup}};

} // namespace

std::span<const SayingRow> hold_sayings() {
    return kRows;
}

} // namespace throwline::edit
