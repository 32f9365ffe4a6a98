#include "card/aims.h"

#include "base/utf8.h"
#include "card/fields.h"

namespace throwline::card {

namespace {

std::string put_name(std::string& to, const std::string& text, const edit::Context& context,
                     const std::string& self) {
    std::string fault;
    const auto name = read_choice(text, aimable(context.plan), fault);
    if (name && *name == self) {
        return fmt::format("{} cannot be turned to itself", self);
    }
    if (name) {
        to = *name;
    }
    return fault;
}

/// Whether a text names something that can be aimed at.
bool is_name(const std::string& text, const plan::Plan& plan) {
    std::string fault;
    return read_choice(text, aimable(plan), fault).has_value();
}

} // namespace

std::vector<std::string> aimable(const plan::Plan& plan) {
    std::vector<std::string> names = id_names(plan.people);
    for (const auto& more : {id_names(plan.scenery), id_names(plan.cameras), id_names(plan.lamps),
                             id_names(plan.booms)}) {
        names.insert(names.end(), more.begin(), more.end());
    }
    return names;
}

std::string aim_text(const plan::Aim& aim, UnitSystem units, const std::string& none) {
    if (const auto* named = std::get_if<plan::ThingName>(&aim)) {
        return named->name;
    }
    const auto* at = std::get_if<Vec3>(&aim);
    return at != nullptr ? text_of(*at, units) : none;
}

std::string put_aim(plan::Aim& aim, const std::string& text, const edit::Context& context,
                    const std::string& none, const std::string& self) {
    if (trimmed(text).empty() || says(text, none)) {
        aim = std::monostate{};
        return {};
    }
    std::string fault;
    if (count_of_parts(text) < 2 || is_name(text, context.plan)) {
        std::string name;
        fault = put_name(name, text, context, self);
        if (fault.empty()) {
            aim = plan::ThingName{name};
        }
    } else if (const auto place = read_place(text, 3, context.plan.units, fault)) {
        aim = Vec3{(*place)[0].m(), (*place)[1].m(), (*place)[2].m()};
    }
    return fault;
}

std::string facing_text(const plan::Facing& faces, UnitSystem units) {
    if (const auto* angle = std::get_if<Angle>(&faces)) {
        return degrees_text(*angle, 0);
    }
    if (const auto* named = std::get_if<plan::ThingName>(&faces)) {
        return named->name;
    }
    return text_of(std::get<Vec2>(faces), units);
}

std::string put_facing(plan::Facing& faces, const std::string& text, const edit::Context& context,
                       const std::string& self) {
    std::string fault;
    if (!is_name(text, context.plan)) {
        if (const Result<Angle> angle = parse_angle(text)) {
            faces = *angle;
            return fault;
        }
        if (count_of_parts(text) > 1) {
            if (const auto place = read_point(text, context.plan.units, fault)) {
                faces = *place;
            }
            return fault;
        }
    }
    std::string name;
    fault = put_name(name, text, context, self);
    if (fault.empty()) {
        faces = plan::ThingName{name};
    }
    return fault;
}

} // namespace throwline::card
