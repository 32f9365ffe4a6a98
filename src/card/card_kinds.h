#pragma once

#include "card/card.h"

/// The card of each kind of thing.
namespace throwline::card {

void say(Card& card, std::vector<Piece> pieces);
void heading(Card& card, std::string words);

// All the chosen things are of the kind.
void camera_card(Card& card, const CardInput& input);
void lamp_card(Card& card, const CardInput& input);
void person_card(Card& card, const CardInput& input);
void scenery_card(Card& card, const CardInput& input);
void wall_card(Card& card, const CardInput& input);
void opening_card(Card& card, const CardInput& input);
void pipe_card(Card& card, const CardInput& input);
void outlet_card(Card& card, const CardInput& input);
void boom_card(Card& card, const CardInput& input);

/// Things of several kinds: what all of them have.
void several_card(Card& card, const CardInput& input);
/// Nothing is chosen.
void production_card(Card& card, const CardInput& input);
void grid_sentences(Card& card, const CardInput& input);

/// "28 mm at T2.8, sees Ana in a medium close-up from 2.90 m": the pieces behind a comma.
std::vector<Piece> picture_pieces(const CardInput& input, const plan::Id<plan::Shot>& shot);
/// The rest of a shot, under a heading of its own; nothing when there is none.
void shot_sentences(Card& card, const CardInput& input, const plan::Id<plan::Shot>& shot);

/// What a lamp gives, and where from; what a face gets. Nothing while that is not known.
void lamp_figures(Card& card, const CardInput& input, const plan::Lamp& lamp);
void face_figures(Card& card, const CardInput& input, const plan::Id<plan::Person>& person);
/// What the whole production amounts to.
void production_figures(Card& card, const CardInput& input);

} // namespace throwline::card
