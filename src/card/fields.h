#pragma once

#include "base/length_text.h"
#include "card/card.h"
#include "catalogue/catalogue.h"
#include "plan/names.h"

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

/// Fields of the parts of a plan that are chosen; shared by the cards of all kinds of things.
namespace throwline::card {

/// The parts that a field is about, one a chosen thing: where each lies in a plan, and how it is
/// now.
template <class Part>
struct Parts {
    using Locate = std::function<Part*(plan::Plan&, const edit::Context&)>;
    std::vector<Locate> where;
    std::vector<Part> now;
    /// "camera 2", "3 lamps": for the names of steps and for a reader of the screen.
    std::string what;

    bool empty() const { return now.empty(); }
    const Part& first() const { return now.front(); }
};

/// Finds the parts in the plan of the context; those that are not there are left out.
template <class Part>
Parts<Part> parts_of(const edit::Context& context, std::string what,
                     std::vector<typename Parts<Part>::Locate> where) {
    Parts<Part> parts;
    parts.what = std::move(what);
    plan::Plan copy = context.plan;
    for (auto& locate : where) {
        if (const Part* part = locate(copy, context)) {
            parts.now.push_back(*part);
            parts.where.push_back(std::move(locate));
        }
    }
    return parts;
}

/// A field before its value: how it is called.
struct FieldName {
    std::string key;
    /// "height": completes "Set height of camera 2" and "Height of camera 2".
    std::string words;
};

/// A change of every part by a text; `put` returns a sentence when the text will not do, else an
/// empty one.
template <class Part, class Put>
auto setter(const Parts<Part>& parts, const FieldName& name, Put put) {
    return [where = parts.where, what = parts.what, words = name.words,
            put](const edit::Context& context, const std::string& text) -> Result<edit::Step> {
        edit::Step step{"Set " + words + " of " + what, context.plan, {}};
        for (const auto& locate : where) {
            Part* part = locate(step.plan, context);
            if (part == nullptr) {
                return failure(what + " is not there any more");
            }
            if (std::string fault = put(*part, text, context); !fault.empty()) {
                return failure(std::move(fault));
            }
        }
        return step;
    };
}

template <class Part, class Show, class Put>
Field field(const Parts<Part>& parts, FieldName name, FieldKind kind, Show show, Put put) {
    Field made;
    made.key = name.key;
    made.label = name.words + " of " + parts.what;
    made.kind = kind;
    made.value = show(parts.first());
    made.mixed = std::any_of(parts.now.begin(), parts.now.end(),
                             [&](const Part& part) { return show(part) != made.value; });
    if (made.mixed) {
        made.value.clear();
    }
    made.set = setter(parts, name, put);
    return made;
}

struct LengthBounds {
    Length least;
    Length most = Length::metres(1000);
};

/// Reads a length within bounds; a sentence in `fault` when it is none.
std::optional<Length> read_length(const std::string& text, UnitSystem units,
                                  const LengthBounds& bounds, std::string& fault);
std::optional<double> read_number(const std::string& text, double least, double most,
                                  std::string& fault);
std::optional<Angle> read_angle(const std::string& text, std::string& fault);
std::optional<bool> read_yes_no(const std::string& text, std::string& fault);
/// The choice itself as it is written in the list; with the nearest in the fault.
std::optional<std::string> read_choice(const std::string& text,
                                       const std::vector<std::string>& choices, std::string& fault);
/// Names separated by commas, each of the list.
std::optional<std::vector<std::string>>
read_names(const std::string& text, const std::vector<std::string>& choices, std::string& fault);
std::string joined(const std::vector<std::string>& names);
std::string hint_of(const LengthBounds& bounds, UnitSystem units);

template <class Part, class Get, class Put>
Field length_field(const Parts<Part>& parts, FieldName name, UnitSystem units, LengthBounds bounds,
                   Get get, Put put) {
    Field made = field(
        parts, std::move(name), FieldKind::length,
        [=](const Part& part) { return shown(get(part), units); },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (const auto length = read_length(text, units, bounds, fault)) {
                put(part, *length);
            }
            return fault;
        });
    made.hint = hint_of(bounds, units);
    return made;
}

template <class Part, class Get, class Put>
Field number_field(const Parts<Part>& parts, FieldName name, double least, double most,
                   std::string unit, Get get, Put put) {
    Field made = field(
        parts, std::move(name), FieldKind::number,
        [=](const Part& part) { return shortest(get(part)) + unit; },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            std::string bare = text;
            if (!unit.empty() && bare.size() >= unit.size() && bare.ends_with(unit)) {
                bare.resize(bare.size() - unit.size());
            }
            if (const auto number = read_number(bare, least, most, fault)) {
                put(part, *number);
            }
            return fault;
        });
    made.hint = shortest(least) + " to " + shortest(most) + unit;
    return made;
}

template <class Part, class Get, class Put>
Field angle_field(const Parts<Part>& parts, FieldName name, Get get, Put put) {
    Field made = field(
        parts, std::move(name), FieldKind::angle,
        [=](const Part& part) { return degrees_text(get(part), 1); },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (const auto angle = read_angle(text, fault)) {
                put(part, *angle);
            }
            return fault;
        });
    made.hint = "degrees, anticlockwise from right across the page";
    return made;
}

template <class Part, class Get, class Put>
Field choice_field(const Parts<Part>& parts, FieldName name, std::vector<std::string> choices,
                   Get get, Put put) {
    Field made = field(
        parts, std::move(name), FieldKind::choice, [=](const Part& part) { return get(part); },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (const auto chosen = read_choice(text, choices, fault)) {
                put(part, *chosen);
            }
            return fault;
        });
    made.choices = std::move(choices);
    return made;
}

template <class Part, class Get, class Put>
Field yes_no_field(const Parts<Part>& parts, FieldName name, Get get, Put put) {
    Field made = field(
        parts, std::move(name), FieldKind::yes_no,
        [=](const Part& part) { return std::string{get(part) ? "yes" : "no"}; },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (const auto yes = read_yes_no(text, fault)) {
                put(part, *yes);
            }
            return fault;
        });
    made.choices = {"yes", "no"};
    return made;
}

template <class Part, class Get, class Put>
Field text_field(const Parts<Part>& parts, FieldName name, Get get, Put put) {
    return field(
        parts, std::move(name), FieldKind::text, [=](const Part& part) { return get(part); },
        [=](Part& part, const std::string& text, const edit::Context&) {
            put(part, text);
            return std::string{};
        });
}

/// The name itself, by which all else mentions it.
Field name_field(const edit::Thing& thing);
/// Where a thing stands, across and up the page.
std::vector<Piece> place_pieces(const edit::Context& context, const edit::Thing& thing);

template <class Row>
std::vector<std::string> row_names(const std::vector<Row>& rows) {
    std::vector<std::string> names;
    for (const Row& row : rows) {
        names.push_back(row.name);
    }
    return names;
}

template <class Entity>
std::vector<std::string> id_names(const std::vector<Entity>& entities) {
    std::vector<std::string> names;
    for (const Entity& entity : entities) {
        names.push_back(entity.id.name);
    }
    return names;
}

template <class Names>
std::vector<std::string> choice_names(const Names& names) {
    std::vector<std::string> list;
    for (const auto& entry : names) {
        list.emplace_back(entry.name);
    }
    return list;
}

/// Of choices, the value of a name in the list.
template <class Names>
auto choice_named(const Names& names, const std::string& name) {
    for (const auto& entry : names) {
        if (entry.name == name) {
            return entry.value;
        }
    }
    return names.front().value;
}

/// "a person's name" and the like as an aim: empty for none, a name, or a place "x, y, up".
std::string aim_text(const plan::Aim& aim, UnitSystem units);
std::string put_aim(plan::Aim& aim, const std::string& text, const edit::Context& context,
                    const std::string& self);
/// Names of all that can be aimed at.
std::vector<std::string> aimable(const plan::Plan& plan);

void say(Card& card, std::vector<Piece> pieces);
void heading(Card& card, std::string words);

// One a kind of thing; `things` are all of the kind.
void camera_card(Card& card, const CardInput& input);
void lamp_card(Card& card, const CardInput& input);
void person_card(Card& card, const CardInput& input);
void scenery_card(Card& card, const CardInput& input);
void wall_card(Card& card, const CardInput& input);
void opening_card(Card& card, const CardInput& input);
void pipe_card(Card& card, const CardInput& input);
void outlet_card(Card& card, const CardInput& input);
void boom_card(Card& card, const CardInput& input);
void production_card(Card& card, const CardInput& input);
/// The shot of now, in sentences; nothing when there is none.
void shot_sentences(Card& card, const CardInput& input, const plan::Id<plan::Shot>& shot);

} // namespace throwline::card
