#include "card/say_field.h"

#include "base/nearest_name.h"
#include "base/utf8.h"
#include "card/card.h"
#include "edit/say_words.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::card {

namespace {

constexpr std::size_t kMostCompletions = 12;
constexpr std::string_view kSet = "set ";

Card card_of(const edit::Context& context, std::span<const edit::Thing> things) {
    return card_for({context, things, nullptr});
}

std::vector<const Field*> fields_of(const Card& card) {
    std::vector<const Field*> fields;
    for (const Sentence& sentence : card.sentences) {
        for (const Piece& piece : sentence.pieces) {
            if (const Field* one = std::get_if<Field>(&piece)) {
                fields.push_back(one);
            }
        }
    }
    return fields;
}

std::string key_words(const Field& field) {
    std::string words = field.key;
    std::replace(words.begin(), words.end(), '_', ' ');
    return edit::folded(words);
}

/// "lens height" of "Lens height of camera 2".
std::string label_words(const Field& field) {
    return edit::folded(field.label.substr(0, field.label.find(" of ")));
}

bool has_words(const std::string& text, const std::string& words) {
    return (" " + text + " ").find(" " + words + " ") != std::string::npos;
}

using Fits = bool (*)(const Field& field, const std::string& words);

/// From the strictest on.
constexpr Fits kFits[]{
    [](const Field& field, const std::string& words) { return label_words(field) == words; },
    [](const Field& field, const std::string& words) { return key_words(field) == words; },
    [](const Field& field, const std::string& words) {
        return has_words(label_words(field), words) || has_words(key_words(field), words);
    }};

std::vector<const Field*> fields_called(const Card& card, const std::string& words) {
    for (const Fits fits : kFits) {
        std::vector<const Field*> found;
        for (const Field* one : fields_of(card)) {
            if (fits(*one, words)) {
                found.push_back(one);
            }
        }
        if (!found.empty()) {
            return found;
        }
    }
    return {};
}

std::vector<std::string> words_of(const Card& card) {
    std::vector<std::string> words;
    for (const Field* one : fields_of(card)) {
        const std::string label = label_words(*one);
        if (!label.empty() && std::find(words.begin(), words.end(), label) == words.end()) {
            words.push_back(label);
        }
    }
    return words;
}

Error no_such_value(const Card& card, const std::string& words) {
    const std::string nearest = nearest_name(words, words_of(card));
    return {fmt::format("{} has no value called {}{}", card.title, in_quotes(words),
                        nearest.empty() ? "" : "; the nearest is " + in_quotes(nearest)),
            {}};
}

/// One thing of each kind, and the production.
std::vector<std::string> words_of_all_kinds(const edit::Context& context) {
    std::vector<std::string> words;
    std::vector<edit::Kind> seen;
    const auto add = [&](std::span<const edit::Thing> things) {
        for (std::string& word : field_words(context, things)) {
            if (std::find(words.begin(), words.end(), word) == words.end()) {
                words.push_back(std::move(word));
            }
        }
    };
    for (const edit::Thing& thing : edit::things_on_floor(context)) {
        if (std::find(seen.begin(), seen.end(), thing.kind) == seen.end()) {
            seen.push_back(thing.kind);
            add(std::span{&thing, 1});
        }
    }
    add({});
    return words;
}

} // namespace

Result<edit::Step> fulfilled(const edit::Context& context, std::span<const edit::Thing> chosen,
                             const edit::FieldWish& wish) {
    const Card card =
        card_of(context, wish.things.empty() ? chosen : std::span<const edit::Thing>{wish.things});
    const std::string words = edit::folded(wish.field);
    const std::vector<const Field*> fields = fields_called(card, words);
    if (fields.empty()) {
        return tl::unexpected{no_such_value(card, words)};
    }
    if (fields.size() > 1 && label_words(*fields[0]) != words) {
        return failure(fmt::format("{} may mean {} or {}", in_quotes(words),
                                   in_quotes(label_words(*fields[0])),
                                   in_quotes(label_words(*fields[1]))));
    }
    return fields.front()->set(context, wish.text);
}

std::vector<std::string> field_words(const edit::Context& context,
                                     std::span<const edit::Thing> things) {
    return words_of(card_of(context, things));
}

std::vector<std::string> words_next(const edit::Context& context,
                                    std::span<const edit::Thing> chosen, std::string_view sentence,
                                    std::span<const edit::SayableAction> actions) {
    std::vector<std::string> offers = edit::completions(context, chosen, sentence, actions);
    const std::string typed = edit::folded(sentence) + (sentence.ends_with(' ') ? " " : "");
    if (!typed.starts_with(kSet)) {
        return offers;
    }
    const std::string begun = typed.substr(kSet.size());
    std::vector<std::string> words =
        chosen.empty() ? words_of_all_kinds(context) : field_words(context, chosen);
    std::erase_if(
        words, [&](const std::string& word) { return !word.starts_with(begun) || word == begun; });
    words.insert(words.end(), offers.begin(), offers.end());
    words.resize(std::min(words.size(), kMostCompletions));
    return words;
}

} // namespace throwline::card
