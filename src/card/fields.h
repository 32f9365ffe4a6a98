#pragma once

#include "base/words.h"
#include "card/field_workings.h"
#include "card/parts.h"
#include "card/points_text.h"
#include "card/read_values.h"
#include "plan/names.h"

/// Fields of every kind of value, of the parts that are chosen.
namespace throwline::card {

/// A field of parts: `show` gives the text of one, `put` sets one by a text and returns what is
/// wrong with it.
template <class Part, class Show, class Put>
Field field(const Parts<Part>& parts, FieldName name, FieldKind kind, Show show, Put put) {
    Field made;
    made.key = name.key;
    made.label = capitalised(name.words + " of " + parts.what);
    made.kind = kind;
    made.value = show(parts.first());
    made.mixed = std::any_of(parts.now.begin() + 1, parts.now.end(),
                             [&](const Part& part) { return show(part) != made.value; });
    if (made.mixed) {
        made.value.clear();
    }
    made.set = setter(parts, name, put);
    return made;
}

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
    if (!made.mixed) {
        made.working = length_working(get(parts.first()));
    }
    return made;
}

/// A length that may be left to a rule, which is called `usual`.
template <class Part, class Get>
Field open_length_field(const Parts<Part>& parts, FieldName name, UnitSystem units,
                        LengthBounds bounds, std::string usual, Get get) {
    Field made = field(
        parts, std::move(name), FieldKind::length,
        [=](const Part& part) {
            const std::optional<Length>& length = get(part);
            return length ? shown(*length, units) : usual;
        },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (trimmed(text).empty() || says(text, usual)) {
                get(part).reset();
            } else if (const auto length = read_length(text, units, bounds, fault)) {
                get(part) = *length;
            }
            return fault;
        });
    made.hint = hint_of(bounds, units) + "; empty: " + usual;
    if (!made.mixed && get(parts.first())) {
        made.working = length_working(*get(parts.first()));
    }
    return made;
}

struct NumberBounds {
    double least = 0.0;
    double most = 1.0;
    /// Shown behind the number; may be typed or not: " kg".
    std::string unit{};
};

template <class Part, class Get, class Put>
Field number_field(const Parts<Part>& parts, FieldName name, const NumberBounds& bounds, Get get,
                   Put put) {
    Field made = field(
        parts, std::move(name), FieldKind::number,
        [=](const Part& part) { return shortest(get(part)) + bounds.unit; },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            std::string bare = trimmed(text);
            const std::string unit = trimmed(bounds.unit);
            if (!unit.empty() && bare.ends_with(unit)) {
                bare.resize(bare.size() - unit.size());
            }
            if (const auto number = read_number(bare, bounds.least, bounds.most, fault)) {
                put(part, *number);
            }
            return fault;
        });
    made.hint =
        fmt::format("from {} to {}{}", shortest(bounds.least), shortest(bounds.most), bounds.unit);
    return made;
}

/// A share shown in percent. `get` gives a reference.
template <class Part, class Get>
Field percent_field(const Parts<Part>& parts, FieldName name, Get get) {
    return number_field(
        parts, std::move(name), {0, 100, " %"},
        [get](const Part& part) { return std::round(get(part) * 1000.0) / 10.0; },
        [get](Part& part, double percent) { get(part) = percent / 100.0; });
}

template <class Part, class Get>
Field whole_field(const Parts<Part>& parts, FieldName name, const NumberBounds& bounds, Get get) {
    return number_field(
        parts, std::move(name), bounds,
        [get](const Part& part) { return static_cast<double>(get(part)); },
        [get](Part& part, double number) { get(part) = static_cast<int>(std::lround(number)); });
}

/// Anticlockwise from right across the page. `get` gives a reference.
template <class Part, class Get>
Field angle_field(const Parts<Part>& parts, FieldName name, Get get) {
    Field made = field(
        parts, std::move(name), FieldKind::angle,
        [=](const Part& part) { return degrees_text(get(part), 1); },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (const auto angle = read_angle(text, fault)) {
                get(part) = *angle;
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

/// A row of a table of the catalogue; the working tells what the table knows of it.
template <class Part, class Rows, class Get>
Field row_field(const Parts<Part>& parts, FieldName name, const Rows& rows, UnitSystem units,
                Get get) {
    std::vector<std::string> names;
    for (const auto& row : rows) {
        names.push_back(row.name);
    }
    Field made = choice_field(
        parts, std::move(name), std::move(names),
        [get](const Part& part) { return std::string{get(part)}; },
        [get](Part& part, const std::string& chosen) { get(part) = chosen; });
    for (const auto& row : rows) {
        if (!made.mixed && row.name == made.value) {
            made.working = [row, units] { return row_working(row, units); };
        }
    }
    return made;
}

/// The same where a row may be left out, which is called `none`.
template <class Part, class Rows, class Get>
Field open_row_field(const Parts<Part>& parts, FieldName name, const Rows& rows, UnitSystem units,
                     std::string none, Get get) {
    std::vector<std::string> names{none};
    for (const auto& row : rows) {
        names.push_back(row.name);
    }
    Field made = choice_field(
        parts, std::move(name), std::move(names),
        [get, none](const Part& part) { return get(part).empty() ? none : get(part); },
        [get, none](Part& part, const std::string& chosen) {
            get(part) = chosen == none ? std::string{} : chosen;
        });
    for (const auto& row : rows) {
        if (!made.mixed && row.name == made.value) {
            made.working = [row, units] { return row_working(row, units); };
        }
    }
    return made;
}

/// One of an enum by its name in plan files.
template <class Part, class Names, class Get>
Field enum_field(const Parts<Part>& parts, FieldName name, const Names& names, Get get) {
    std::vector<std::string> choices;
    for (const auto& entry : names) {
        choices.emplace_back(entry.name);
    }
    return choice_field(
        parts, std::move(name), std::move(choices),
        [get](const Part& part) { return std::string{plan::name_of(get(part))}; },
        [get, names](Part& part, const std::string& chosen) {
            for (const auto& entry : names) {
                if (entry.name == chosen) {
                    get(part) = entry.value;
                }
            }
        });
}

template <class Part, class Get>
Field yes_no_field(const Parts<Part>& parts, FieldName name, Get get) {
    Field made = field(
        parts, std::move(name), FieldKind::yes_no,
        [=](const Part& part) { return std::string{get(part) ? "yes" : "no"}; },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (const auto yes = read_yes_no(text, fault)) {
                get(part) = *yes;
            }
            return fault;
        });
    made.choices = {"yes", "no"};
    return made;
}

/// Free words; `get` gives a reference.
template <class Part, class Get>
Field text_field(const Parts<Part>& parts, FieldName name, Get get) {
    return field(
        parts, std::move(name), FieldKind::text, [=](const Part& part) { return get(part); },
        [=](Part& part, const std::string& text, const edit::Context&) {
            get(part) = trimmed(text);
            return std::string{};
        });
}

/// Notes parted by semicolons; `get` gives a reference to the list.
template <class Part, class Get>
Field notes_field(const Parts<Part>& parts, FieldName name, Get get) {
    Field made = field(
        parts, std::move(name), FieldKind::many_lines,
        [=](const Part& part) { return joined(get(part), "\n"); },
        [=](Part& part, const std::string& text, const edit::Context&) {
            get(part) = parts_between(text, '\n');
            return std::string{};
        });
    made.hint = "a note on each line";
    return made;
}

/// A place on the floor; `get` gives a reference.
template <class Part, class Get>
Field point_field(const Parts<Part>& parts, FieldName name, UnitSystem units, Get get) {
    Field made = field(
        parts, std::move(name), FieldKind::text,
        [=](const Part& part) { return text_of(get(part), units); },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            if (const auto point = read_point(text, units, fault)) {
                get(part) = *point;
            }
            return fault;
        });
    made.hint = "across, up the page";
    return made;
}

/// Points of a line or a way, at least `fewest`; with none it is called `none`.
template <class Part, class Get>
Field points_field(const Parts<Part>& parts, FieldName name, UnitSystem units, std::size_t fewest,
                   std::string none, Get get) {
    Field made = field(
        parts, std::move(name), FieldKind::text,
        [=](const Part& part) {
            return get(part).empty() ? none : text_of(std::vector<Vec2>{get(part)}, units);
        },
        [=](Part& part, const std::string& text, const edit::Context&) {
            std::string fault;
            const bool is_none = !none.empty() && (trimmed(text).empty() || says(text, none));
            const auto points = is_none ? std::vector<Vec2>{} : read_points(text, units, fault);
            if (points && points->size() < fewest) {
                return fmt::format("give {} places or more", fewest);
            }
            if (points) {
                get(part) = *points;
            }
            return fault;
        });
    made.hint = "places: across, up the page; the next behind a semicolon";
    return made;
}

/// Names of entities of the plan, parted by commas; with none it is called `none`. `get` gives a
/// reference to the list of ids, `among` the entities of a plan. In the order of the plan where
/// `in_plan_order`, else as they are typed.
template <class Part, class Among, class Get>
Field ids_field(const edit::Context& context, const Parts<Part>& parts, FieldName name,
                std::string none, bool in_plan_order, Among among, Get get) {
    const auto names_in = [among](const plan::Plan& plan) {
        std::vector<std::string> names;
        for (const auto& entity : among(plan)) {
            names.push_back(entity.id.name);
        }
        return names;
    };
    Field made = field(
        parts, std::move(name), FieldKind::text,
        [=](const Part& part) {
            std::vector<std::string> names;
            for (const auto& id : get(part)) {
                names.push_back(id.name);
            }
            return names.empty() ? none : joined(names);
        },
        [=](Part& part, const std::string& text, const edit::Context& now) {
            std::string fault;
            const bool is_none = !none.empty() && (trimmed(text).empty() || says(text, none));
            const std::vector<std::string> all = names_in(now.plan);
            const auto names = is_none ? std::vector<std::string>{} : read_names(text, all, fault);
            if (!names) {
                return fault;
            }
            if (names->empty() && none.empty()) {
                return std::string{"name one at least"};
            }
            get(part).clear();
            for (const std::string& id : in_plan_order ? all : *names) {
                if (std::find(names->begin(), names->end(), id) != names->end()) {
                    get(part).push_back({id});
                }
            }
            return fault;
        });
    made.choices = names_in(context.plan);
    made.hint = "names, with commas between";
    return made;
}

template <class Entity>
std::vector<std::string> id_names(const std::vector<Entity>& entities) {
    std::vector<std::string> names;
    for (const Entity& entity : entities) {
        names.push_back(entity.id.name);
    }
    return names;
}

} // namespace throwline::card
