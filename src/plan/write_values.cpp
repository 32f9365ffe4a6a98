#include "plan/write_values.h"

#include "base/length_text.h"
#include "plan/json_text.h"

#include <string_view>

namespace throwline::plan {

JsonOut out(bool value) {
    return JsonOut::leaf(value ? "true" : "false");
}

JsonOut out(int value) {
    return JsonOut::leaf(std::to_string(value));
}

JsonOut out(double value) {
    return JsonOut::leaf(value == 0.0 ? "0" : shortest(value));
}

JsonOut out(const std::string& text) {
    return JsonOut::leaf(json_string(text));
}

JsonOut out(Length length) {
    return out(length.m());
}

JsonOut out(Angle angle) {
    const std::string text = exact_angle(angle);
    constexpr std::string_view kDegrees = "deg";
    return text.ends_with(kDegrees) ? JsonOut::leaf(text.substr(0, text.size() - kDegrees.size()))
                                    : out(text);
}

JsonOut out(const Vec2& point) {
    return JsonOut::array({out(point.x()), out(point.y())});
}

JsonOut out(const Vec3& point) {
    return JsonOut::array({out(point.x()), out(point.y()), out(point.z())});
}

JsonOut out(const Extra& extra) {
    return JsonOut::leaf(extra.json);
}

JsonOut out(const Facing& facing) {
    if (const auto* thing = std::get_if<ThingName>(&facing)) {
        return out(thing->name);
    }
    if (const auto* point = std::get_if<Vec2>(&facing)) {
        return out(*point);
    }
    return out(std::get<Angle>(facing));
}

JsonOut out(const Aim& aim) {
    if (const auto* thing = std::get_if<ThingName>(&aim)) {
        return out(thing->name);
    }
    const auto* point = std::get_if<Vec3>(&aim);
    return point != nullptr ? out(*point) : JsonOut::leaf("null");
}

JsonOut focal_out(Length focal) {
    const std::string text = shortest(focal.mm()) + "mm";
    const Result<Length> read = parse_length(text);
    return read && *read == focal ? out(text) : out(focal);
}

void put_some(JsonOut& object, std::string_view key, const std::string& text) {
    if (!text.empty()) {
        object.put(key, out(text));
    }
}

void put_extra(JsonOut& object, const Extra& extra) {
    if (!extra.json.empty()) {
        object.put("extra", out(extra));
    }
}

} // namespace throwline::plan
