#include "sun/utc_time.h"

#include <chrono>
#include <cmath>
#include <fmt/format.h>
#include <optional>

namespace throwline::sun {

namespace {

constexpr double kDay_s = 86400.0;
constexpr double kUnixEpochJulianDate = 2440587.5;
constexpr int kFirstYear = 1800;
constexpr int kLastYear = 2200;
/// The largest offset in use is +14:00 (from memory: the tz database).
constexpr int kMostOffsetHours = 14;

bool is_digit(char letter) {
    return letter >= '0' && letter <= '9';
}

/// Walks through the text; the first thing that does not fit is kept as the fault.
class TimeReader {
  public:
    explicit TimeReader(std::string_view text) : text_{text} {}

    /// Exactly `count` digits as a number from `least` to `most`.
    int number(const char* what, int count, int least, int most) {
        if (fault_) {
            return least;
        }
        int value = 0;
        for (int i = 0; i < count; ++i) {
            const std::size_t at = at_ + static_cast<std::size_t>(i);
            if (at >= text_.size() || !is_digit(text_[at])) {
                refuse(at, fmt::format("{} needs {} digits", what, count));
                return least;
            }
            value = value * 10 + (text_[at] - '0');
        }
        if (value < least || value > most) {
            refuse(at_, fmt::format("{} is {}; it must be {} to {}", what, value, least, most));
            return least;
        }
        at_ += static_cast<std::size_t>(count);
        return value;
    }

    bool take(char letter) {
        if (fault_ || at_ >= text_.size() || text_[at_] != letter) {
            return false;
        }
        ++at_;
        return true;
    }

    void need(char letter) {
        if (!take(letter)) {
            refuse(at_, fmt::format("expected \"{}\"", letter));
        }
    }

    /// Digits after a decimal point, as a share of one.
    double fraction() {
        double value = 0.0;
        double weight = 0.1;
        if (at_ >= text_.size() || !is_digit(text_[at_])) {
            refuse(at_, "expected digits after the decimal point");
        }
        while (!fault_ && at_ < text_.size() && is_digit(text_[at_])) {
            value += weight * (text_[at_++] - '0');
            weight /= 10.0;
        }
        return value;
    }

    void need_end() {
        if (at_ != text_.size()) {
            refuse(at_, "nothing may follow the offset");
        }
    }

    void refuse(std::size_t at, std::string reason) {
        if (!fault_) {
            Place place;
            place.column = static_cast<int>(at) + 1;
            fault_ = Error{fmt::format("\"{}\" is no time: {}; write it like "
                                       "2003-10-17T12:30:30-07:00",
                                       text_, reason),
                           place};
        }
    }

    std::size_t at() const { return at_; }
    const std::optional<Error>& fault() const { return fault_; }

  private:
    std::string_view text_;
    std::size_t at_ = 0;
    std::optional<Error> fault_;
};

double read_date_s(TimeReader& reader) {
    const int year = reader.number("the year", 4, kFirstYear, kLastYear);
    reader.need('-');
    const int month = reader.number("the month", 2, 1, 12);
    reader.need('-');
    const std::size_t day_at = reader.at();
    const int day = reader.number("the day", 2, 1, 31);
    const std::chrono::year_month_day date{std::chrono::year{year},
                                           std::chrono::month{static_cast<unsigned>(month)},
                                           std::chrono::day{static_cast<unsigned>(day)}};
    if (!date.ok()) {
        reader.refuse(day_at, "the month has no such day");
        return 0.0;
    }
    const std::chrono::sys_days days{date};
    return static_cast<double>(days.time_since_epoch().count()) * kDay_s;
}

double read_clock_s(TimeReader& reader) {
    const int hour = reader.number("the hour", 2, 0, 23);
    reader.need(':');
    const int minute = reader.number("the minute", 2, 0, 59);
    double second = 0.0;
    if (reader.take(':')) {
        second = reader.number("the second", 2, 0, 59);
        if (reader.take('.') || reader.take(',')) {
            second += reader.fraction();
        }
    }
    return hour * 3600.0 + minute * 60.0 + second;
}

double read_offset_s(TimeReader& reader) {
    if (reader.take('Z') || reader.take('z')) {
        return 0.0;
    }
    double sign = 1.0;
    if (reader.take('-')) {
        sign = -1.0;
    } else if (!reader.take('+')) {
        reader.refuse(reader.at(), "expected the offset from UTC, such as Z or +01:00");
    }
    const int hours = reader.number("the offset's hours", 2, 0, kMostOffsetHours);
    reader.take(':');
    const int minutes = reader.number("the offset's minutes", 2, 0, 59);
    return sign * (hours * 3600.0 + minutes * 60.0);
}

struct CivilTime {
    std::chrono::year_month_day date;
    int second_of_day = 0;
};

CivilTime civil(double shifted_unix_s) {
    const double whole_s = std::floor(shifted_unix_s + 0.5);
    const double day = std::floor(whole_s / kDay_s);
    const std::chrono::sys_days days{std::chrono::days{static_cast<int>(day)}};
    return {std::chrono::year_month_day{days}, static_cast<int>(whole_s - day * kDay_s)};
}

std::string offset_text(int offset_minutes) {
    if (offset_minutes == 0) {
        return "Z";
    }
    const int size = offset_minutes < 0 ? -offset_minutes : offset_minutes;
    return fmt::format("{}{:02}:{:02}", offset_minutes < 0 ? '-' : '+', size / 60, size % 60);
}

} // namespace

Result<UtcTime> parse_time(std::string_view text) {
    TimeReader reader(text);
    const double date_s = read_date_s(reader);
    if (!reader.take('T') && !reader.take('t')) {
        if (!reader.take(' ')) {
            reader.refuse(reader.at(), "expected \"T\" between date and time");
        }
    }
    const double clock_s = read_clock_s(reader);
    const double offset_s = read_offset_s(reader);
    reader.need_end();
    if (reader.fault()) {
        return tl::unexpected<Error>{*reader.fault()};
    }
    return UtcTime{date_s + clock_s - offset_s};
}

std::string time_text(UtcTime time, int offset_minutes) {
    const CivilTime local = civil(time.unix_s + offset_minutes * 60.0);
    const int second = local.second_of_day;
    return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}{}", static_cast<int>(local.date.year()),
                       static_cast<unsigned>(local.date.month()),
                       static_cast<unsigned>(local.date.day()), second / 3600, second / 60 % 60,
                       second % 60, offset_text(offset_minutes));
}

double julian_date(UtcTime time) {
    return time.unix_s / kDay_s + kUnixEpochJulianDate;
}

int day_of_year(UtcTime time, int offset_minutes) {
    const CivilTime local = civil(time.unix_s + offset_minutes * 60.0);
    const std::chrono::sys_days first{local.date.year() / std::chrono::January / 1};
    return static_cast<int>((std::chrono::sys_days{local.date} - first).count()) + 1;
}

} // namespace throwline::sun
