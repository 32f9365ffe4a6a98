#include "plan/field_changes.h"

#include "base/mass.h"
#include "base/words.h"
#include "plan/difference_words.h"
#include "plan/thing_pairs.h"

#include <cmath>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace throwline::plan {

void FieldChanges::from_to(std::string_view what, const Told& before, const Told& now) {
    const bool finer = before.shown == now.shown;
    const std::string& from = finer ? before.exact : before.shown;
    const std::string& to = finer ? now.exact : now.shown;
    if (from == to) {
        say(fmt::format("{} is not quite the same", what));
    } else if (from.empty()) {
        say(fmt::format("{} now {}", what, to));
    } else if (to.empty()) {
        say(fmt::format("{} no longer {}", what, from));
    } else {
        say(fmt::format("{} from {} to {}", what, from, to));
    }
}

FieldChanges::Told FieldChanges::told(const std::optional<Length>& length) const {
    return length ? Told{shown(*length, units_), exact_metres(*length)} : Told{};
}

void FieldChanges::name(std::string_view what, const std::string& before, const std::string& now) {
    if (before != now) {
        from_to(what, {before, before}, {now, now});
    }
}

void FieldChanges::text(std::string_view what, const std::string& before, const std::string& now) {
    const auto said = [](const std::string& text) {
        return text.empty() ? text : short_text(text);
    };
    if (before == now) {
        return;
    }
    if (said(before) == said(now)) {
        say(fmt::format("{} reworded", what));
    } else {
        from_to(what, {said(before), {}}, {said(now), {}});
    }
}

void FieldChanges::length(std::string_view what, const std::optional<Length>& before,
                          const std::optional<Length>& now) {
    if (before != now) {
        from_to(what, told(before), told(now));
    }
}

void FieldChanges::focal(std::string_view what, const std::optional<Length>& before,
                         const std::optional<Length>& now) {
    const auto said = [](const std::optional<Length>& focal) {
        return focal ? Told{focal_text(*focal), exact_metres(*focal)} : Told{};
    };
    if (before != now) {
        from_to(what, said(before), said(now));
    }
}

void FieldChanges::share(std::string_view what, double before, double now) {
    if (before != now) {
        from_to(what, {share_text(before), shortest(before)}, {share_text(now), shortest(now)});
    }
}

void FieldChanges::number(std::string_view what, const std::optional<double>& before,
                          const std::optional<double>& now, std::string_view unit) {
    const auto said = [&](const std::optional<double>& number) {
        const std::string tail = unit.empty() ? "" : fmt::format(" {}", unit);
        return number ? Told{shortest(std::round(*number * 100.0) / 100.0) + tail,
                             shortest(*number) + tail}
                      : Told{};
    };
    if (before != now) {
        from_to(what, said(before), said(now));
    }
}

void FieldChanges::mass(std::string_view what, const std::optional<double>& before_kg,
                        const std::optional<double>& now_kg) {
    const bool imperial = units_ == UnitSystem::imperial;
    const auto said = [&](const std::optional<double>& kg) {
        if (!kg) {
            return Told{};
        }
        const double shown =
            imperial ? std::round(*kg * kPoundsPerKilogram) : std::round(*kg * 100.0) / 100.0;
        return Told{shortest(shown) + (imperial ? " lb" : " kg"), shortest(*kg) + " kg"};
    };
    if (before_kg != now_kg) {
        from_to(what, said(before_kg), said(now_kg));
    }
}

void FieldChanges::angle(std::string_view what, const std::optional<Angle>& before,
                         const std::optional<Angle>& now) {
    const auto said = [](const std::optional<Angle>& angle) {
        return angle ? Told{degrees_text(*angle), shortest(angle->deg()) + "°"} : Told{};
    };
    if (before != now) {
        from_to(what, said(before), said(now));
    }
}

void FieldChanges::flag(bool before, bool now, std::string_view when_set,
                        std::string_view when_not) {
    if (before != now) {
        say(std::string{now ? when_set : when_not});
    }
}

void FieldChanges::list(std::string_view what, const std::vector<std::string>& before,
                        const std::vector<std::string>& now) {
    if (before != now) {
        from_to(what, {listed(before), fmt::format("\"{}\"", fmt::join(before, "\", \""))},
                {listed(now), fmt::format("\"{}\"", fmt::join(now, "\", \""))});
    }
}

void FieldChanges::lengths(std::string_view what, const std::vector<Length>& before,
                           const std::vector<Length>& now) {
    const auto said = [&](const std::vector<Length>& lengths) {
        std::vector<std::string> shown;
        std::vector<std::string> exact;
        for (const Length length : lengths) {
            shown.push_back(told(length).shown);
            exact.push_back(told(length).exact);
        }
        return Told{listed(shown), listed(exact)};
    };
    if (before != now) {
        from_to(what, said(before), said(now));
    }
}

void FieldChanges::notes(const std::vector<std::string>& before,
                         const std::vector<std::string>& now) {
    const std::vector<std::string> added = only_in(now, before);
    const std::vector<std::string> removed = only_in(before, now);
    for (const std::string& note : added) {
        say("note added: " + short_text(note));
    }
    for (const std::string& note : removed) {
        say("note removed: " + short_text(note));
    }
    if (before != now && added.empty() && removed.empty()) {
        say("notes in another order");
    }
}

void FieldChanges::extra(const Extra& before, const Extra& now) {
    if (before != now) {
        say("other data kept in the file");
    }
}

} // namespace throwline::plan
