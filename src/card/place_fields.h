#pragma once

#include "card/card.h"

namespace throwline::card {

/// The name itself, by which all else mentions it.
Field name_field(const edit::Thing& thing);
/// Where a thing stands, across and up the page; nothing for what is not on the floor now.
std::vector<Piece> place_pieces(const edit::Context& context, const edit::Thing& thing);
/// Whether things are locked and hidden.
std::vector<Piece> held_pieces(const edit::Context& context, std::span<const edit::Thing> things,
                               const std::string& what);

} // namespace throwline::card
