#include "ui/floor/hands.h"

#include "edit/make.h"
#include "ui/floor/hand_box.h"
#include "ui/floor/hand_choose.h"
#include "ui/floor/hand_measure.h"
#include "ui/floor/hand_opening.h"
#include "ui/floor/hand_points.h"
#include "ui/floor/hand_underlay.h"

#include <algorithm>
#include <array>

namespace throwline::ui {

namespace {

std::unique_ptr<Hand> choose(Bench& bench) {
    return std::make_unique<ChooseHand>(bench);
}

std::unique_ptr<Hand> room(Bench& bench) {
    return std::make_unique<PointsHand>(
        bench, PointsDrawn{0, true, 3, edit::room_drawn, "Click where a corner of the room is"});
}

std::unique_ptr<Hand> flats(Bench& bench) {
    const auto make = [](const edit::Context& context, std::span<const Vec2> points) {
        return edit::flats_drawn(context, points.front(), points.back());
    };
    return std::make_unique<PointsHand>(
        bench, PointsDrawn{2, false, 2, make, "Click where flats begin; they face left as drawn"});
}

std::unique_ptr<Hand> drape(Bench& bench) {
    return std::make_unique<PointsHand>(
        bench, PointsDrawn{0, false, 2, edit::drape_drawn, "Click where the drape begins"});
}

std::unique_ptr<Hand> pipe(Bench& bench) {
    const auto make = [](const edit::Context& context, std::span<const Vec2> points) {
        return edit::pipe_drawn(context, points.front(), points.back());
    };
    return std::make_unique<PointsHand>(
        bench, PointsDrawn{2, false, 2, make, "Click where the pipe begins"});
}

template <Drawn drawn>
std::unique_ptr<Hand> box(Bench& bench) {
    return std::make_unique<BoxHand>(bench, drawn);
}

template <plan::OpeningKind kind>
std::unique_ptr<Hand> opening(Bench& bench) {
    return std::make_unique<OpeningHand>(bench, kind);
}

std::unique_ptr<Hand> measure(Bench& bench) {
    return std::make_unique<MeasureHand>(bench);
}

std::unique_ptr<Hand> underlay(Bench& bench) {
    return std::make_unique<UnderlayHand>(bench);
}

constexpr std::array kHands{
    HandRow{HandId::choose, "choose", "Choose and move", choose},
    HandRow{HandId::room, "room", "Draw walls", room},
    HandRow{HandId::flats, "flats", "Draw flats", flats},
    HandRow{HandId::drape, "drape", "Draw a drape", drape},
    HandRow{HandId::pipe, "pipe", "Draw a pipe", pipe},
    HandRow{HandId::box, "box", "Draw a box", box<Drawn::box>},
    HandRow{HandId::platform, "platform", "Draw a platform", box<Drawn::platform>},
    HandRow{HandId::column, "column", "Draw a column", box<Drawn::column>},
    HandRow{HandId::door, "door", "Put in a door", opening<plan::OpeningKind::door>},
    HandRow{HandId::window, "window", "Put in a window", opening<plan::OpeningKind::window>},
    HandRow{HandId::opening, "opening", "Put in an opening", opening<plan::OpeningKind::opening>},
    HandRow{HandId::measure, "measure", "Measure", measure},
    HandRow{HandId::underlay, "underlay", "Place the scanned plan", underlay},
};

} // namespace

std::span<const HandRow> hands() {
    return kHands;
}

const HandRow& hand_row(HandId id) {
    return *std::find_if(kHands.begin(), kHands.end(),
                         [&](const HandRow& row) { return row.id == id; });
}

} // namespace throwline::ui
