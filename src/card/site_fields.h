#pragma once

#include "card/parts.h"

namespace throwline::card {

/// Where and when the production is shot.
void site_sentences(Card& card, const Parts<plan::Plan>& plan);
/// The scanned plan beneath the floor; nothing when there is none.
void underlay_sentences(Card& card, const edit::Context& context);

} // namespace throwline::card
