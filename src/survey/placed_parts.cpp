#include "survey/placed_parts.h"

#include "base/length_text.h"
#include "base/utf8.h"
#include "plan/names.h"
#include "survey/recce_sentences.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <set>

namespace throwline::survey {

namespace {

/// A tape reads no finer.
constexpr double kGrid_m = 1e-4;
/// Taken, and said so, where no height was read (common practice, no source).
constexpr Length kUsualDoorHead = Length::metres(2.0);
constexpr Length kUsualWindowSill = Length::metres(0.9);
constexpr Length kUsualWindowHeight = Length::metres(1.2);
constexpr Length kUsualThingHeight = Length::metres(0.9);
/// What a plan file allows an opening to miss its wall by.
constexpr double kFit_m = 0.001;
constexpr double kSmallestArea_m2 = 1e-4;

double on_grid(double value_m) {
    // 0 + turns a negative zero into a plain one.
    return 0.0 + std::round(value_m / kGrid_m) / std::round(1.0 / kGrid_m);
}
Length on_grid(Length length) {
    return Length::metres(on_grid(length.m()));
}
Vec2 on_grid(const Vec2& point) {
    return {on_grid(point.x()), on_grid(point.y())};
}

/// Gives each name once: a second "dresser" becomes "dresser 2".
class UniqueNames {
  public:
    std::string unique(const std::string& name) {
        std::string candidate = name;
        for (int number = 2; !taken_.insert(candidate).second; ++number) {
            candidate = fmt::format("{} {}", name, number);
        }
        return candidate;
    }

  private:
    std::set<std::string> taken_;
};

bool is_opening(const plan::Stretch& stretch) {
    switch (stretch.kind) {
    case plan::StretchKind::door:
    case plan::StretchKind::window:
    case plan::StretchKind::opening:
        return true;
    case plan::StretchKind::wall:
    case plan::StretchKind::thing:
        return false;
    }
    return false;
}

plan::OpeningKind opening_kind(plan::StretchKind kind) {
    switch (kind) {
    case plan::StretchKind::window:
        return plan::OpeningKind::window;
    case plan::StretchKind::opening:
        return plan::OpeningKind::opening;
    case plan::StretchKind::door:
    case plan::StretchKind::wall:
    case plan::StretchKind::thing:
        return plan::OpeningKind::door;
    }
    return plan::OpeningKind::door;
}

/// A wall as walked, on the page.
struct WallLine {
    int index = 0;
    Vec2 start = Vec2::Zero();
    Vec2 along = Vec2::Zero();
    Vec2 inward = Vec2::Zero();
    double length_m = 0.0;
};

class Placing {
  public:
    Placing(const RecceResult& result, const RecceFrame& frame, Length ceiling, UnitSystem units)
        : result_{result}, survey_{result.survey}, frame_{frame}, ceiling_{on_grid(ceiling)},
          units_{units} {}

    PlacedParts made() {
        for (std::size_t i = 0; i < result_.corner_count(); ++i) {
            parts_.outline.push_back(on_page(result_.points[i].at));
        }
        opening_names_ = opening_names(survey_);
        scenery_names_ = scenery_names(survey_);
        for (std::size_t i = 0; i < survey_.chains.size(); ++i) {
            place_chain(survey_.chains[i], result_.chains[i]);
        }
        for (const plan::FloorThing& thing : survey_.things) {
            place_thing(thing, scenery_names_[next_scenery_++]);
        }
        for (const plan::OutletReading& outlet : survey_.outlets) {
            place_outlet(outlet);
        }
        place_notes();
        place_north();
        return std::move(parts_);
    }

  private:
    Vec2 on_page(const Vec2& at) const {
        return on_grid(Vec2{frame_.origin + rotated(at, frame_.turn_rad)});
    }

    WallLine wall_line(const std::string& from, const std::string& to) const {
        const int index = plan::wall_between(survey_, from, to).value_or(0);
        const auto wall = static_cast<std::size_t>(index);
        const Vec2& start = parts_.outline[wall];
        const Vec2& end = parts_.outline[(wall + 1) % parts_.outline.size()];
        WallLine line{index, start, Vec2::Zero(), Vec2::Zero(), (end - start).norm()};
        line.along = (end - start) / line.length_m;
        line.inward = turned_left(line.along) * (survey_.clockwise ? -1.0 : 1.0);
        return line;
    }

    /// Where something that was read from a corner begins, from the wall's start as walked.
    double start_on(const WallLine& line, const std::string& from, double start_m,
                    double width_m) const {
        const bool forwards = survey_.corners[static_cast<std::size_t>(line.index)] == from;
        return forwards ? start_m : line.length_m - start_m - width_m;
    }

    void place_chain(const plan::Chain& chain, const ChainFit& fit) {
        const WallLine line = wall_line(chain.from, chain.to);
        for (std::size_t i = 0; i < chain.stretches.size(); ++i) {
            const plan::Stretch& stretch = chain.stretches[i];
            const double width_m = fit.stretches[i].width.m();
            const double start_m = start_on(line, chain.from, fit.stretches[i].start.m(), width_m);
            if (is_opening(stretch)) {
                place_opening(stretch, line, start_m, width_m, fit);
            } else if (stretch.kind == plan::StretchKind::thing) {
                place_stretch_thing(stretch, line, start_m, width_m);
            }
        }
    }

    std::string wall_name(int wall) const {
        const std::size_t count = survey_.corners.size();
        const auto index = static_cast<std::size_t>(wall);
        return fmt::format("{}-{}", survey_.corners[index], survey_.corners[(index + 1) % count]);
    }

    void place_opening(const plan::Stretch& stretch, const WallLine& line, double start_m,
                       double width_m, const ChainFit& fit) {
        plan::Opening opening;
        opening.id.name = opening_names_[next_opening_++];
        opening.kind = opening_kind(stretch.kind);
        opening.wall = line.index;
        const double past_m = std::max(-start_m, start_m + width_m - line.length_m);
        if (past_m > fit.tolerance.m() || width_m > line.length_m) {
            parts_.faults.push_back(fmt::format(
                "{} would lie {} past the end of wall {}, which is {} long", opening.id.name,
                difference_text(Length::metres(past_m), units_), wall_name(line.index),
                tape_text(Length::metres(line.length_m), units_)));
            return;
        }
        // What the tape explains is moved back onto the wall.
        start_m = std::clamp(start_m, 0.0, line.length_m - width_m);
        opening.from_start = Length::metres(on_grid(start_m));
        opening.width = Length::metres(on_grid(width_m));
        place_upright(stretch, opening);
        parts_.openings.push_back(std::move(opening));
    }

    void place_upright(const plan::Stretch& stretch, plan::Opening& opening) {
        Length sill = stretch.sill;
        Length height = stretch.height;
        if (height == Length{}) {
            const bool is_window = stretch.kind == plan::StretchKind::window;
            sill = is_window && sill == Length{} ? kUsualWindowSill : sill;
            height = is_window ? kUsualWindowHeight : kUsualDoorHead - sill;
            height = std::min(std::max(height, Length::metres(0.1)), ceiling_ - sill);
            parts_.remarks.push_back(fmt::format("The height of {} was not read; {} to {} above "
                                                 "the floor is taken.",
                                                 opening.id.name, tape_text(sill, units_),
                                                 tape_text(sill + height, units_)));
        }
        opening.sill = on_grid(sill);
        opening.head = on_grid(sill + height);
        if (opening.head.m() > ceiling_.m() + kFit_m || opening.head <= opening.sill) {
            parts_.faults.push_back(fmt::format("the top of {}, {}, is above the ceiling, {}",
                                                opening.id.name, tape_text(opening.head, units_),
                                                tape_text(ceiling_, units_)));
        }
    }

    Length thing_height(const std::string& name, Length read) {
        if (read != Length{}) {
            return read;
        }
        parts_.remarks.push_back(fmt::format("The height of {} was not read; {} is taken.", name,
                                             tape_text(kUsualThingHeight, units_)));
        return kUsualThingHeight;
    }

    void add_scenery(const std::string& name, plan::SceneryShape shape, Length elevation) {
        plan::Scenery scenery;
        scenery.id.name = name;
        scenery.shape = std::move(shape);
        scenery.elevation = on_grid(elevation);
        parts_.scenery.push_back(std::move(scenery));
    }

    void place_stretch_thing(const plan::Stretch& stretch, const WallLine& line, double start_m,
                             double width_m) {
        const std::string& name = scenery_names_[next_scenery_++];
        if (stretch.depth == Length{}) {
            parts_.remarks.push_back(fmt::format("{} is not drawn: its depth was not read.", name));
            return;
        }
        const Vec2 at = line.start + line.along * (start_m + width_m / 2.0)
                        + line.inward * (stretch.depth.m() / 2.0);
        plan::BoxPiece box;
        box.at = on_grid(at);
        box.width = Length::metres(on_grid(width_m));
        box.depth = on_grid(stretch.depth);
        box.height = on_grid(thing_height(name, stretch.height));
        box.turn = Angle::radians(angle_of(line.along));
        add_scenery(name, box, stretch.sill);
    }

    void place_thing(const plan::FloorThing& thing, const std::string& name) {
        Polygon corners;
        for (const std::string& point : thing.points) {
            const SurveyedPoint* found = result_.find(point);
            if (found == nullptr) {
                parts_.remarks.push_back(
                    fmt::format("{} is not drawn: {} could not be placed.", name, point));
                return;
            }
            corners.push_back(on_page(found->at));
        }
        const Length height = thing.height == Length{} ? ceiling_ : on_grid(thing.height);
        if (thing.diameter != Length{}) {
            add_scenery(name, plan::CylinderPiece{corners.front(), on_grid(thing.diameter), height},
                        {});
            return;
        }
        if (crosses_itself(corners) || area(corners) < kSmallestArea_m2) {
            parts_.faults.push_back(fmt::format(
                "the outline of {} crosses itself or has no area; name its points in walking order",
                name));
            return;
        }
        add_scenery(name, plan::PrismPiece{std::move(corners), height}, {});
    }

    void place_outlet(const plan::OutletReading& outlet) {
        const WallLine line = wall_line(outlet.from, outlet.to);
        if (outlet.along.m() > line.length_m + kFit_m) {
            parts_.faults.push_back(fmt::format(
                "an outlet of {} would lie {} past the end of wall {}", outlet.circuit,
                difference_text(Length::metres(outlet.along.m() - line.length_m), units_),
                wall_name(line.index)));
            return;
        }
        const double start_m = start_on(line, outlet.from, outlet.along.m(), 0.0);
        const Vec2 at = on_grid(Vec2{line.start + line.along * start_m});
        const auto same = [&](const plan::Circuit& one) { return one.id.name == outlet.circuit; };
        auto circuit = std::find_if(parts_.circuits.begin(), parts_.circuits.end(), same);
        if (circuit == parts_.circuits.end()) {
            circuit = parts_.circuits.insert(circuit, plan::Circuit{});
            circuit->id.name = outlet.circuit;
        }
        circuit->outlets.push_back(at);
    }

    void place_notes() {
        for (const plan::SiteNote& note : survey_.notes) {
            parts_.notes.push_back(note_text(note));
        }
        if (result_.ceiling && result_.ceiling->differs) {
            parts_.notes.push_back(ceiling_text(result_, units_));
        }
    }

    void place_north() {
        if (!survey_.first_wall_bearing) {
            return;
        }
        const double wall_rad = std::numbers::pi / 2.0 - frame_.turn_rad;
        const double north_deg =
            Angle::radians(wrapped(wall_rad - survey_.first_wall_bearing->rad())).deg();
        // To a hundredth of a degree: no compass reads finer.
        parts_.north = Angle::degrees(0.0 + std::round(north_deg * 100.0) / 100.0);
    }

    const RecceResult& result_;
    const plan::Survey& survey_;
    RecceFrame frame_;
    Length ceiling_;
    UnitSystem units_;
    PlacedParts parts_;
    std::vector<std::string> opening_names_;
    std::vector<std::string> scenery_names_;
    std::size_t next_opening_ = 0;
    std::size_t next_scenery_ = 0;
};

template <class Visit>
void each_stretch(const plan::Survey& survey, const Visit& visit) {
    for (const plan::Chain& chain : survey.chains) {
        for (const plan::Stretch& stretch : chain.stretches) {
            visit(chain, stretch);
        }
    }
}

} // namespace

PlacedParts placed_parts(const RecceResult& result, const RecceFrame& frame, Length ceiling,
                         UnitSystem units) {
    return Placing{result, frame, ceiling, units}.made();
}

std::vector<std::string> opening_names(const plan::Survey& survey) {
    UniqueNames unique;
    std::vector<std::string> names;
    each_stretch(survey, [&](const plan::Chain& chain, const plan::Stretch& stretch) {
        if (is_opening(stretch)) {
            const std::string plain =
                fmt::format("{} {}-{}", plan::name_of(stretch.kind), chain.from, chain.to);
            names.push_back(unique.unique(stretch.name.empty() ? plain : stretch.name));
        }
    });
    return names;
}

std::vector<std::string> scenery_names(const plan::Survey& survey) {
    UniqueNames unique;
    std::vector<std::string> names;
    each_stretch(survey, [&](const plan::Chain&, const plan::Stretch& stretch) {
        if (stretch.kind == plan::StretchKind::thing) {
            names.push_back(unique.unique(stretch.name));
        }
    });
    for (const plan::FloorThing& thing : survey.things) {
        names.push_back(unique.unique(thing.name));
    }
    return names;
}

} // namespace throwline::survey
