/// Things of several kinds: what all of them have is set of all of them.

#include "base/words.h"
#include "card/card_kinds.h"
#include "card/thing_words.h"

#include <algorithm>
#include <array>
#include <map>

namespace throwline::card {

namespace {

/// What is asked for, in this order: the key that every kind must have, and the words before it.
struct Shared {
    const char* key;
    const char* words;
};
constexpr std::array<Shared, 8> kShared{{{"finish", "finish "},
                                         {"dressed", "a shot may see them: "},
                                         {"height", "height "},
                                         {"thickness", "thickness "},
                                         {"elevation", "elevation "},
                                         {"turn", "turn "},
                                         {"beats", "in "},
                                         {"circuit", "on circuit "}}};

using OfOneKind = std::vector<edit::Thing>;

std::vector<OfOneKind> by_kind(std::span<const edit::Thing> chosen) {
    std::map<edit::Kind, OfOneKind> kinds;
    for (const edit::Thing& thing : chosen) {
        kinds[thing.kind].push_back(thing);
    }
    std::vector<OfOneKind> groups;
    for (auto& [kind, things] : kinds) {
        groups.push_back(std::move(things));
    }
    return groups;
}

std::string counts_text(const std::vector<OfOneKind>& groups) {
    std::vector<std::string> counts;
    for (const OfOneKind& things : groups) {
        counts.push_back(what_of(things));
    }
    return listed(counts);
}

/// "height of 3 things", within a sentence.
std::string lower_first(std::string label) {
    if (!label.empty() && label.front() >= 'A' && label.front() <= 'Z') {
        label.front() = static_cast<char>(label.front() - 'A' + 'a');
    }
    return label;
}

/// One field that sets those of all kinds, one after the other.
Field together(const std::vector<const Field*>& fields, int count) {
    Field made = *fields.front();
    made.working = nullptr;
    const std::string words = made.label.substr(0, made.label.find(" of "));
    made.label = words + " of " + counted(count, "thing");
    made.mixed = std::any_of(fields.begin(), fields.end(), [&](const Field* one) {
        return one->mixed || one->value != made.value;
    });
    made.value = made.mixed ? "" : made.value;
    std::vector<decltype(Field::set)> sets;
    for (const Field* one : fields) {
        sets.push_back(one->set);
        // Only what each kind can be.
        std::erase_if(made.choices, [&](const std::string& choice) {
            return std::find(one->choices.begin(), one->choices.end(), choice)
                   == one->choices.end();
        });
    }
    made.set = [sets, name = "Set " + lower_first(made.label)](
                   const edit::Context& context, const std::string& text) -> Result<edit::Step> {
        edit::Step step{name, context.plan, {}};
        for (const auto& set : sets) {
            Result<edit::Step> next =
                set(edit::Context{step.plan, context.catalogue, context.now}, text);
            if (!next) {
                return next;
            }
            step.plan = std::move(next->plan);
        }
        return step;
    };
    return made;
}

/// The fields with a key, one a card; empty when one of them has none.
std::vector<const Field*> fields_of_all(const std::vector<Card>& cards, const char* key) {
    std::vector<const Field*> fields;
    for (const Card& card : cards) {
        const Field* one = field(card, key);
        if (one == nullptr || (!fields.empty() && one->kind != fields.front()->kind)) {
            return {};
        }
        fields.push_back(one);
    }
    return fields;
}

} // namespace

void several_card(Card& card, const CardInput& input) {
    const std::vector<OfOneKind> groups = by_kind(input.chosen);
    say(card, {capitalised(counts_text(groups)) + "."});
    std::vector<Card> cards;
    for (const OfOneKind& things : groups) {
        cards.push_back(card_for({input.context, things, nullptr}));
    }
    std::vector<Piece> pieces;
    for (const Shared& shared : kShared) {
        const std::vector<const Field*> fields = fields_of_all(cards, shared.key);
        if (fields.empty()) {
            continue;
        }
        pieces.emplace_back((pieces.empty() ? std::string{"All: "} : std::string{"; "})
                            + shared.words);
        pieces.emplace_back(together(fields, static_cast<int>(input.chosen.size())));
    }
    if (pieces.empty()) {
        say(card, {"They have no value in common that could be set."});
        return;
    }
    pieces.emplace_back(".");
    say(card, std::move(pieces));
}

} // namespace throwline::card
