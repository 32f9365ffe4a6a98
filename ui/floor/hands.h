#pragma once

#include <QString>
#include <memory>
#include <span>
#include <string_view>

/// What the pointer does on the floor.
namespace throwline::ui {

class Bench;
class Hand;

enum class HandId {
    /// Chooses, moves, and drags handles.
    choose,
    room,
    flats,
    drape,
    pipe,
    box,
    platform,
    column,
    door,
    window,
    opening,
    measure,
    /// Moves the scanned plan and tells its size.
    underlay
};

/// A row of the table of hands.
struct HandRow {
    HandId id = HandId::choose;
    /// Kebab-case, for actions and tests.
    std::string_view name;
    /// What it does, for menus: "Draw walls".
    std::string_view title;
    std::unique_ptr<Hand> (*make)(Bench& bench);
};

/// Every hand, in the order of a menu.
std::span<const HandRow> hands();
const HandRow& hand_row(HandId id);

} // namespace throwline::ui
