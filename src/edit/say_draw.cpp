/// Sayings that draw the room and what is built in it.

#include "edit/say_make.h"

#include "edit/make.h"

#include <array>

namespace throwline::edit {

namespace {

Result<Said> draw_room(const Context& context, const Heard& heard) {
    const double width_m = heard.lengths[0].m();
    const double depth_m = heard.lengths[1].m();
    const std::array<Vec2, 4> corners{Vec2{0.0, 0.0}, Vec2{width_m, 0.0}, Vec2{width_m, depth_m},
                                      Vec2{0.0, depth_m}};
    return as_said(room_drawn(context, corners));
}

Result<Said> draw_opening(const Context& context, const Heard& heard) {
    const plan::OpeningKind kind = heard.words[0] == "door"     ? plan::OpeningKind::door
                                   : heard.words[0] == "window" ? plan::OpeningKind::window
                                                                : plan::OpeningKind::opening;
    return as_said(opening_added(context, kind, heard.places[0], heard.lengths[0]));
}

Result<Said> draw_between(const Context& context, const Heard& heard) {
    const std::string& what = heard.words[0];
    const Vec2& from = heard.places[0];
    const Vec2& to = heard.places[1];
    if (what == "flats") {
        return as_said(flats_drawn(context, from, to));
    }
    if (what == "pipe") {
        return as_said(pipe_drawn(context, from, to));
    }
    if (what == "drape") {
        return as_said(drape_drawn(context, std::array{from, to}));
    }
    return as_said(box_drawn(context, from, to, what == "platform"));
}

Result<Said> draw_column(const Context& context, const Heard& heard) {
    return as_said(cylinder_drawn(context, heard.places[0], heard.lengths[0] / 2.0));
}

constexpr std::array kRows{
    SayingRow{{"draw room LENGTH by LENGTH", "A room of four walls, its corner at 0, 0",
               "draw room 8 m by 6 m"},
              draw_room},
    SayingRow{{"draw door|window|opening at PLACE LENGTH wide", "In the wall that is nearest",
               "draw door at 2 m, 0 m 90 cm wide"},
              draw_opening},
    SayingRow{{"draw flats|pipe|drape|box|platform from PLACE to PLACE",
               "Between two places, or from corner to corner",
               "draw flats from 1 m, 5 m to 6 m, 5 m"},
              draw_between},
    SayingRow{{"draw column at PLACE LENGTH across", "A round column",
               "draw column at 2 m, 2 m 40 cm across"},
              draw_column}};

} // namespace

std::span<const SayingRow> draw_sayings() {
    return kRows;
}

} // namespace throwline::edit
