#include "plan/object_reader.h"
#include "plan/read_parts.h"

namespace throwline::plan {

namespace {

constexpr double kMostPixels = 1'000'000.0;
constexpr NumberRange kPixels{-kMostPixels, kMostPixels};
constexpr WholeRange kKitCounts{0, 100'000};
constexpr LengthRange kWayOutWidths{Length::metres(0.3), Length::metres(10)};
constexpr NumberRange kMeterConstants{240.0, 400.0};
constexpr NumberRange kTolerances_stops{0.0, 10.0};
constexpr NumberRange kRatios{0.0, 1000.0};

void read_pixel(Reading& reading, const Value& value, Vec2& into) {
    if (!value.is(catalogue::JsonKind::array) || value.node->items.size() != 2) {
        reading.expected(value, "a picture point [right, down] in pixels");
        return;
    }
    read_value(reading, value.item(0), into.x(), kPixels);
    read_value(reading, value.item(1), into.y(), kPixels);
}

void read_names(Reading& reading, const ObjectReader& object, std::string_view key,
                std::vector<std::string>& into) {
    const std::optional<Value> list = object.find(key);
    if (!list || !is_list(reading, *list)) {
        return;
    }
    for (std::size_t i = 0; i < list->node->items.size(); ++i) {
        read_name(reading, list->item(i), into.emplace_back());
    }
}

} // namespace

void read_value(Reading& reading, const Value& value, Underlay& underlay) {
    const ObjectReader object{reading, value, kUnderlayKeys};
    object.read("file", underlay.file);
    if (const auto a = object.find("pixel_a")) {
        read_pixel(reading, *a, underlay.pixel_a);
    }
    if (const auto b = object.find("pixel_b")) {
        read_pixel(reading, *b, underlay.pixel_b);
    }
    object.read("at_a", underlay.at_a);
    object.read("at_b", underlay.at_b);
    object.read("strength", underlay.strength, kShare);
    object.read("mirrored", underlay.mirrored);
    const bool one_point = underlay.pixel_a == underlay.pixel_b || underlay.at_a == underlay.at_b;
    if (!reading.is_spoilt(value) && one_point) {
        reading.wrong(value, "an underlay needs two points that differ, on the picture and on the "
                             "plan");
    }
}

void read_value(Reading& reading, const Value& value, KitItem& item) {
    const ObjectReader object{reading, value, kKitItemKeys};
    object.read_name("item", item.item);
    object.read("count", item.count, kKitCounts);
}

void read_value(Reading& reading, const Value& value, Targets& targets) {
    const ObjectReader object{reading, value, kTargetsKeys};
    object.read("meter_constant", targets.meter_constant, kMeterConstants);
    object.read("exposure_tolerance_stops", targets.exposure_tolerance_stops, kTolerances_stops);
    object.read("lighting_ratio", targets.lighting_ratio, kRatios);
    object.read("visible_share", targets.visible_share, kShare);
    object.read("way_out_width", targets.way_out_width, kWayOutWidths);
    const double ratio = targets.lighting_ratio;
    if (ratio > 0.0 && ratio < 1.0) {
        reading.wrong(value.at("lighting_ratio"),
                      "(key + fill) : fill is never below 1; give 1 or more, or 0 when open");
    }
}

void read_value(Reading& reading, const Value& value, Acceptance& acceptance) {
    const ObjectReader object{reading, value, kAcceptanceKeys};
    object.read_name("check", acceptance.check);
    object.read("shot", acceptance.shot);
    object.read("things", acceptance.things);
    object.read("reason", acceptance.reason);
}

void read_value(Reading& reading, const Value& value, Group& group) {
    const ObjectReader object{reading, value, kGroupKeys};
    read_names(reading, object, "things", group.things);
}

void read_value(Reading& reading, const Value& value, Arrangement& arrangement) {
    const ObjectReader object{reading, value, kArrangementKeys};
    object.read("groups", arrangement.groups);
    read_names(reading, object, "locked", arrangement.locked);
    read_names(reading, object, "hidden", arrangement.hidden);
}

} // namespace throwline::plan
