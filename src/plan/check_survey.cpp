#include "plan/check_survey.h"

#include "base/utf8.h"
#include "plan/check_names.h"
#include "plan/check_plan.h"
#include "plan/survey_limits.h"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>

namespace throwline::plan {

namespace {

class SurveyCheck {
  public:
    explicit SurveyCheck(const Survey& survey) : survey_{survey} {}

    std::vector<SurveyFault> all() {
        check_corners();
        if (survey_.corners.size() > kMostSurveyCorners) {
            return std::move(faults_);
        }
        check_points();
        check_readings();
        too_many("/chains", "chains", survey_.chains.size(), kMostChains);
        too_many("/things", "things", survey_.things.size(), kMostItems);
        too_many("/heights", "heights", survey_.heights.size(), kMostItems);
        too_many("/outlets", "outlets", survey_.outlets.size(), kMostItems);
        too_many("/notes", "notes", survey_.notes.size(), kMostItems);
        each("chains", survey_.chains, &SurveyCheck::check_chain);
        each("things", survey_.things, &SurveyCheck::check_thing);
        each("heights", survey_.heights, &SurveyCheck::check_height);
        each("outlets", survey_.outlets, &SurveyCheck::check_outlet);
        return std::move(faults_);
    }

  private:
    template <class Part>
    void each(std::string_view key, const std::vector<Part>& parts,
              void (SurveyCheck::*check)(const std::string&, const Part&)) {
        for (std::size_t i = 0; i < parts.size(); ++i) {
            (this->*check)(fmt::format("/{}/{}", key, i), parts[i]);
        }
    }

    bool is_full() const { return faults_.size() >= kMostPlanErrors; }
    void wrong(std::string pointer, std::string message) {
        faults_.push_back({std::move(pointer), is_full() ? std::string{} : std::move(message)});
    }
    void expect(const KnownNames& known, std::string pointer, const std::string& name) {
        if (!name.empty() && !known.has(name)) {
            wrong(std::move(pointer), is_full() ? std::string{} : known.complaint(name));
        }
    }
    void too_many(std::string pointer, std::string_view what, std::size_t count, std::size_t most) {
        if (count > most) {
            wrong(std::move(pointer),
                  fmt::format("a survey has at most {} {}, this one {}", most, what, count));
        }
    }
    /// Adds a name to those of its kind; a name that is there already is a fault.
    void claim(KnownNames& known, std::string pointer, const std::string& name) {
        if (known.has(name)) {
            wrong(std::move(pointer), fmt::format("{} is listed twice", in_quotes(name)));
        }
        known.add(name);
    }

    void check_corners() {
        if (survey_.corners.size() < 3) {
            wrong("/corners",
                  fmt::format("a room has 3 corners or more, this one {}", survey_.corners.size()));
        }
        too_many("/corners", "corners", survey_.corners.size(), kMostSurveyCorners);
        for (std::size_t i = 0; i < survey_.corners.size(); ++i) {
            claim(corners_, fmt::format("/corners/{}", i), survey_.corners[i]);
            places_.add(survey_.corners[i]);
        }
        KnownNames square{"square corner"};
        for (std::size_t i = 0; i < survey_.square_corners.size(); ++i) {
            const std::string pointer = fmt::format("/square_corners/{}", i);
            expect(corners_, pointer, survey_.square_corners[i]);
            claim(square, pointer, survey_.square_corners[i]);
        }
    }

    void check_points() {
        too_many("/points", "floor points", survey_.points.size(), kMostFloorPoints);
        for (std::size_t i = 0; i < survey_.points.size(); ++i) {
            claim(places_, fmt::format("/points/{}/name", i), survey_.points[i].name);
        }
    }

    void check_readings() {
        too_many("/readings", "tape readings", survey_.readings.size(), kMostTapeReadings);
        each("readings", survey_.readings, &SurveyCheck::check_reading);
    }

    void check_reading(const std::string& pointer, const TapeReading& reading) {
        expect(places_, pointer + "/from", reading.from);
        expect(places_, pointer + "/to", reading.to);
        if (!reading.from.empty() && reading.from == reading.to) {
            wrong(pointer + "/to", "a measure goes between two different points");
        }
    }

    /// Whether two names are the ends of a wall; says so when they are not.
    void check_wall(const std::string& pointer, const std::string& from, const std::string& to,
                    std::string_view what) {
        expect(corners_, pointer + "/from", from);
        expect(corners_, pointer + "/to", to);
        if (corners_.has(from) && corners_.has(to) && !wall_between(survey_, from, to)) {
            wrong(pointer + "/to", fmt::format("{} lies along one wall, and no wall goes from {} "
                                               "to {}",
                                               what, in_quotes(from), in_quotes(to)));
        }
    }

    void check_chain(const std::string& pointer, const Chain& chain) {
        check_wall(pointer, chain.from, chain.to, "a chain");
        if (chain.stretches.empty()) {
            wrong(pointer + "/stretches", "a chain has at least one stretch");
        }
        for (std::size_t i = 0; i < chain.stretches.size(); ++i) {
            check_stretch(fmt::format("{}/stretches/{}", pointer, i), chain.stretches[i]);
        }
    }

    void check_stretch(const std::string& pointer, const Stretch& stretch) {
        switch (stretch.kind) {
        case StretchKind::wall:
            if (!stretch.name.empty() || stretch.depth != Length{} || stretch.height != Length{}
                || stretch.sill != Length{}) {
                wrong(pointer, "bare wall has a width and nothing else");
            }
            return;
        case StretchKind::door:
        case StretchKind::window:
        case StretchKind::opening:
            if (stretch.depth != Length{}) {
                wrong(pointer + "/depth", "only a thing has a depth");
            }
            return;
        case StretchKind::thing:
            if (stretch.name.empty()) {
                wrong(pointer, "a thing along a wall has a name");
            }
            return;
        }
    }

    void check_thing(const std::string& pointer, const FloorThing& thing) {
        claim(things_, pointer + "/name", thing.name);
        KnownNames own{"point"};
        for (std::size_t i = 0; i < thing.points.size(); ++i) {
            const std::string at = fmt::format("{}/points/{}", pointer, i);
            expect(places_, at, thing.points[i]);
            claim(own, at, thing.points[i]);
        }
        const bool is_round = thing.points.size() == 1 && thing.diameter > Length{};
        const bool has_corners = thing.points.size() >= 3 && thing.diameter == Length{};
        if (!is_round && !has_corners) {
            wrong(pointer, "a thing on the floor has three points or more, its corners, or one "
                           "point, its middle, and a diameter");
        }
    }

    void check_height(const std::string& pointer, const HeightReading& height) {
        expect(places_, pointer + "/at", height.at);
    }

    void check_outlet(const std::string& pointer, const OutletReading& outlet) {
        check_wall(pointer, outlet.from, outlet.to, "an outlet");
    }

    const Survey& survey_;
    KnownNames corners_{"corner"};
    /// Corners and floor points.
    KnownNames places_{"corner or floor point"};
    KnownNames things_{"thing"};
    std::vector<SurveyFault> faults_;
};

/// The value that a pointer leads to, or the nearest one around it that is there.
Value value_at(Value value, std::string_view pointer) {
    while (!pointer.empty()) {
        const std::size_t end = std::min(pointer.find('/', 1), pointer.size());
        const std::string_view step = pointer.substr(1, end - 1);
        std::size_t index = 0;
        const bool counts =
            std::from_chars(step.data(), step.data() + step.size(), index).ec == std::errc{};
        if (counts != value.is(catalogue::JsonKind::array)) {
            return value;
        }
        value = counts ? value.item(index) : value.at(step);
        pointer.remove_prefix(end);
    }
    return value;
}

} // namespace

std::vector<SurveyFault> faults_of(const Survey& survey) {
    return SurveyCheck{survey}.all();
}

void check_survey(Reading& reading, const Value& value, const Survey& survey) {
    for (const SurveyFault& fault : faults_of(survey)) {
        const Value at = value_at(value, fault.pointer);
        if (!reading.is_spoilt(at)) {
            reading.wrong(at, fault.message);
        }
    }
}

} // namespace throwline::plan
