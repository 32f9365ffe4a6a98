/// Lengths and places in sentences.

#include "edit/say_heard.h"

#include "base/length_text.h"
#include "edit/pick.h"
#include "plan/places.h"

#include <algorithm>
#include <array>

namespace throwline::edit {

namespace {

/// "6' 2 7/16" in" has as many.
constexpr std::size_t kMostWordsOfLength = 5;

struct Side {
    const char* words;
    Vec2 direction;
};

std::array<Side, 4> sides() {
    return {Side{"left of", -Vec2::UnitX()}, Side{"right of", Vec2::UnitX()},
            Side{"above", Vec2::UnitY()}, Side{"below", -Vec2::UnitY()}};
}

bool begins_length(const SaidWord& word) {
    if (word.quoted || word.is_comma || word.folded.empty()) {
        return false;
    }
    const auto first = static_cast<unsigned char>(word.folded.front());
    // Beyond ASCII: a fraction such as ½, or a typographic minus.
    return (first >= '0' && first <= '9') || first == '-' || first == '+' || first == '.'
           || first >= 0x80;
}

} // namespace

/// The longest first. A bare number is in the plan's unit, but its unit may still follow.
std::vector<std::pair<Length, std::size_t>> Listener::lengths_at(std::size_t at) {
    std::vector<std::pair<Length, std::size_t>> lengths;
    if (at >= words_.count() || !begins_length(words_[at])) {
        return lengths;
    }
    const UnitSystem units = context_.plan.units;
    for (std::size_t count = std::min(kMostWordsOfLength, words_.count() - at); count > 0;
         --count) {
        const auto read = parse_length(words_.typed(at, at + count), {units, true});
        if (read) {
            lengths.emplace_back(*read, at + count);
        } else if (count == 1) {
            complain(at, read.error().message, words_.column(at) + read.error().place.column - 1);
        }
    }
    if (!lengths.empty() && !parse_length(words_.typed(at, lengths.front().second), {})) {
        const bool is_metric = units == UnitSystem::metric;
        for (const char* const unit : {is_metric ? "cm" : "ft", is_metric ? "m" : "in",
                                       is_metric ? "mm" : "cm", is_metric ? "ft" : "m"}) {
            expect(lengths.front().second, Slot::unit, unit);
        }
    }
    return lengths;
}

/// "3 m, 2 m"
void Listener::add_pair(std::vector<Point>& points, std::size_t at) {
    for (const auto& [across, comma] : lengths_at(at)) {
        expect(comma, Slot::word, ",");
        if (comma >= words_.count() || !words_[comma].is_comma) {
            continue;
        }
        expect(comma + 1, Slot::length);
        for (const auto& [up, next] : lengths_at(comma + 1)) {
            points.push_back({{across.m(), up.m()}, next});
        }
    }
}

/// "1 m left of Ana"
void Listener::add_beside(std::vector<Point>& points, std::size_t at) {
    for (const auto& [away, side_at] : lengths_at(at)) {
        for (const Side& side : sides()) {
            expect(side_at, Slot::word, side.words);
            const std::size_t count = SaidWords{side.words}.count();
            if (side_at + count > words_.count()
                || words_.joined(side_at, side_at + count) != side.words) {
                continue;
            }
            std::vector<Point> named;
            expect(side_at + count, Slot::thing);
            add_named(named, side_at + count);
            for (const Point& point : named) {
                points.push_back({point.at + side.direction * away.m(), point.next});
            }
        }
    }
}

/// Where something is that has a name, a position of the grid among them.
void Listener::add_named(std::vector<Point>& points, std::size_t at) {
    const std::size_t from = is_word(at, "the") ? at + 1 : at;
    if (from >= words_.count()) {
        return;
    }
    const std::size_t most = std::min(vocabulary_.things.longest, words_.count() - from);
    for (std::size_t count = most; count > 0; --count) {
        const auto known = vocabulary_.things.by_name.find(words_.joined(from, from + count));
        if (known == vocabulary_.things.by_name.end() || known->second.size() != 1) {
            continue;
        }
        if (const auto where = place_of(context_, known->second.front())) {
            points.push_back({*where, from + count});
        } else {
            complain(at, name_of(known->second.front()) + " is not on the floor now", 0);
        }
    }
    if (context_.plan.grid) {
        if (const auto where = plan::grid_point(*context_.plan.grid, words_[from].folded)) {
            points.push_back({*where, from + 1});
        }
    }
}

std::vector<Listener::Point> Listener::places_at(std::size_t at) {
    std::vector<Point> points;
    add_pair(points, at);
    add_beside(points, at);
    add_named(points, at);
    return points;
}

std::optional<Heard> Listener::place(const Pieces& pieces, std::size_t piece, std::size_t at,
                                     const Heard& heard) {
    for (const Point& point : places_at(at)) {
        Heard more = heard;
        more.places.push_back(point.at);
        if (auto whole = rest(pieces, piece + 1, point.next, more)) {
            return whole;
        }
    }
    return std::nullopt;
}

std::optional<Heard> Listener::position(const Pieces& pieces, std::size_t piece, std::size_t at,
                                        const Heard& heard) {
    if (at >= words_.count()) {
        return std::nullopt;
    }
    if (!context_.plan.grid) {
        complain(at, "the plan has no grid to hang from", 0);
        return std::nullopt;
    }
    const std::string& typed = words_[at].folded;
    const auto where = plan::grid_point(*context_.plan.grid, typed);
    if (!where) {
        const plan::Grid& grid = *context_.plan.grid;
        complain(at,
                 "the grid has no position \"" + std::string{words_.typed(at, at + 1)}
                     + "\"; its positions are A1 to "
                     + plan::grid_name(grid.columns - 1, grid.rows - 1),
                 0);
        return std::nullopt;
    }
    Heard more = heard;
    more.texts.push_back(typed);
    more.places.push_back(*where);
    return rest(pieces, piece + 1, at + 1, more);
}

} // namespace throwline::edit
