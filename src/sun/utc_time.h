#pragma once

#include "base/result.h"

#include <string>
#include <string_view>

namespace throwline::sun {

/// A moment, as seconds since 1970-01-01T00:00:00Z without leap seconds.
struct UtcTime {
    double unix_s = 0.0;

    auto operator<=>(const UtcTime&) const = default;
};

/// Reads ISO 8601 date and time with an offset: "2003-10-17T12:30:30-07:00", "...Z", "+0530";
/// seconds, and a fraction of them, may be left out; a space may stand for the T. Years 1800..2200.
/// Without an offset it is refused: local time alone does not say which moment is meant. Errors
/// give the column.
Result<UtcTime> parse_time(std::string_view text);

/// "2003-10-17T12:30:30-07:00" at an offset from UTC in whole minutes (0 is written Z), to the
/// second.
std::string time_text(UtcTime time, int offset_minutes = 0);

/// Julian Date on the universal time scale.
double julian_date(UtcTime time);
/// 1..366, by the calendar of UTC shifted by the offset.
int day_of_year(UtcTime time, int offset_minutes = 0);

} // namespace throwline::sun
