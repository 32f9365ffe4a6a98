#pragma once

#include "card/parts.h"

namespace throwline::card {

/// How lamps are held, and where along what holds them.
std::vector<Piece> mount_pieces(const edit::Context& context, const Parts<plan::Lamp>& lamps);

} // namespace throwline::card
