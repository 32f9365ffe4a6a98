#include "plan/calendar_text.h"

#include <array>
#include <cstdlib>
#include <fmt/format.h>

namespace throwline::plan {

namespace {

constexpr int kMinutesPerHour = 60;
constexpr int kMinutesPerDay = 24 * kMinutesPerHour;

/// The value of a run of digits; -1 when any character is none.
int digits(std::string_view text) {
    int value = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') {
            return -1;
        }
        value = value * 10 + (c - '0');
    }
    return value;
}

bool is_leap(int year) {
    return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

int days_in(int month, int year) {
    constexpr std::array<int, 12> kDays{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return kDays[static_cast<std::size_t>(month - 1)] + (month == 2 && is_leap(year) ? 1 : 0);
}

/// "hh:mm" in minutes; -1 when it is none.
int minutes_of(std::string_view text) {
    if (text.size() != 5 || text[2] != ':') {
        return -1;
    }
    const int hours = digits(text.substr(0, 2));
    const int minutes = digits(text.substr(3, 2));
    if (hours < 0 || minutes < 0 || minutes >= kMinutesPerHour) {
        return -1;
    }
    return hours * kMinutesPerHour + minutes;
}

std::string hours_and_minutes(int minutes) {
    return fmt::format("{:02}:{:02}", minutes / kMinutesPerHour, minutes % kMinutesPerHour);
}

} // namespace

bool is_calendar_date(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
        return false;
    }
    const int year = digits(text.substr(0, 4));
    const int month = digits(text.substr(5, 2));
    const int day = digits(text.substr(8, 2));
    return year >= 1900 && year < 2200 && month >= 1 && month <= 12 && day >= 1
           && day <= days_in(month, year);
}

std::optional<ClockTime> clock_time_of(std::string_view text) {
    const int minutes = minutes_of(text);
    if (minutes < 0 || minutes > kMinutesPerDay) {
        return std::nullopt;
    }
    return ClockTime{minutes};
}

std::string text_of(ClockTime time) {
    return hours_and_minutes(time.minutes);
}

std::optional<int> utc_offset_of(std::string_view text) {
    constexpr int kFarthestWest = -12 * kMinutesPerHour;
    constexpr int kFarthestEast = 14 * kMinutesPerHour;
    if (text.empty() || (text.front() != '+' && text.front() != '-')) {
        return std::nullopt;
    }
    const int minutes = minutes_of(text.substr(1));
    const int ahead = text.front() == '-' ? -minutes : minutes;
    if (minutes < 0 || ahead < kFarthestWest || ahead > kFarthestEast) {
        return std::nullopt;
    }
    return ahead;
}

std::string utc_offset_text(int minutes) {
    return fmt::format("{}{}", minutes < 0 ? "-" : "+", hours_and_minutes(std::abs(minutes)));
}

} // namespace throwline::plan
