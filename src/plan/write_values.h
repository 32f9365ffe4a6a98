#pragma once

#include "plan/json_out.h"
#include "plan/names.h"

#include <optional>
#include <type_traits>

/// Single values as a plan file holds them. What `read_value` makes of them is equal to what was
/// written.
namespace throwline::plan {

JsonOut out(bool value);
JsonOut out(int value);
/// Shortest digits that read back to the same double; no negative zero.
JsonOut out(double value);
JsonOut out(const std::string& text);
/// Metres.
JsonOut out(Length length);
/// Degrees, or text in radians where no number of degrees is exactly this angle.
JsonOut out(Angle angle);
JsonOut out(const Vec2& point);
JsonOut out(const Vec3& point);
JsonOut out(const Extra& extra);
JsonOut out(const Facing& facing);
JsonOut out(const Aim& aim);
/// "28mm", or metres where no number of millimetres is exactly this length.
JsonOut focal_out(Length focal);

template <class Thing>
JsonOut out(const Id<Thing>& id) {
    return out(id.name);
}

template <class Choice>
    requires std::is_enum_v<Choice>
JsonOut out(Choice choice) {
    return out(std::string{name_of(choice)});
}

template <class Part>
JsonOut out(const std::vector<Part>& parts) {
    std::vector<JsonOut> items;
    for (const Part& part : parts) {
        items.push_back(out(part));
    }
    return JsonOut::array(std::move(items));
}

template <class Part>
void put(JsonOut& object, std::string_view key, const Part& part) {
    object.put(key, out(part));
}

/// A member that is left out where the reader would take the same value anyway.
template <class Part>
void put_unless(JsonOut& object, std::string_view key, const Part& part, const Part& usual) {
    if (!(part == usual)) {
        object.put(key, out(part));
    }
}

template <class Part>
void put_some(JsonOut& object, std::string_view key, const std::vector<Part>& parts) {
    if (!parts.empty()) {
        object.put(key, out(parts));
    }
}

template <class Part>
void put_some(JsonOut& object, std::string_view key, const std::optional<Part>& part) {
    if (part) {
        object.put(key, out(*part));
    }
}

void put_some(JsonOut& object, std::string_view key, const std::string& text);
void put_extra(JsonOut& object, const Extra& extra);

} // namespace throwline::plan
