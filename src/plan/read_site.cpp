#include "plan/calendar_text.h"
#include "plan/object_reader.h"
#include "plan/read_parts.h"

namespace throwline::plan {

namespace {

constexpr AngleRange kLatitudes{Angle::degrees(-90), Angle::degrees(90)};
constexpr AngleRange kLongitudes{Angle::degrees(-180), Angle::degrees(180)};

void read_time(Reading& reading, const Value& value, ClockTime& into) {
    const auto time =
        value.is(catalogue::JsonKind::string) ? clock_time_of(value.node->text) : std::nullopt;
    if (!time) {
        reading.expected(value, "a time of day such as \"09:00\", from 00:00 to 24:00");
        return;
    }
    into = *time;
}

void read_hours(Reading& reading, const Value& value, std::optional<ShootingWindow>& into) {
    if (!value.is(catalogue::JsonKind::array) || value.node->items.size() != 2) {
        reading.expected(value, "two times of day such as [\"09:00\", \"13:00\"]");
        return;
    }
    ShootingWindow window;
    read_time(reading, value.item(0), window.from);
    read_time(reading, value.item(1), window.to);
    if (!reading.is_spoilt(value) && window.from == window.to) {
        reading.wrong(value, "hours begin and end at the same time; give the later time second");
    }
    into = window;
}

void read_date(Reading& reading, const Value& value, std::string& into) {
    if (!value.is(catalogue::JsonKind::string) || !is_calendar_date(value.node->text)) {
        reading.expected(value, "a date of the calendar, year-month-day, such as \"2026-03-14\"");
        return;
    }
    into = value.node->text;
}

void read_utc_offset(Reading& reading, const Value& value, std::optional<int>& into) {
    into = value.is(catalogue::JsonKind::string) ? utc_offset_of(value.node->text) : std::nullopt;
    if (!into) {
        reading.expected(value, "the clock's lead over UTC such as \"+01:00\", -12:00 to +14:00");
    }
}

} // namespace

void read_value(Reading& reading, const Value& value, Site& site) {
    const ObjectReader object{reading, value, kSiteKeys};
    object.read("place", site.place);
    object.read("north", site.north, kAnyTurn);
    object.read("latitude", site.latitude, kLatitudes);
    object.read("longitude", site.longitude, kLongitudes);
    if (const auto date = object.find("date")) {
        read_date(reading, *date, site.date);
    }
    if (const auto hours = object.find("hours")) {
        read_hours(reading, *hours, site.hours);
    }
    if (const auto offset = object.find("utc_offset")) {
        read_utc_offset(reading, *offset, site.utc_offset_minutes);
    }
    object.read("notes", site.notes);
    object.read("extra", site.extra);
    if (object.has("latitude") != object.has("longitude")) {
        reading.wrong(value, "latitude and longitude are given both or not at all");
    }
}

} // namespace throwline::plan
