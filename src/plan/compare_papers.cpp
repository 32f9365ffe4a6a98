#include "plan/calendar_text.h"
#include "plan/compare_parts.h"
#include "plan/difference_words.h"

#include <algorithm>
#include <fmt/ranges.h>
#include <set>

namespace throwline::plan {

namespace {

std::string hours_text(const std::optional<ShootingWindow>& hours) {
    return hours ? text_of(hours->from) + "-" + text_of(hours->to) : std::string{};
}

std::string offset_text(const std::optional<int>& minutes) {
    return minutes ? utc_offset_text(*minutes) : std::string{};
}

void compare(DifferenceLedger& ledger, const KitItem& old, const KitItem& now) {
    const auto& [item, count] = now;
    FieldChanges fields = ledger.fields();
    fields.number("count", old.count, count);
    ledger.changed(placeless(ThingKind::kit_item, item, fmt::format("kit, {}", item)), fields);
}

void compare_kit(DifferenceLedger& ledger, const std::vector<KitItem>& old,
                 const std::vector<KitItem>& now) {
    const auto subject = [](const KitItem& item) {
        return placeless(ThingKind::kit_item, item.item,
                         fmt::format("kit: {} {}", item.count, item.item));
    };
    const ThingPairs pairs = paired(old, now, [](const KitItem& item) { return item.item; });
    each_pair(
        pairs, old, now,
        [&](const KitItem& before, const KitItem& after) { compare(ledger, before, after); },
        [&](const KitItem& item) { ledger.removed(subject(item)); },
        [&](const KitItem& item, std::size_t) { ledger.added(subject(item)); });
    tell_order(ledger, ThingKind::kit_item, pairs, "kit");
}

void compare_targets(DifferenceLedger& ledger, const Targets& old, const Targets& now) {
    const auto& [meter_constant, tolerance_stops, ratio, visible_share, way_out_width] = now;
    FieldChanges fields = ledger.fields();
    fields.number("meter constant", old.meter_constant, meter_constant);
    fields.number("exposure tolerance", old.exposure_tolerance_stops, tolerance_stops, "stops");
    fields.number("lighting ratio", old.lighting_ratio, ratio);
    fields.share("share of a subject to be seen", old.visible_share, visible_share);
    fields.length("clear width of ways out", old.way_out_width, way_out_width);
    ledger.changed(placeless(ThingKind::targets, {}, "targets"), fields);
}

/// All that tells which finding is accepted; fields are apart, since any of them may hold any text.
auto key_of(const Acceptance& acceptance) {
    return std::tuple{acceptance.check, acceptance.shot.name, acceptance.things};
}

Subject subject_of(const Acceptance& acceptance) {
    std::vector<std::string> about;
    if (!acceptance.shot.empty()) {
        about.push_back(with_kind("shot", acceptance.shot.name));
    }
    about.insert(about.end(), acceptance.things.begin(), acceptance.things.end());
    return placeless(
        ThingKind::acceptance, acceptance.check,
        fmt::format("accepted finding {}{}", acceptance.check,
                    about.empty() ? "" : fmt::format(" ({})", fmt::join(about, ", "))));
}

void compare_accepted(DifferenceLedger& ledger, const std::vector<Acceptance>& old,
                      const std::vector<Acceptance>& now) {
    const ThingPairs pairs = paired(old, now, key_of);
    each_pair(
        pairs, old, now,
        [&](const Acceptance& before, const Acceptance& after) {
            const auto& [check, shot, things, reason] = after;
            FieldChanges fields = ledger.fields();
            fields.text("reason", before.reason, reason);
            ledger.changed(subject_of(after), fields);
        },
        [&](const Acceptance& gone) { ledger.removed(subject_of(gone)); },
        [&](const Acceptance& come, std::size_t) {
            ledger.added(subject_of(come), ": " + short_text(come.reason));
        });
    tell_order(ledger, ThingKind::acceptance, pairs, "accepted findings");
}

/// Names of a list that another has not, in order.
std::vector<std::string> not_in(const std::vector<std::string>& others,
                                const std::vector<std::string>& names) {
    const std::set<std::string> known{others.begin(), others.end()};
    std::vector<std::string> left;
    std::copy_if(names.begin(), names.end(), std::back_inserter(left),
                 [&](const std::string& name) { return !known.contains(name); });
    return left;
}

/// "2 more things are", "1 thing is no longer"
std::string things_are(std::size_t count, bool more) {
    return fmt::format("{}{} {}{}", count, more ? " more" : "",
                       count == 1 ? "thing is" : "things are", more ? "" : " no longer");
}

/// `held` is "locked" or "hidden".
void compare_held(DifferenceLedger& ledger, std::string_view held,
                  const std::vector<std::string>& old, const std::vector<std::string>& now) {
    const Subject subject = placeless(ThingKind::production, {}, fmt::format("what is {}", held));
    const std::vector<std::string> come = not_in(old, now);
    const std::vector<std::string> gone = not_in(now, old);
    const auto tell = [&](const std::vector<std::string>& names, bool more) {
        if (!names.empty()) {
            ledger.tell(Change::changed, subject,
                        fmt::format("{} {}: {}", things_are(names.size(), more), held,
                                    short_text(fmt::format("{}", fmt::join(names, ", ")))));
        }
    };
    tell(come, true);
    tell(gone, false);
    if (old != now && come.empty() && gone.empty()) {
        ledger.tell(Change::changed, subject, fmt::format("what is {} is in another order", held));
    }
}

void compare_groups(DifferenceLedger& ledger, const std::vector<Group>& old,
                    const std::vector<Group>& now) {
    if (old == now) {
        return;
    }
    const Subject subject = placeless(ThingKind::production, {}, "groups");
    const auto count = [](std::size_t groups) {
        return fmt::format("{} {}", groups, groups == 1 ? "group" : "groups");
    };
    ledger.tell(Change::changed, subject,
                old.size() == now.size()
                    ? "other things are grouped"
                    : fmt::format("{} of things instead of {}", count(now.size()), old.size()));
}

/// Nothing on the set depends on it, so it is told in few words.
void compare_arrangement(DifferenceLedger& ledger, const Arrangement& old, const Arrangement& now) {
    const auto& [groups, locked, hidden] = now;
    compare_held(ledger, "locked", old.locked, locked);
    compare_held(ledger, "hidden", old.hidden, hidden);
    compare_groups(ledger, old.groups, groups);
}

} // namespace

void tell_order(DifferenceLedger& ledger, ThingKind kind, const ThingPairs& pairs,
                std::string_view things) {
    if (!out_of_order(pairs).empty()) {
        const std::string said = fmt::format("the list of {}", things);
        ledger.tell(Change::changed, placeless(kind, {}, said), said + " is in another order");
    }
}

void compare_papers(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    FieldChanges fields = ledger.fields();
    fields.text("title", old.title, now.title);
    fields.choice("units", old.units, now.units);
    fields.extra(old.extra, now.extra);
    ledger.changed(placeless(ThingKind::production, {}, "production"), fields);
    compare_kit(ledger, old.kit, now.kit);
    compare_targets(ledger, old.targets, now.targets);
    compare_accepted(ledger, old.accepted, now.accepted);
    compare_arrangement(ledger, old.arrangement, now.arrangement);
}

void compare_site(DifferenceLedger& ledger, const Site& old, const Site& now) {
    const auto& [place, north, latitude, longitude, date, hours, offset_minutes, notes, extra] =
        now;
    const Subject subject = placeless(ThingKind::site, {}, "site");
    FieldChanges fields = ledger.fields();
    fields.text("place", old.place, place);
    fields.angle("latitude", old.latitude, latitude);
    fields.angle("longitude", old.longitude, longitude);
    fields.name("date", old.date, date);
    fields.name("hours", hours_text(old.hours), hours_text(hours));
    fields.name("clock ahead of UTC", offset_text(old.utc_offset_minutes),
                offset_text(offset_minutes));
    fields.notes(old.notes, notes);
    fields.extra(old.extra, extra);
    ledger.changed(subject, fields);
    // A bearing is clockwise, all other angles anticlockwise.
    ledger.turned({subject.thing, "north on the sheet"}, -old.north, -north);
}

} // namespace throwline::plan
