#include "edit/say.h"

#include "base/nearest_name.h"
#include "base/utf8.h"
#include "edit/say_heard.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// Words of a sentence that may belong to one mistyped name.
constexpr std::size_t kMostWordsMistyped = 4;
/// So many things that could have stood there are told; more would be no help.
constexpr std::size_t kMostTold = 6;
constexpr std::size_t kMostCompletions = 12;

struct Heeded {
    std::optional<Heard> heard;
    const SayingRow* row = nullptr;
    const SayableAction* action = nullptr;
};

/// Holds the sentence against everything that can be said; the first that fits is meant.
Heeded heeded(Listener& listener, std::span<const SayableAction> actions) {
    for (const SayingRow* row : all_sayings()) {
        if (auto heard = listener.heard(row->saying.form)) {
            return {std::move(heard), row, nullptr};
        }
    }
    for (const SayableAction& action : actions) {
        if (listener.hears_words(action.words)) {
            return {std::nullopt, nullptr, &action};
        }
    }
    return {};
}

/// The name that the words at a place most likely meant. Of one to some words of the sentence, the
/// count is taken that is most like a name.
std::string nearest_at(const SaidWords& words, std::size_t at,
                       const std::vector<std::string>& names) {
    std::string nearest;
    std::size_t least = 0;
    const std::size_t most = std::min(kMostWordsMistyped, words.count() - at);
    for (std::size_t count = 1; count <= most; ++count) {
        const std::string typed = words.joined(at, at + count);
        const std::string name = nearest_name(typed, names);
        if (name.empty()) {
            continue;
        }
        const std::size_t distance = typing_distance(typed, name);
        if (nearest.empty() || distance < least) {
            nearest = name;
            least = distance;
        }
    }
    return nearest;
}

/// "left, right, up or down"
std::string told_as_choice(const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        text += i == 0 ? "" : i + 1 == parts.size() ? " or " : ", ";
        text += parts[i];
    }
    return text;
}

std::vector<std::string> expectations_told(const std::vector<Expected>& expected) {
    std::vector<std::string> told;
    for (const Expected& one : expected) {
        if (one.slot == Slot::action) {
            continue;
        }
        const std::string words =
            one.word.empty() ? std::string{name_of(one.slot)} : in_quotes(one.word);
        if (std::find(told.begin(), told.end(), words) == told.end()) {
            told.push_back(words);
        }
    }
    return told;
}

Error not_understood(const Listener& listener, const SaidWords& words) {
    const std::size_t at = listener.furthest();
    const int column = listener.complaint_column();
    const Place place{{}, {}, 0, column > 0 ? column : words.column(at)};
    const std::vector<Expected> expected = listener.expected_at(at);
    std::vector<std::string> names;
    for (const Expected& one : expected) {
        for (std::string& name : listener.names_for(one)) {
            names.push_back(std::move(name));
        }
    }
    const bool is_at_end = at >= words.count();
    const std::string nearest = is_at_end ? "" : nearest_at(words, at, names);
    if (!listener.complaint().empty() && nearest.empty()) {
        return {listener.complaint(), place};
    }
    std::string message =
        is_at_end ? "the sentence goes on"
                  : fmt::format("cannot understand {} here", in_quotes(words.typed(at, at + 1)));
    const std::vector<std::string> told = expectations_told(expected);
    if (!told.empty() && told.size() <= kMostTold) {
        message += fmt::format("{} {}", is_at_end ? " with" : "; it may be", told_as_choice(told));
    }
    if (!nearest.empty()) {
        message += fmt::format("; the nearest is {}", in_quotes(nearest));
    }
    return {message, place};
}

/// How well a name goes on from what was typed of it: 0 it begins so, 1 a later word of it does, 2
/// it does not.
int fit(const std::string& name, const std::string& typed) {
    if (name.compare(0, typed.size(), typed) == 0) {
        return 0;
    }
    return name.find(" " + typed) != std::string::npos ? 1 : 2;
}

/// What was typed of a name that begins at a word.
std::string begun(const SaidWords& words, std::size_t at) {
    const bool goes_on = at < words.count() && words.ends_in_space();
    return words.joined(at, words.count()) + (goes_on ? " " : "");
}

struct Offer {
    int fit = 0;
    std::string name;
};

void add_offers(std::vector<Offer>& offers, const Listener& listener, const SaidWords& words,
                std::size_t at) {
    const std::string typed = begun(words, at);
    for (const Expected& expected : listener.expected_at(at)) {
        for (std::string& name : listener.names_for(expected)) {
            const std::string key = folded(name);
            const bool is_there = key == typed;
            const int fits = fit(key, typed);
            const bool is_known = std::any_of(offers.begin(), offers.end(),
                                              [&](const Offer& one) { return one.name == name; });
            if (fits < 2 && !is_there && !is_known) {
                offers.push_back({fits, std::move(name)});
            }
        }
    }
}

} // namespace

std::vector<const SayingRow*> all_sayings() {
    std::vector<const SayingRow*> rows;
    for (const auto family : {move_sayings(), put_sayings(), draw_sayings(), aim_sayings(),
                              set_sayings(), hold_sayings(), order_sayings()}) {
        for (const SayingRow& row : family) {
            rows.push_back(&row);
        }
    }
    return rows;
}

std::span<const Saying> sayings() {
    static const std::vector<Saying> kSayings = [] {
        std::vector<Saying> all;
        for (const SayingRow* row : all_sayings()) {
            all.push_back(row->saying);
        }
        return all;
    }();
    return kSayings;
}

Result<Said> said(const Context& context, std::span<const Thing> chosen, std::string_view sentence,
                  std::span<const SayableAction> actions) {
    const SaidWords words{sentence};
    if (words.count() == 0) {
        return failure("type what you want, such as \"move camera 2 left 40 cm\"", {{}, {}, 0, 1});
    }
    const Vocabulary names = vocabulary(context, chosen);
    Listener listener{context, words, names};
    const Heeded meant = heeded(listener, actions);
    if (meant.row != nullptr) {
        return meant.row->make(context, *meant.heard);
    }
    if (meant.action != nullptr) {
        return Said{ActionWish{meant.action->id}};
    }
    return tl::unexpected{not_understood(listener, words)};
}

std::vector<std::string> completions(const Context& context, std::span<const Thing> chosen,
                                     std::string_view sentence,
                                     std::span<const SayableAction> actions) {
    const SaidWords words{sentence};
    const Vocabulary names = vocabulary(context, chosen);
    Listener listener{context, words, names};
    for (const SayingRow* row : all_sayings()) {
        listener.heard(row->saying.form);
    }
    for (const SayableAction& action : actions) {
        listener.hears_words(action.words);
    }
    std::vector<Offer> offers;
    const std::size_t last =
        words.count() == 0 || words.ends_in_space() ? words.count() : words.count() - 1;
    // What begins latest is what is being typed; a longer name may have begun before it.
    for (std::size_t at = last + 1; at-- > 0;) {
        add_offers(offers, listener, words, at);
    }
    std::stable_sort(offers.begin(), offers.end(),
                     [](const Offer& a, const Offer& b) { return a.fit < b.fit; });
    std::vector<std::string> shown;
    for (std::size_t i = 0; i < offers.size() && i < kMostCompletions; ++i) {
        shown.push_back(std::move(offers[i].name));
    }
    return shown;
}

std::string completed(std::string_view sentence, std::string_view completion) {
    const SaidWords words{sentence};
    const std::string key = folded(completion);
    for (const int wanted : {0, 1}) {
        for (std::size_t at = 0; at < words.count(); ++at) {
            if (fit(key, begun(words, at)) == wanted) {
                return fmt::format("{}{}", sentence.substr(0, words[at].begin), completion);
            }
        }
    }
    return fmt::format("{}{}{}", sentence, words.ends_in_space() ? "" : " ", completion);
}

} // namespace throwline::edit
