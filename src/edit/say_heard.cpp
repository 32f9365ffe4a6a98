#include "edit/say_heard.h"

#include "base/length_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

struct SlotName {
    Slot slot;
    std::string_view in_form;
    std::string_view words;
};
constexpr std::array kSlots{
    SlotName{Slot::things, "THINGS", "things on the floor"},
    SlotName{Slot::thing, "THING", "something on the floor"},
    SlotName{Slot::camera, "CAMERA", "a camera"},
    SlotName{Slot::people, "PEOPLE", "somebody"},
    SlotName{Slot::lamps, "LAMPS", "lamps"},
    SlotName{Slot::pipe, "PIPE", "a pipe"},
    SlotName{Slot::place, "PLACE", "a place, such as 3 m, 2 m or 1 m left of something"},
    SlotName{Slot::position, "POSITION", "a position of the grid, such as C2"},
    SlotName{Slot::length, "LENGTH", "a length, such as 40 cm or 1'-4\""},
    SlotName{Slot::angle, "ANGLE", "an angle, such as 15 deg"},
    SlotName{Slot::number, "NUMBER", "a number"},
    SlotName{Slot::share, "PERCENT", "a share, such as 60 %"},
    SlotName{Slot::beat, "BEAT", "a beat"},
    SlotName{Slot::shot, "SHOT", "a shot"},
    SlotName{Slot::circuit, "CIRCUIT", "a circuit"},
    SlotName{Slot::item, "ITEM", "something from the Stores"},
    SlotName{Slot::field, "VALUE", "what is to be set, such as height"},
    SlotName{Slot::text, "TEXT", "words"}};

std::string without_colons(const std::string& words) {
    std::string text;
    std::copy_if(words.begin(), words.end(), std::back_inserter(text),
                 [](char c) { return c != ':'; });
    return folded(text);
}

/// Whether a name of things may stand in a slot.
bool fits(Slot slot, const std::vector<Thing>& things) {
    const auto all_are = [&](Kind kind) {
        return std::all_of(things.begin(), things.end(),
                           [&](const Thing& thing) { return thing.kind == kind; });
    };
    switch (slot) {
    case Slot::thing:
        return things.size() == 1;
    case Slot::camera:
        return things.size() == 1 && all_are(Kind::camera);
    case Slot::people:
        return all_are(Kind::person);
    case Slot::lamps:
        return all_are(Kind::lamp);
    case Slot::pipe:
        return things.size() == 1 && all_are(Kind::pipe);
    case Slot::things:
    case Slot::word:
    case Slot::place:
    case Slot::position:
    case Slot::length:
    case Slot::unit:
    case Slot::angle:
    case Slot::number:
    case Slot::share:
    case Slot::beat:
    case Slot::shot:
    case Slot::circuit:
    case Slot::item:
    case Slot::field:
    case Slot::text:
    case Slot::action:
    case Slot::end:
        return true;
    }
    return true;
}

bool may_be_several(Slot slot) {
    return slot == Slot::things || slot == Slot::people || slot == Slot::lamps;
}

} // namespace

std::string_view name_of(Slot slot) {
    const auto known = std::find_if(kSlots.begin(), kSlots.end(),
                                    [&](const SlotName& row) { return row.slot == slot; });
    if (known != kSlots.end()) {
        return known->words;
    }
    return slot == Slot::end ? "the end of the sentence" : "";
}

Listener::Listener(const Context& context, const SaidWords& words, const Vocabulary& vocabulary)
    : context_{context}, words_{words}, vocabulary_{vocabulary} {}

Listener::Pieces Listener::pieces_of(std::string_view form) {
    Pieces pieces;
    const SaidWords words{form};
    for (std::size_t i = 0; i < words.count(); ++i) {
        const std::string_view word = words.typed(i, i + 1);
        const auto slot = std::find_if(kSlots.begin(), kSlots.end(),
                                       [&](const SlotName& row) { return row.in_form == word; });
        Piece piece;
        if (slot != kSlots.end()) {
            piece.slot = slot->slot;
        } else {
            std::string_view left = word;
            while (!left.empty()) {
                const std::size_t bar = std::min(left.find('|'), left.size());
                piece.words.emplace_back(left.substr(0, bar));
                left.remove_prefix(std::min(bar + 1, left.size()));
            }
        }
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

std::optional<Heard> Listener::heard(std::string_view form) {
    return rest(pieces_of(form), 0, 0, {});
}

bool Listener::hears_words(const std::string& words) {
    expect(0, Slot::action, words);
    return words_.count() > 0
           && without_colons(words_.joined(0, words_.count())) == without_colons(words);
}

void Listener::expect(std::size_t at, Slot slot, const std::string& word) {
    const std::pair<std::size_t, Expected> record{at, {slot, word}};
    if (expected_.insert(record).second) {
        in_order_.push_back(record);
    }
    if (at > furthest_) {
        furthest_ = at;
        complaint_.clear();
        complaint_column_ = 0;
    }
}

void Listener::complain(std::size_t at, const std::string& message, int column) {
    if (at == furthest_ && complaint_.empty()) {
        complaint_ = message;
        complaint_column_ = column;
    }
}

bool Listener::is_word(std::size_t at, std::string_view word) const {
    return at < words_.count() && !words_[at].quoted && words_[at].folded == word;
}

std::vector<Expected> Listener::expected_at(std::size_t at) const {
    std::vector<Expected> expected;
    for (const auto& [word, what] : in_order_) {
        if (word == at) {
            expected.push_back(what);
        }
    }
    return expected;
}

std::vector<std::string> Listener::names_for(const Expected& expected) const {
    switch (expected.slot) {
    case Slot::word:
    case Slot::unit:
    case Slot::action:
        return {expected.word};
    case Slot::things:
    case Slot::thing:
    case Slot::camera:
    case Slot::people:
    case Slot::lamps:
    case Slot::pipe:
    case Slot::place: {
        std::vector<std::string> fitting;
        for (const std::string& name : vocabulary_.things.shown) {
            const Slot slot = expected.slot == Slot::place ? Slot::thing : expected.slot;
            if (fits(slot, vocabulary_.things.by_name.at(folded(name)))) {
                fitting.push_back(name);
            }
        }
        return fitting;
    }
    case Slot::beat:
        return vocabulary_.beats.shown;
    case Slot::shot:
        return vocabulary_.shots.shown;
    case Slot::circuit:
        return vocabulary_.circuits.shown;
    case Slot::item:
        return vocabulary_.items.shown;
    case Slot::position:
    case Slot::length:
    case Slot::angle:
    case Slot::number:
    case Slot::share:
    case Slot::field:
    case Slot::text:
    case Slot::end:
        return {};
    }
    return {};
}

std::optional<Heard> Listener::rest(const Pieces& pieces, std::size_t piece, std::size_t at,
                                    const Heard& heard) {
    if (piece == pieces.size()) {
        if (at == words_.count()) {
            return heard;
        }
        expect(at, Slot::end);
        return std::nullopt;
    }
    const Slot slot = pieces[piece].slot;
    if (slot != Slot::word) {
        expect(at, slot);
    }
    switch (slot) {
    case Slot::word:
        return word(pieces, piece, at, heard);
    case Slot::things:
    case Slot::thing:
    case Slot::camera:
    case Slot::people:
    case Slot::lamps:
    case Slot::pipe:
        return things(pieces, piece, at, heard, {});
    case Slot::place:
        return place(pieces, piece, at, heard);
    case Slot::position:
        return position(pieces, piece, at, heard);
    case Slot::length:
        return length(pieces, piece, at, heard);
    case Slot::angle:
        return angle(pieces, piece, at, heard);
    case Slot::number:
    case Slot::share:
        return number(pieces, piece, at, heard);
    case Slot::beat:
        return name(pieces, piece, at, heard, vocabulary_.beats, &Heard::beats);
    case Slot::shot:
        return name(pieces, piece, at, heard, vocabulary_.shots, &Heard::shots);
    case Slot::circuit:
        return name(pieces, piece, at, heard, vocabulary_.circuits, &Heard::circuits);
    case Slot::item:
        return name(pieces, piece, at, heard, vocabulary_.items, &Heard::items);
    case Slot::field:
        return field(pieces, piece, at, heard);
    case Slot::text:
        return text(at, heard);
    case Slot::unit:
    case Slot::action:
    case Slot::end:
        return std::nullopt;
    }
    return std::nullopt;
}

std::optional<Heard> Listener::word(const Pieces& pieces, std::size_t piece, std::size_t at,
                                    const Heard& heard) {
    const Piece& wanted = pieces[piece];
    for (const std::string& one : wanted.words) {
        expect(at, Slot::word, one);
        if (!is_word(at, one)) {
            continue;
        }
        Heard more = heard;
        if (wanted.words.size() > 1) {
            more.words.push_back(one);
        }
        return rest(pieces, piece + 1, at + 1, more);
    }
    return std::nullopt;
}

/// Names the longest first, then "and" or a comma and more of them.
std::optional<Heard> Listener::things(const Pieces& pieces, std::size_t piece, std::size_t at,
                                      const Heard& heard, const std::vector<Thing>& before) {
    const Slot slot = pieces[piece].slot;
    const std::size_t from = is_word(at, "the") ? at + 1 : at;
    const std::size_t most = std::min(vocabulary_.things.longest, words_.count() - from);
    for (std::size_t count = from > words_.count() ? 0 : most; count > 0; --count) {
        const auto known = vocabulary_.things.by_name.find(words_.joined(from, from + count));
        if (known == vocabulary_.things.by_name.end() || !fits(slot, known->second)) {
            continue;
        }
        std::vector<Thing> all = before;
        for (const Thing& thing : known->second) {
            if (std::find(all.begin(), all.end(), thing) == all.end()) {
                all.push_back(thing);
            }
        }
        const std::size_t next = from + count;
        if (may_be_several(slot)) {
            expect(next, Slot::word, "and");
            if (next < words_.count() && (is_word(next, "and") || words_[next].is_comma)) {
                const bool comma_and = words_[next].is_comma && is_word(next + 1, "and");
                expect(next + 1, slot);
                if (auto list = things(pieces, piece, next + (comma_and ? 2 : 1), heard, all)) {
                    return list;
                }
            }
        }
        Heard more = heard;
        more.things.push_back(std::move(all));
        if (auto whole = rest(pieces, piece + 1, next, more)) {
            return whole;
        }
    }
    if (is_word(at, "it") || is_word(at, "them")) {
        complain(at, "nothing is chosen that \"it\" could mean", 0);
    }
    return std::nullopt;
}

template <class Meaning>
std::optional<Heard> Listener::name(const Pieces& pieces, std::size_t piece, std::size_t at,
                                    const Heard& heard, const Names<Meaning>& names,
                                    std::vector<Meaning> Heard::* kept) {
    for (std::size_t count = std::min(names.longest, words_.count() - at); count > 0; --count) {
        const auto known = names.by_name.find(words_.joined(at, at + count));
        if (known == names.by_name.end()) {
            continue;
        }
        Heard more = heard;
        (more.*kept).push_back(known->second);
        if (auto whole = rest(pieces, piece + 1, at + count, more)) {
            return whole;
        }
    }
    return std::nullopt;
}

std::optional<Heard> Listener::length(const Pieces& pieces, std::size_t piece, std::size_t at,
                                      const Heard& heard) {
    for (const auto& [measured, next] : lengths_at(at)) {
        Heard more = heard;
        more.lengths.push_back(measured);
        if (auto whole = rest(pieces, piece + 1, next, more)) {
            return whole;
        }
    }
    return std::nullopt;
}

std::optional<Heard> Listener::angle(const Pieces& pieces, std::size_t piece, std::size_t at,
                                     const Heard& heard) {
    constexpr std::size_t kMostWords = 4; // "12 deg", "12° 30' 15""
    for (std::size_t count = std::min(kMostWords, words_.count() - at); count > 0; --count) {
        const Result<Angle> read = parse_angle(words_.typed(at, at + count));
        if (!read) {
            continue;
        }
        Heard more = heard;
        more.angles.push_back(*read);
        if (auto whole = rest(pieces, piece + 1, at + count, more)) {
            return whole;
        }
    }
    return std::nullopt;
}

/// "3", "60 %", "60%"; a share below one may be typed as such.
std::optional<Heard> Listener::number(const Pieces& pieces, std::size_t piece, std::size_t at,
                                      const Heard& heard) {
    if (at >= words_.count()) {
        return std::nullopt;
    }
    std::string digits = words_[at].folded;
    std::replace(digits.begin(), digits.end(), ',', '.');
    double value = 0.0;
    const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    const std::string_view after{
        read.ptr, static_cast<std::size_t>(digits.data() + digits.size() - read.ptr)};
    const bool is_share = pieces[piece].slot == Slot::share;
    if (read.ec != std::errc{} || (!after.empty() && !(is_share && after == "%"))) {
        return std::nullopt;
    }
    std::size_t next = at + 1;
    bool is_percent = !after.empty();
    if (is_share && !is_percent && (is_word(next, "%") || is_word(next, "percent"))) {
        is_percent = true;
        ++next;
    }
    Heard more = heard;
    more.numbers.push_back(is_percent || (is_share && value > 1.0) ? value / 100.0 : value);
    return rest(pieces, piece + 1, next, more);
}

/// The words up to the "of" or "to" that goes on.
std::optional<Heard> Listener::field(const Pieces& pieces, std::size_t piece, std::size_t at,
                                     const Heard& heard) {
    const std::size_t from = is_word(at, "the") ? at + 1 : at;
    for (std::size_t next = from + 1; next < words_.count(); ++next) {
        const auto& going_on = pieces[piece + 1].words;
        if (words_[next].quoted
            || std::find(going_on.begin(), going_on.end(), words_[next].folded) == going_on.end()) {
            continue;
        }
        Heard more = heard;
        more.texts.push_back(words_.joined(from, next));
        if (auto whole = rest(pieces, piece + 1, next, more)) {
            return whole;
        }
    }
    return std::nullopt;
}

std::optional<Heard> Listener::text(std::size_t at, const Heard& heard) {
    if (at >= words_.count()) {
        return std::nullopt;
    }
    std::string_view typed = words_.typed(at, words_.count());
    if (at + 1 == words_.count() && words_[at].quoted) {
        typed = typed.substr(1, typed.size() - 2);
    }
    Heard more = heard;
    more.texts.emplace_back(typed);
    return more;
}

} // namespace throwline::edit
