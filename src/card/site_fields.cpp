#include "card/site_fields.h"

#include "card/card_kinds.h"
#include "card/fields.h"
#include "plan/calendar_text.h"

#include <cmath>

namespace throwline::card {

namespace {

constexpr const char* kOpen = "open";

/// Empty, or `open`: nothing is known yet.
bool is_open(const std::string& text) {
    return trimmed(text).empty() || says(text, kOpen);
}

Field date_field(const Parts<plan::Plan>& plan) {
    Field made = field(
        plan, {"date", "date"}, FieldKind::date,
        [](const plan::Plan& part) {
            return part.site.date.empty() ? std::string{kOpen} : part.site.date;
        },
        [](plan::Plan& part, const std::string& text, const edit::Context&) {
            if (!is_open(text) && !plan::is_calendar_date(trimmed(text))) {
                return in_quotes(trimmed(text))
                       + " is no date from 1900 to 2199; write it as 2026-03-14";
            }
            part.site.date = is_open(text) ? std::string{} : trimmed(text);
            return std::string{};
        });
    made.hint = "2026-03-14; empty: open";
    return made;
}

Field hours_field(const Parts<plan::Plan>& plan) {
    Field made = field(
        plan, {"hours", "shooting hours"}, FieldKind::clock,
        [](const plan::Plan& part) {
            const auto& hours = part.site.hours;
            return hours ? plan::text_of(hours->from) + " to " + plan::text_of(hours->to)
                         : std::string{kOpen};
        },
        [](plan::Plan& part, const std::string& text, const edit::Context&) {
            if (is_open(text)) {
                part.site.hours.reset();
                return std::string{};
            }
            const std::size_t to = std::min(text.find(" to "), text.size());
            const auto first = plan::clock_time_of(trimmed(text.substr(0, to)));
            const auto last =
                to < text.size() ? plan::clock_time_of(trimmed(text.substr(to + 4))) : std::nullopt;
            if (!first || !last) {
                return in_quotes(trimmed(text)) + " are no hours; write them as 09:00 to 17:30";
            }
            part.site.hours = plan::ShootingWindow{*first, *last};
            return std::string{};
        });
    made.hint = "09:00 to 17:30; empty: open";
    return made;
}

Field offset_field(const Parts<plan::Plan>& plan) {
    Field made = field(
        plan, {"utc_offset", "clock"}, FieldKind::clock,
        [](const plan::Plan& part) {
            return part.site.utc_offset_minutes
                       ? plan::utc_offset_text(*part.site.utc_offset_minutes)
                       : std::string{kOpen};
        },
        [](plan::Plan& part, const std::string& text, const edit::Context&) {
            const auto minutes = plan::utc_offset_of(trimmed(text));
            if (!is_open(text) && !minutes) {
                return in_quotes(trimmed(text))
                       + " is no difference from UTC, -12:00 to +14:00; write it as +01:00";
            }
            part.site.utc_offset_minutes = is_open(text) ? std::nullopt : minutes;
            return std::string{};
        });
    made.hint = "ahead of UTC: +01:00; empty: open";
    return made;
}

/// Latitude and longitude are known both or neither: the other begins at 0.
void keep_both(plan::Site& site, bool known) {
    if (known) {
        site.latitude = site.latitude.value_or(Angle{});
        site.longitude = site.longitude.value_or(Angle{});
    } else {
        site.latitude.reset();
        site.longitude.reset();
    }
}

Field degrees_field(const Parts<plan::Plan>& plan, FieldName name, double most_deg,
                    std::optional<Angle> plan::Site::* part) {
    Field made = field(
        plan, std::move(name), FieldKind::angle,
        [part](const plan::Plan& all) {
            const auto& angle = all.site.*part;
            return angle ? shortest(std::round(angle->deg() * 1e6) / 1e6) + "°"
                         : std::string{kOpen};
        },
        [part, most_deg](plan::Plan& all, const std::string& text, const edit::Context&) {
            std::string fault;
            if (is_open(text)) {
                keep_both(all.site, false);
                return fault;
            }
            const auto angle = read_angle(text, fault);
            if (angle && std::abs(angle->deg()) > most_deg) {
                return fmt::format("give degrees from -{} to {}", shortest(most_deg),
                                   shortest(most_deg));
            }
            if (angle) {
                keep_both(all.site, true);
                all.site.*part = *angle;
            }
            return fault;
        });
    made.hint = fmt::format("degrees from -{} to {}, north and east above 0; empty: open",
                            shortest(most_deg), shortest(most_deg));
    return made;
}

Parts<plan::Underlay> underlay_part(const edit::Context& context) {
    return parts_of<plan::Underlay>(context, "the underlay",
                                    std::vector{locator<plan::Underlay>([](auto& plan) {
                                        return plan.underlay ? &*plan.underlay : nullptr;
                                    })});
}

/// Pixels of the picture: right, down.
Field pixel_field(const Parts<plan::Underlay>& underlay, FieldName name,
                  Vec2 plan::Underlay::* pixel) {
    Field made = field(
        underlay, std::move(name), FieldKind::text,
        [pixel](const plan::Underlay& part) {
            return shortest((part.*pixel).x()) + ", " + shortest((part.*pixel).y());
        },
        [pixel](plan::Underlay& part, const std::string& text, const edit::Context&) {
            const std::vector<std::string> parts = parts_between(text, ',');
            std::string fault = "give how many pixels right and down, as 120, 340";
            if (parts.size() != 2) {
                return fault;
            }
            const auto right = read_number(parts[0], -1e6, 1e6, fault);
            const auto down = right ? read_number(parts[1], -1e6, 1e6, fault) : std::nullopt;
            if (!down) {
                return fault;
            }
            part.*pixel = Vec2{*right, *down};
            return std::string{};
        });
    made.hint = "pixels right and down from the top left corner";
    return made;
}

} // namespace

void site_sentences(Card& card, const Parts<plan::Plan>& plan) {
    Field north =
        angle_field(plan, {"north", "north"}, [](auto& part) -> auto& { return part.site.north; });
    north.hint = "degrees, clockwise from up the page";
    heading(card, "Site");
    say(card,
        {"At ",
         text_field(plan, {"place", "place"}, [](auto& part) -> auto& { return part.site.place; }),
         ", on ", date_field(plan), ", ", hours_field(plan), " with the clock at ",
         offset_field(plan), "."});
    say(card,
        {"North ", std::move(north), " clockwise from up the page; latitude ",
         degrees_field(plan, {"latitude", "latitude"}, 90, &plan::Site::latitude), ", longitude ",
         degrees_field(plan, {"longitude", "longitude"}, 180, &plan::Site::longitude), "."});
    say(card, {"Notes: ", notes_field(plan, {"site_notes", "site notes"},
                                      [](auto& part) -> auto& { return part.site.notes; })});
}

void underlay_sentences(Card& card, const edit::Context& context) {
    const UnitSystem units = context.plan.units;
    const Parts<plan::Underlay> underlay = underlay_part(context);
    if (underlay.empty()) {
        return;
    }
    const auto place = [&](const char* key, const char* words, Vec2 plan::Underlay::* at) {
        return point_field(underlay, {key, words}, units,
                           [at](auto& part) -> auto& { return part.*at; });
    };
    heading(card, "Scanned plan");
    say(card, {text_field(underlay, {"underlay_file", "file"},
                          [](auto& part) -> auto& { return part.file; }),
               ", shown at ",
               percent_field(underlay, {"underlay_strength", "strength"},
                             [](auto& part) -> auto& { return part.strength; }),
               ", mirrored: ",
               yes_no_field(underlay, {"underlay_mirrored", "mirroring"},
                            [](auto& part) -> auto& { return part.mirrored; }),
               "."});
    say(card,
        {"Its pixel ", pixel_field(underlay, {"pixel_a", "first pixel"}, &plan::Underlay::pixel_a),
         " lies at ", place("at_a", "first place", &plan::Underlay::at_a), ", ",
         pixel_field(underlay, {"pixel_b", "second pixel"}, &plan::Underlay::pixel_b), " at ",
         place("at_b", "second place", &plan::Underlay::at_b), "."});
}

} // namespace throwline::card
