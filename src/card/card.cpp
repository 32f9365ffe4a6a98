#include "card/card.h"

#include "base/words.h"
#include "card/card_kinds.h"
#include "card/locate.h"
#include "card/place_fields.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::card {

namespace {

void card_of_kind(Card& card, const CardInput& input) {
    switch (input.chosen.front().kind) {
    case edit::Kind::wall:
        wall_card(card, input);
        return;
    case edit::Kind::opening:
        opening_card(card, input);
        return;
    case edit::Kind::pipe:
        pipe_card(card, input);
        return;
    case edit::Kind::scenery:
        scenery_card(card, input);
        return;
    case edit::Kind::person:
        person_card(card, input);
        return;
    case edit::Kind::camera:
        camera_card(card, input);
        return;
    case edit::Kind::lamp:
        lamp_card(card, input);
        return;
    case edit::Kind::boom:
        boom_card(card, input);
        return;
    case edit::Kind::outlet:
        outlet_card(card, input);
        return;
    }
}

/// Place, name and hold, alike for all kinds.
void say_where(Card& card, const CardInput& input) {
    heading(card, "Place");
    if (input.chosen.size() == 1) {
        const edit::Thing& thing = input.chosen.front();
        say(card, place_pieces(input.context, thing));
        if (thing.kind != edit::Kind::wall && thing.kind != edit::Kind::outlet) {
            say(card, {"Called ", name_field(thing), "."});
        }
    }
    say(card, held_pieces(input.context, input.chosen, what_of(input.chosen)));
}

template <class Part>
const Part* piece_with(const Card& card, const std::string& key) {
    for (const Sentence& sentence : card.sentences) {
        for (const Piece& piece : sentence.pieces) {
            const auto* found = std::get_if<Part>(&piece);
            if (found != nullptr && found->key == key) {
                return found;
            }
        }
    }
    return nullptr;
}

} // namespace

void say(Card& card, std::vector<Piece> pieces) {
    if (!pieces.empty()) {
        card.sentences.push_back({std::move(pieces), false});
    }
}

void heading(Card& card, std::string words) {
    card.sentences.push_back({{std::move(words)}, true});
}

Card card_for(const CardInput& input) {
    Card card;
    if (input.chosen.empty()) {
        card.title = input.context.plan.title.empty() ? "Untitled" : input.context.plan.title;
        production_card(card, input);
        return card;
    }
    const edit::Kind kind = input.chosen.front().kind;
    const bool one_kind = std::all_of(input.chosen.begin(), input.chosen.end(),
                                      [&](const edit::Thing& thing) { return thing.kind == kind; });
    if (!one_kind) {
        card.title = counted(static_cast<int>(input.chosen.size()), "thing");
        several_card(card, input);
        say(card, held_pieces(input.context, input.chosen, card.title));
        return card;
    }
    card.title = capitalised(what_of(input.chosen));
    card_of_kind(card, input);
    say_where(card, input);
    return card;
}

const Field* field(const Card& card, const std::string& key) {
    return piece_with<Field>(card, key);
}

const Figure* figure(const Card& card, const std::string& key) {
    return piece_with<Figure>(card, key);
}

std::string as_text(const Card& card) {
    std::string text = card.title + "\n";
    for (const Sentence& sentence : card.sentences) {
        for (const Piece& piece : sentence.pieces) {
            if (const auto* words = std::get_if<std::string>(&piece)) {
                text += *words;
            } else if (const auto* typed = std::get_if<Field>(&piece)) {
                text += "[" + (typed->mixed ? "several" : typed->value) + "]";
            } else {
                text += std::get<Figure>(piece).value;
            }
        }
        text += "\n";
    }
    return text;
}

} // namespace throwline::card
