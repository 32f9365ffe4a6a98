#include "card/fields.h"

#include "base/nearest_name.h"
#include "edit/moves.h"
#include "edit/pick.h"

#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace throwline::card {

namespace {

std::string trimmed(const std::string& text) {
    const std::size_t first = text.find_first_not_of(" \t\n");
    return first == std::string::npos
               ? std::string{}
               : text.substr(first, text.find_last_not_of(" \t\n") - first + 1);
}

std::vector<std::string> parts_at_commas(const std::string& text) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t comma = std::min(text.find(',', from), text.size());
        if (std::string part = trimmed(text.substr(from, comma - from)); !part.empty()) {
            parts.push_back(std::move(part));
        }
        from = comma + 1;
    }
    return parts;
}

std::string lower(std::string text) {
    for (char& c : text) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return text;
}

} // namespace

std::optional<Length> read_length(const std::string& text, UnitSystem units,
                                  const LengthBounds& bounds, std::string& fault) {
    const Result<Length> read = parse_length(text, {.bare_unit = units});
    if (!read) {
        fault = read.error().message;
        return std::nullopt;
    }
    if (*read < bounds.least || *read > bounds.most) {
        fault = fmt::format("{} is not {}", shown(*read, units), hint_of(bounds, units));
        return std::nullopt;
    }
    return *read;
}

std::optional<double> read_number(const std::string& text, double least, double most,
                                  std::string& fault) {
    std::string number = trimmed(text);
    std::replace(number.begin(), number.end(), ',', '.');
    double value = 0.0;
    const auto [end, wrong] = std::from_chars(number.data(), number.data() + number.size(), value);
    if (wrong != std::errc{} || end != number.data() + number.size() || !std::isfinite(value)) {
        fault = fmt::format("\"{}\" is no number", text);
        return std::nullopt;
    }
    if (value < least || value > most) {
        fault = fmt::format("give a number from {} to {}", shortest(least), shortest(most));
        return std::nullopt;
    }
    return value;
}

std::optional<Angle> read_angle(const std::string& text, std::string& fault) {
    const Result<Angle> read = parse_angle(text);
    if (!read) {
        fault = read.error().message;
        return std::nullopt;
    }
    return *read;
}

std::optional<bool> read_yes_no(const std::string& text, std::string& fault) {
    const std::string word = lower(trimmed(text));
    if (word == "yes" || word == "y" || word == "true" || word == "on") {
        return true;
    }
    if (word == "no" || word == "n" || word == "false" || word == "off") {
        return false;
    }
    fault = "say yes or no";
    return std::nullopt;
}

std::optional<std::string>
read_choice(const std::string& text, const std::vector<std::string>& choices, std::string& fault) {
    const std::string wanted = lower(trimmed(text));
    for (const std::string& choice : choices) {
        if (lower(choice) == wanted) {
            return choice;
        }
    }
    const std::string nearest = nearest_name(text, choices);
    fault = fmt::format("there is no \"{}\"", text);
    if (!nearest.empty()) {
        fault += fmt::format("; did you mean {}?", nearest);
    }
    return std::nullopt;
}

std::optional<std::vector<std::string>>
read_names(const std::string& text, const std::vector<std::string>& choices, std::string& fault) {
    std::vector<std::string> names;
    for (const std::string& part : parts_at_commas(text)) {
        const auto name = read_choice(part, choices, fault);
        if (!name) {
            return std::nullopt;
        }
        if (std::find(names.begin(), names.end(), *name) == names.end()) {
            names.push_back(*name);
        }
    }
    return names;
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) {
        text += (text.empty() ? "" : ", ") + name;
    }
    return text;
}

std::string hint_of(const LengthBounds& bounds, UnitSystem units) {
    return fmt::format("from {} to {}", shown(bounds.least, units), shown(bounds.most, units));
}

Field name_field(const edit::Thing& thing) {
    Field made;
    made.key = "name";
    made.label = fmt::format("Name of {}", edit::name_of(thing));
    made.value = thing.name;
    made.hint = "what the crew calls it";
    made.set = [thing](const edit::Context& context, const std::string& text) {
        return edit::renamed(context, thing, trimmed(text));
    };
    return made;
}

std::vector<Piece> place_pieces(const edit::Context& context, const edit::Thing& thing) {
    const std::optional<Vec2> at = edit::place_of(context, thing);
    if (!at) {
        return {};
    }
    const UnitSystem units = context.plan.units;
    const auto coordinate = [&](Eigen::Index axis, const char* key, const char* words) {
        Field made;
        made.key = key;
        made.label = fmt::format("{} of {}", words, edit::name_of(thing));
        made.kind = FieldKind::length;
        made.value = shown(Length::metres((*at)[axis]), units);
        made.set = [thing, axis](const edit::Context& now,
                                 const std::string& text) -> Result<edit::Step> {
            std::string fault;
            const auto length = read_length(
                text, now.plan.units, {Length::metres(-10'000), Length::metres(10'000)}, fault);
            const std::optional<Vec2> place = edit::place_of(now, thing);
            if (!length || !place) {
                return failure(length ? "it is not on the floor now" : fault);
            }
            Vec2 by = Vec2::Zero();
            by[axis] = length->m() - (*place)[axis];
            return edit::moved(now, std::vector{thing}, by);
        };
        return made;
    };
    return {"Stands at ", coordinate(0, "x", "Place across"), " across, ",
            coordinate(1, "y", "Place up the page"), " up the page."};
}

std::vector<std::string> aimable(const plan::Plan& plan) {
    std::vector<std::string> names = id_names(plan.people);
    for (const auto& more : {id_names(plan.scenery), id_names(plan.cameras), id_names(plan.lamps),
                             id_names(plan.booms)}) {
        names.insert(names.end(), more.begin(), more.end());
    }
    return names;
}

std::string aim_text(const plan::Aim& aim, UnitSystem units) {
    if (const auto* named = std::get_if<plan::ThingName>(&aim)) {
        return named->name;
    }
    if (const auto* at = std::get_if<Vec3>(&aim)) {
        return fmt::format("{}, {}, {}", shown(Length::metres(at->x()), units),
                           shown(Length::metres(at->y()), units),
                           shown(Length::metres(at->z()), units));
    }
    return "nothing";
}

std::string put_aim(plan::Aim& aim, const std::string& text, const edit::Context& context,
                    const std::string& self) {
    const std::string wanted = trimmed(text);
    if (wanted.empty() || lower(wanted) == "nothing") {
        aim = std::monostate{};
        return {};
    }
    const std::vector<std::string> parts = parts_at_commas(wanted);
    if (parts.size() == 3) {
        Vec3 at = Vec3::Zero();
        std::string fault;
        for (std::size_t i = 0; i < 3; ++i) {
            const auto length =
                read_length(parts[i], context.plan.units,
                            {Length::metres(-10'000), Length::metres(10'000)}, fault);
            if (!length) {
                return fault;
            }
            at[static_cast<Eigen::Index>(i)] = length->m();
        }
        aim = at;
        return {};
    }
    std::string fault;
    const auto name = read_choice(wanted, aimable(context.plan), fault);
    if (name && *name == self) {
        return "it cannot be aimed at itself";
    }
    if (name) {
        aim = plan::ThingName{*name};
    }
    return fault;
}

void say(Card& card, std::vector<Piece> pieces) {
    if (!pieces.empty()) {
        card.sentences.push_back({std::move(pieces), false});
    }
}

void heading(Card& card, std::string words) {
    card.sentences.push_back({{std::move(words)}, true});
}

} // namespace throwline::card
