#include "survey/recce_reader.h"

#include "base/length_text.h"
#include "base/utf8.h"
#include "plan/names.h"
#include "plan/survey_limits.h"
#include "survey/recce_words.h"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>

namespace throwline::survey {

namespace {

constexpr std::string_view kPlaceWords = "the name of a corner or point";

template <class Words>
std::vector<std::string> texts_of(const Words& words) {
    return {std::begin(words), std::end(words)};
}

/// The size that a word of a stretch is about.
Length* size_of(plan::Stretch& stretch, std::string_view word) {
    if (word == "deep") {
        return &stretch.depth;
    }
    if (word == "high") {
        return &stretch.height;
    }
    return word == "sill" || word == "up" ? &stretch.sill : nullptr;
}

/// The kind whose word begins a stretch; nothing when a thing's name does.
std::optional<plan::StretchKind> kind_of(std::string_view word) {
    for (const auto& entry : plan::kStretchKindNames) {
        if (entry.name == lower_case(word)) {
            return entry.value;
        }
    }
    return std::nullopt;
}

/// A whole text in quotes without them, any other text as it is.
std::string unquoted(const std::string& text) {
    RecceCursor cursor{text, {}};
    if (!cursor.next_line() || !cursor.at_quote()) {
        return text;
    }
    const Result<std::string> inner = cursor.take_quoted();
    return inner && cursor.at_end() ? *inner : text;
}

} // namespace

const RecceReader::Statement* RecceReader::statement_of(std::string_view word) {
    static constexpr std::array<Statement, kLineWords.size()> kStatements{{
        {"corners", &RecceReader::read_corners},
        {"square", &RecceReader::read_square},
        {"squareness", &RecceReader::read_squareness},
        {"units", &RecceReader::read_units},
        {"tape", &RecceReader::read_tape},
        {"point", &RecceReader::read_point},
        {"along", &RecceReader::read_along},
        {"solid", &RecceReader::read_solid},
        {"round", &RecceReader::read_round},
        {"height", &RecceReader::read_height},
        {"outlet", &RecceReader::read_outlet},
        {"bearing", &RecceReader::read_bearing},
        {"note", &RecceReader::read_note},
    }};
    const auto found = std::find_if(kStatements.begin(), kStatements.end(),
                                    [&](const Statement& one) { return one.word == word; });
    return found == kStatements.end() ? nullptr : &*found;
}

Checked<RecceText> RecceReader::read() {
    while (cursor_.next_line()) {
        if (cursor_.at_end()) {
            continue;
        }
        const std::size_t faults = faults_;
        read_line();
        if (faults == faults_ && !cursor_.at_end()) {
            fail_expected("the end of the line");
        }
    }
    if (!corners_given_) {
        fail("a recce names the corners of the room in walking order: corners A B C D",
             {file_, {}, 0, 0});
    } else if (!survey_.corners.empty()) {
        settle_names();
        settle_bearing();
        report_faults();
    }
    if (!errors_.empty()) {
        return tl::unexpected{sorted_errors()};
    }
    const UnitSystem units = imperial_ > metric_ ? UnitSystem::imperial : UnitSystem::metric;
    return RecceText{std::move(survey_), units};
}

void RecceReader::read_line() {
    const Statement* statement =
        cursor_.at_quote() ? nullptr : statement_of(lower_case(cursor_.peek_word()));
    if (statement == nullptr) {
        read_named();
        return;
    }
    cursor_.take_word();
    cursor_.skip(U':');
    (this->*statement->read)();
}

void RecceReader::read_corners() {
    const Place place = cursor_.place();
    if (corners_given_) {
        fail("the corners have been named already", place);
        return;
    }
    corners_given_ = true;
    places_["/corners"] = place;
    while (!cursor_.at_end()) {
        if (!cursor_.at_quote() && cursor_.skip_word("clockwise")) {
            survey_.clockwise = true;
            return;
        }
        if (!cursor_.at_quote() && cursor_.skip_word("anticlockwise")) {
            return;
        }
        keep_place(fmt::format("/corners/{}", survey_.corners.size()));
        const auto corner = name("the name of a corner");
        if (!corner) {
            return;
        }
        survey_.corners.push_back(*corner);
        cursor_.skip(U',');
    }
}

void RecceReader::read_square() {
    if (!cursor_.at_quote() && cursor_.skip_word("all")) {
        all_square_ = true;
        return;
    }
    do {
        keep_place(fmt::format("/square_corners/{}", survey_.square_corners.size()));
        const auto corner = name("the name of a corner");
        if (!corner) {
            return;
        }
        survey_.square_corners.push_back(*corner);
        cursor_.skip(U',');
    } while (!cursor_.at_end());
}

void RecceReader::read_squareness() {
    survey_.squareness = angle(plan::kSquarenesses).value_or(survey_.squareness);
}

void RecceReader::read_units() {
    const Place place = cursor_.place();
    const std::string word = cursor_.take_word();
    if (!is_length_unit(lower_case(word))) {
        fail_unknown(word, "is no unit of length", place, {"m", "cm", "mm", "ft", "in"});
        return;
    }
    unit_ = lower_case(word);
}

void RecceReader::read_tape() {
    const auto precision = length(plan::kTapePrecisions);
    if (!precision) {
        return;
    }
    survey_.precision = *precision;
    survey_.precision_per_metre_mm = 0.0;
    if (!cursor_.skip(U'+')) {
        return;
    }
    const Place place = cursor_.place();
    const std::string text = cursor_.take_rest();
    double part_mm = 0.0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), part_mm);
    const std::string_view unit{read.ptr, text.data() + text.size()};
    const auto [least, most, above] = plan::kTapePrecisionsPerMetre_mm;
    if (read.ec != std::errc{} || (unit != "mm/m" && unit != " mm/m") || !(part_mm >= least)
        || !(part_mm <= most)) {
        fail(fmt::format("expected a part per metre such as 0.5mm/m, 0 to {} of them, found {}",
                         shortest(most), in_quotes(text)),
             place);
        return;
    }
    survey_.precision_per_metre_mm = part_mm;
}

void RecceReader::read_point() {
    keep_place(fmt::format("/points/{}", survey_.points.size()));
    if (const auto point = name("the name of a point")) {
        const bool outside = !cursor_.at_quote() && cursor_.skip_word("outside");
        survey_.points.push_back({*point, outside});
    }
}

void RecceReader::read_solid() {
    const std::string pointer = fmt::format("/things/{}", survey_.things.size());
    keep_place(pointer);
    plan::FloorThing thing;
    const auto called = long_name("the name of a thing");
    if (!called) {
        return;
    }
    thing.name = *called;
    cursor_.skip(U':');
    while (!cursor_.at_end() && (cursor_.at_quote() || lower_case(cursor_.peek_word()) != "high")) {
        keep_place(fmt::format("{}/points/{}", pointer, thing.points.size()));
        const auto point = name(kPlaceWords);
        if (!point) {
            return;
        }
        thing.points.push_back(*point);
        cursor_.skip(U',');
    }
    if (!cursor_.at_end()) {
        thing.height = length_after("high", plan::kNotNegative).value_or(thing.height);
    }
    survey_.things.push_back(std::move(thing));
}

void RecceReader::read_round() {
    const std::string pointer = fmt::format("/things/{}", survey_.things.size());
    keep_place(pointer);
    const auto called = long_name("the name of a thing");
    if (!called) {
        return;
    }
    cursor_.skip(U':');
    keep_place(pointer + "/points/0");
    const auto point = name(kPlaceWords);
    const auto across = point ? length_after("across", plan::kSize) : std::nullopt;
    if (!across) {
        return;
    }
    plan::FloorThing thing{*called, {*point}, *across, {}};
    if (!cursor_.at_end()) {
        thing.height = length_after("high", plan::kNotNegative).value_or(thing.height);
    }
    survey_.things.push_back(std::move(thing));
}

void RecceReader::read_height() {
    plan::HeightReading height;
    if (!cursor_.at_quote() && cursor_.skip_word("at")) {
        keep_place(fmt::format("/heights/{}/at", survey_.heights.size()));
        const auto at = name(kPlaceWords);
        if (!at) {
            return;
        }
        height.at = *at;
    }
    if (const auto up = length(plan::kSize)) {
        height.height = *up;
        survey_.heights.push_back(std::move(height));
    }
}

void RecceReader::read_outlet() {
    const std::string pointer = fmt::format("/outlets/{}", survey_.outlets.size());
    plan::OutletReading outlet;
    const auto circuit = name("the name of a circuit");
    if (!circuit) {
        return;
    }
    outlet.circuit = *circuit;
    if (!cursor_.skip_word("along")) {
        fail_expected("along and a wall, such as along A-B");
        return;
    }
    if (!two_names(outlet.from, outlet.to, pointer)) {
        return;
    }
    const auto along = length(plan::kNotNegative);
    if (!along) {
        return;
    }
    outlet.along = *along;
    if (!cursor_.at_end()) {
        outlet.height = length_after("up", plan::kNotNegative).value_or(outlet.height);
    }
    survey_.outlets.push_back(std::move(outlet));
}

void RecceReader::read_bearing() {
    Bearing bearing{{}, {}, cursor_.place()};
    if (!two_names(bearing.from, bearing.to, "/bearing")) {
        return;
    }
    if (const auto read = angle(plan::kAnyTurn)) {
        survey_.first_wall_bearing = *read;
        bearing_ = std::move(bearing);
    }
}

void RecceReader::read_note() {
    const Place place = cursor_.place();
    std::string text = cursor_.take_raw_rest();
    plan::SiteNote note;
    const std::size_t colon = text.find(':');
    for (const auto& entry : plan::kSiteNoteKindNames) {
        if (colon != std::string::npos && lower_case(text.substr(0, colon)) == entry.name) {
            note.kind = entry.value;
            RecceCursor behind{text.substr(colon + 1), {}};
            behind.next_line();
            text = behind.take_raw_rest();
            break;
        }
    }
    note.text = unquoted(text);
    if (std::string fault = plan::fault_of_text(note.text); !fault.empty()) {
        fail(std::move(fault), place);
        return;
    }
    survey_.notes.push_back(std::move(note));
}

void RecceReader::read_named() {
    const Place place = cursor_.place();
    const bool bare = !cursor_.at_quote();
    const auto first = name("a line such as A-B 3.2m, or one that begins with corners, along, "
                            "height or note");
    if (!first) {
        return;
    }
    if (cursor_.skip_dash()) {
        keep_place(fmt::format("/readings/{}/to", survey_.readings.size()));
        places_[fmt::format("/readings/{}/from", survey_.readings.size())] = place;
        read_between(*first);
    } else if (cursor_.skip(U':')) {
        read_ties(*first, place);
    } else if (bare) {
        fail_unknown(*first, "begins no line", place, texts_of(kLineWords));
    } else {
        fail_expected("- and another corner, or : and distances");
    }
}

void RecceReader::read_between(const std::string& from) {
    plan::TapeReading reading{from, {}, {}, {}};
    const auto to = name(kPlaceWords);
    if (!to) {
        return;
    }
    reading.to = *to;
    if (!cursor_.skip(U':')) {
        cursor_.skip(U'=');
    }
    const auto read = length(plan::kSize);
    if (!read) {
        return;
    }
    reading.length = *read;
    if (cursor_.at_quote()) {
        const auto note = quoted();
        if (!note) {
            return;
        }
        reading.note = *note;
    }
    survey_.readings.push_back(std::move(reading));
}

void RecceReader::read_tie(const std::string& point) {
    if (!cursor_.at_quote() && cursor_.skip_word("outside")) {
        for (plan::FloorPoint& one : survey_.points) {
            one.outside = one.outside || one.name == point;
        }
        return;
    }
    keep_place(fmt::format("/readings/{}", survey_.readings.size()));
    const auto from = name(kPlaceWords);
    const auto read = from ? length(plan::kSize) : std::nullopt;
    if (!read) {
        return;
    }
    plan::TapeReading reading{*from, point, *read, {}};
    if (cursor_.at_quote()) {
        reading.note = quoted().value_or(std::string{});
    }
    survey_.readings.push_back(std::move(reading));
}

void RecceReader::read_along() {
    const std::string pointer = fmt::format("/chains/{}", survey_.chains.size());
    keep_place(pointer);
    plan::Chain chain;
    if (!two_names(chain.from, chain.to, pointer)) {
        return;
    }
    if (!cursor_.at_quote() && cursor_.skip_word("from")) {
        const Place place = cursor_.place();
        const auto start = name("the corner that it was read from");
        if (!start) {
            return;
        }
        if (*start == chain.to) {
            std::swap(chain.from, chain.to);
        } else if (*start != chain.from) {
            fail(fmt::format("{} is no end of this wall", in_quotes(*start)), place);
            return;
        }
    }
    cursor_.skip(U':');
    const std::size_t faults = faults_;
    read_stretches(chain, pointer);
    if (faults == faults_) {
        survey_.chains.push_back(std::move(chain));
    }
}

void RecceReader::read_stretch(plan::Chain& chain, const std::string& pointer) {
    if (!chain.to_the_end) {
        fail_expected("nothing behind rest, which ends the chain");
        return;
    }
    if (read_rest(chain)) {
        return;
    }
    keep_place(fmt::format("{}/stretches/{}", pointer, chain.stretches.size()));
    plan::Stretch stretch;
    if (!read_what(stretch)) {
        return;
    }
    const auto width = length(plan::kSize);
    if (!width) {
        return;
    }
    stretch.width = *width;
    if (read_sizes(stretch)) {
        chain.stretches.push_back(std::move(stretch));
    }
}

bool RecceReader::read_rest(plan::Chain& chain) {
    if (cursor_.at_quote() || !cursor_.skip_word("rest")) {
        return false;
    }
    chain.to_the_end = false;
    if (chain.stretches.empty()) {
        fail_expected("a stretch before rest, such as wall 3ft 2in");
    }
    return true;
}

bool RecceReader::read_what(plan::Stretch& stretch) {
    const Place place = cursor_.place();
    std::string words = cursor_.take_words();
    const std::size_t space = std::min(words.find(' '), words.size());
    if (const auto kind = kind_of(words.substr(0, space))) {
        stretch.kind = *kind;
        words.erase(0, space + 1);
    } else {
        stretch.kind = plan::StretchKind::thing;
    }
    if (stretch.kind == plan::StretchKind::wall && !words.empty()) {
        stretch.kind = plan::StretchKind::thing;
        words = "wall " + words;
    }
    if (cursor_.at_quote() && words.empty()) {
        const auto name = quoted();
        if (!name) {
            return false;
        }
        words = *name;
    }
    if (words.empty()) {
        if (stretch.kind == plan::StretchKind::thing) {
            fail_expected("a stretch such as wall 3ft 2in or dresser 1.2m deep 45cm");
            return false;
        }
        return true;
    }
    stretch.name = words;
    return checked_name(words, place);
}

bool RecceReader::read_sizes(plan::Stretch& stretch) {
    while (!cursor_.at_end()) {
        const Place place = cursor_.place();
        const std::string word = cursor_.peek_word();
        if (word.empty()) {
            return true;
        }
        cursor_.take_word();
        Length* size = size_of(stretch, lower_case(word));
        if (size == nullptr) {
            fail_unknown(word, "says nothing of a stretch", place, {"deep", "high", "sill", "up"});
            return false;
        }
        const auto read = length(plan::kNotNegative);
        if (!read) {
            return false;
        }
        *size = *read;
    }
    return true;
}

} // namespace throwline::survey
