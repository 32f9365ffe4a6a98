#include "card/card.h"

#include "card/fields.h"
#include "card/locate.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::card {

namespace {

std::string capitalised(std::string words) {
    if (!words.empty() && words.front() >= 'a' && words.front() <= 'z') {
        words.front() = static_cast<char>(words.front() - 'a' + 'A');
    }
    return words;
}

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

} // namespace

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
        card.title = fmt::format("{} things", input.chosen.size());
        std::vector<std::string> names;
        for (const edit::Thing& thing : input.chosen) {
            names.push_back(edit::name_of(thing));
        }
        say(card, {joined(names) + "."});
        say(card, {"Choose things of one kind to change what they have in common."});
        return card;
    }
    card.title = capitalised(what_of(input.chosen));
    card_of_kind(card, input);
    if (input.chosen.size() == 1) {
        const edit::Thing& thing = input.chosen.front();
        say(card, place_pieces(input.context, thing));
        if (kind != edit::Kind::wall && kind != edit::Kind::outlet) {
            say(card, {"Called ", name_field(thing), "."});
        }
    }
    return card;
}

const Field* field(const Card& card, const std::string& key) {
    for (const Sentence& sentence : card.sentences) {
        for (const Piece& piece : sentence.pieces) {
            const auto* found = std::get_if<Field>(&piece);
            if (found != nullptr && found->key == key) {
                return found;
            }
        }
    }
    return nullptr;
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
