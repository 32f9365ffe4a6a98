#include "survey/recce_reader.h"

#include "base/length_text.h"
#include "base/nearest_name.h"
#include "base/utf8.h"
#include "plan/check_survey.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <tuple>

/// What the lines of a recce are made of, and what is settled once all have been read.
namespace throwline::survey {

namespace {

constexpr std::size_t kLongestFound = 20;

/// A number without a unit: "12", "2 1/2", "3.5".
bool is_bare(std::string_view text) {
    return text.find_first_not_of("0123456789., /\u00bd\u00bc\u00be") == std::string_view::npos;
}

/// The one known name that differs by letter case alone; nothing when none or several do.
const std::string* same_but_case(const std::string& name, const std::vector<std::string>& known) {
    const std::string* found = nullptr;
    for (const std::string& one : known) {
        if (one == name) {
            return nullptr;
        }
        if (lower_case(one) == lower_case(name)) {
            if (found != nullptr) {
                return nullptr;
            }
            found = &one;
        }
    }
    return found;
}

} // namespace

template <class Item>
void RecceReader::read_list(const Item& item) {
    do {
        if (cursor_.at_end()) {
            const Place end = cursor_.place();
            if (!cursor_.next_line() || cursor_.at_end()) {
                fail("the list ends with a comma; expected more of it in the next line", end);
                return;
            }
        }
        const std::size_t faults = faults_;
        item();
        if (faults != faults_) {
            cursor_.skip_to_comma();
        }
    } while (cursor_.skip(U','));
}

void RecceReader::read_ties(const std::string& point, const Place& place) {
    const auto same = [&](const plan::FloorPoint& other) { return other.name == point; };
    if (std::none_of(survey_.points.begin(), survey_.points.end(), same)) {
        places_[fmt::format("/points/{}", survey_.points.size())] = place;
        survey_.points.push_back({point, false});
        tied_.push_back(point);
    }
    read_list([&] { read_tie(point); });
}

void RecceReader::read_stretches(plan::Chain& chain, const std::string& pointer) {
    read_list([&] { read_stretch(chain, pointer); });
}

bool RecceReader::checked_name(const std::string& name, const Place& place) {
    const std::string_view fault = plan::fault_of_name(name);
    if (!fault.empty()) {
        fail(std::string{fault}, place);
    }
    return fault.empty();
}

std::optional<std::string> RecceReader::name(std::string_view what) {
    const Place place = cursor_.place();
    std::optional<std::string> called;
    if (cursor_.at_quote()) {
        called = quoted();
    } else if (!cursor_.peek_word().empty()) {
        called = cursor_.take_word();
    } else {
        fail_expected(what);
    }
    return called && checked_name(*called, place) ? called : std::nullopt;
}

std::optional<std::string> RecceReader::long_name(std::string_view what) {
    if (cursor_.at_quote()) {
        return name(what);
    }
    const Place place = cursor_.place();
    const std::string words = cursor_.take_words();
    if (words.empty()) {
        fail_expected(what);
        return std::nullopt;
    }
    return checked_name(words, place) ? std::optional{words} : std::nullopt;
}

bool RecceReader::two_names(std::string& from, std::string& to, const std::string& pointer) {
    keep_place(pointer + "/from");
    const auto first = name("two corners such as A-B");
    if (!first) {
        return false;
    }
    if (!cursor_.skip_dash()) {
        fail_expected("- and another corner");
        return false;
    }
    keep_place(pointer + "/to");
    const auto second = name("the name of a corner");
    if (!second) {
        return false;
    }
    from = *first;
    to = *second;
    return true;
}

Result<Length> RecceReader::parsed(const std::string& text) const {
    Result<Length> length = parse_length(text);
    if (length || !is_bare(text)) {
        return length;
    }
    if (unit_.empty()) {
        return failure(fmt::format("{} has no unit; give it one, or put a line such as \"units "
                                   "cm\" before it",
                                   in_quotes(text)),
                       {{}, {}, 0, 1});
    }
    return parse_length(text + " " + unit_);
}

std::optional<Length> RecceReader::length(const plan::LengthRange& range) {
    Place place = cursor_.place();
    const std::string text = cursor_.take_length();
    if (text.empty()) {
        fail_expected("a length such as 4ft 2in or 1.27m");
        return std::nullopt;
    }
    const Result<Length> read = parsed(text);
    if (!read) {
        place.column += std::max(read.error().place.column - 1, 0);
        fail(read.error().message, place);
        return std::nullopt;
    }
    if (std::string fault = plan::fault_of(*read, range); !fault.empty()) {
        fail(std::move(fault), place);
        return std::nullopt;
    }
    const std::string typed = is_bare(text) ? unit_ : text;
    const bool imperial = typed.find_first_of("'\"fFiI") != std::string::npos
                          || typed.find("\u2019") != std::string::npos
                          || typed.find("\u2032") != std::string::npos;
    ++(imperial ? imperial_ : metric_);
    return *read;
}

std::optional<Length> RecceReader::length_after(std::string_view word,
                                                const plan::LengthRange& range) {
    if (cursor_.at_quote() || !cursor_.skip_word(word)) {
        fail_expected(fmt::format("{} and a length", word));
        return std::nullopt;
    }
    return length(range);
}

std::optional<Angle> RecceReader::angle(const plan::AngleRange& range) {
    Place place = cursor_.place();
    const std::string text = cursor_.take_rest();
    const Result<Angle> read = parse_angle(text);
    if (!read) {
        place.column += std::max(read.error().place.column - 1, 0);
        fail(read.error().message, place);
        return std::nullopt;
    }
    if (std::string fault = plan::fault_of(*read, range); !fault.empty()) {
        fail(std::move(fault), place);
        return std::nullopt;
    }
    return *read;
}

std::optional<std::string> RecceReader::quoted() {
    const Place place = cursor_.place();
    Result<std::string> text = cursor_.take_quoted();
    if (!text) {
        fail(text.error().message, text.error().place);
        return std::nullopt;
    }
    if (std::string fault = plan::fault_of_text(*text); !fault.empty()) {
        fail(std::move(fault), place);
        return std::nullopt;
    }
    return *text;
}

void RecceReader::keep_place(std::string pointer) {
    places_[std::move(pointer)] = cursor_.place();
}

void RecceReader::fail(std::string message, Place place) {
    ++faults_;
    if (errors_.size() < plan::kMostPlanErrors) {
        errors_.push_back({std::move(message), std::move(place)});
    }
}

std::string RecceReader::found() {
    if (cursor_.at_end()) {
        return "the end of the line";
    }
    return in_quotes(cursor_.peek_rest(kLongestFound + 1), kLongestFound);
}

void RecceReader::fail_expected(std::string_view what) {
    const Place place = cursor_.place();
    fail(fmt::format("expected {}, found {}", what, found()), place);
}

void RecceReader::fail_unknown(const std::string& word, std::string_view is_no, const Place& place,
                               const std::vector<std::string>& known) {
    const std::string hint = plan::nearest_hint(word, known);
    fail(fmt::format("{} {}{}", in_quotes(word), is_no,
                     hint.empty() ? "; known are " + plan::listed(known) : hint),
         place);
}

/// A point that a line of distances made known may be a corner that the text names only below.
void RecceReader::forget_tied_corners() {
    const auto is_corner = [&](const plan::FloorPoint& point) {
        const bool tied = std::find(tied_.begin(), tied_.end(), point.name) != tied_.end();
        const std::vector<std::string>& corners = survey_.corners;
        return tied
               && (std::find(corners.begin(), corners.end(), point.name) != corners.end()
                   || same_but_case(point.name, corners) != nullptr);
    };
    std::erase_if(survey_.points, is_corner);
}

void RecceReader::settle_names() {
    forget_tied_corners();
    std::vector<std::string> known = survey_.corners;
    for (const plan::FloorPoint& point : survey_.points) {
        known.push_back(point.name);
    }
    const auto settle = [&](std::string& name) {
        if (const std::string* meant = same_but_case(name, known)) {
            name = *meant;
        }
    };
    for (plan::TapeReading& reading : survey_.readings) {
        settle(reading.from);
        settle(reading.to);
    }
    for (plan::Chain& chain : survey_.chains) {
        settle(chain.from);
        settle(chain.to);
    }
    for (plan::OutletReading& outlet : survey_.outlets) {
        settle(outlet.from);
        settle(outlet.to);
    }
    for (plan::HeightReading& height : survey_.heights) {
        settle(height.at);
    }
    for (plan::FloorThing& thing : survey_.things) {
        std::for_each(thing.points.begin(), thing.points.end(), settle);
    }
    std::for_each(survey_.square_corners.begin(), survey_.square_corners.end(), settle);
    if (all_square_) {
        survey_.square_corners = survey_.corners;
    }
    if (bearing_) {
        settle(bearing_->from);
        settle(bearing_->to);
    }
}

void RecceReader::settle_bearing() {
    if (!bearing_ || survey_.corners.size() < 2) {
        return;
    }
    const std::string& first = survey_.corners[0];
    const std::string& second = survey_.corners[1];
    if (bearing_->from == second && bearing_->to == first) {
        const double back_deg = survey_.first_wall_bearing->deg() + 180.0;
        survey_.first_wall_bearing = Angle::degrees(std::fmod(back_deg, 360.0));
    } else if (bearing_->from != first || bearing_->to != second) {
        fail(fmt::format("the bearing is taken along the first wall, {}-{}", first, second),
             bearing_->place);
    }
}

Place RecceReader::place_of(std::string pointer) const {
    while (!pointer.empty()) {
        if (const auto found = places_.find(pointer); found != places_.end()) {
            return found->second;
        }
        pointer.erase(pointer.rfind('/'));
    }
    return {};
}

void RecceReader::report_faults() {
    for (const plan::SurveyFault& fault : plan::faults_of(survey_)) {
        fail(fault.message, place_of(fault.pointer));
    }
}

Errors RecceReader::sorted_errors() const {
    Errors sorted = errors_;
    std::stable_sort(sorted.begin(), sorted.end(), [](const Error& a, const Error& b) {
        return std::tie(a.place.line, a.place.column) < std::tie(b.place.line, b.place.column);
    });
    if (faults_ > sorted.size()) {
        const std::string file = sorted.front().place.file;
        sorted.push_back({fmt::format("and {} more", faults_ - sorted.size()), {file, {}, 0, 0}});
    }
    return sorted;
}

Checked<RecceText> read_recce(std::string_view text, const std::string& file) {
    if (text.size() > kLargestRecceBytes) {
        return tl::unexpected{Errors{
            {fmt::format("a recce has at most {} bytes", kLargestRecceBytes), {file, {}, 0, 0}}}};
    }
    return RecceReader{text, file}.read();
}

} // namespace throwline::survey
