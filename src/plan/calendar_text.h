#pragma once

#include "plan/site.h"

#include <optional>
#include <string>
#include <string_view>

/// Dates and times of day as plan files write them (ISO 8601, extended format).
namespace throwline::plan {

/// Whether a text is a date of the Gregorian calendar from 1900 to 2199: "2026-03-14".
bool is_calendar_date(std::string_view text);

/// "09:00"; "24:00" is midnight at the end of the day. Nothing when it is no time of day.
std::optional<ClockTime> clock_time_of(std::string_view text);
std::string text_of(ClockTime time);

/// "+05:30", "-03:00" as minutes ahead of UTC; -12:00 to +14:00. Nothing when it is no such offset.
std::optional<int> utc_offset_of(std::string_view text);
std::string utc_offset_text(int minutes);

} // namespace throwline::plan
