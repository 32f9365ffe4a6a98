#include "plan/compare_parts.h"

namespace throwline::plan {

namespace {

std::string said(const Shot& shot) {
    return with_kind("shot", shot.id.name);
}

std::string stop_or_none(const std::optional<double>& stop) {
    return stop ? stop_text(*stop) : std::string{};
}

std::string size_text(const std::optional<ShotSize>& size) {
    return size ? std::string{name_of(*size)} : std::string{};
}

/// Where the camera stands, and where it goes.
std::vector<Vec2> track_of(const Shot& shot) {
    std::vector<Vec2> points{shot.at};
    points.insert(points.end(), shot.moves.begin(), shot.moves.end());
    return points;
}

void compare_track(DifferenceLedger& ledger, const Subject& subject, const Shot& old,
                   const Shot& now) {
    const std::string camera = with_kind("camera", now.camera.name);
    const Subject place{subject.thing, fmt::format("{} in {}", camera, subject.said)};
    if (shifted_alike(track_of(old), track_of(now))) {
        ledger.moved(place, track_of(old), track_of(now));
        return;
    }
    ledger.moved(place, std::span{&old.at, 1}, std::span{&now.at, 1});
    ledger.moved({subject.thing, fmt::format("the move of {} in {}", camera, subject.said)},
                 old.moves, now.moves, "goes another way");
}

void compare_stop(FieldChanges& fields, const std::optional<double>& old,
                  const std::optional<double>& now) {
    if (stop_or_none(old) != stop_or_none(now)) {
        fields.name("stop", stop_or_none(old), stop_or_none(now));
    } else {
        fields.number("stop", old, now);
    }
}

void compare(DifferenceLedger& ledger, const Shot& old, const Shot& now) {
    const auto& [id, beats, camera, at, height, aim, focal, stop, focus, extender, subjects, size,
                 composition, notes, moves, cuts_to, extra] = now;
    const Subject subject{{ThingKind::shot, id.name, track_of(old), track_of(now)}, said(now)};
    compare_track(ledger, subject, old, now);
    FieldChanges fields = ledger.fields();
    compare_aim(ledger, fields, subject, old.aim, aim);
    fields.ids("beats", old.beats, beats);
    fields.id("camera", old.camera, camera);
    fields.focal("lens", old.focal, focal);
    fields.flag(old.extender, extender, "extender in now", "extender out now");
    compare_stop(fields, old.stop, stop);
    fields.length("focused at", old.focus, focus);
    fields.length("lens height", old.height, height);
    fields.ids("subjects", old.subjects, subjects);
    fields.name("size", size_text(old.size), size_text(size));
    fields.text("composition", old.composition, composition);
    fields.notes(old.notes, notes);
    fields.ids("cuts to", old.cuts_to, cuts_to);
    fields.extra(old.extra, extra);
    ledger.changed(subject, fields);
}

/// "shot 2C: camera 3, close-up of Mara and Teo"
std::string summary_of(const Shot& shot) {
    std::vector<std::string> names;
    for (const Id<Person>& subject : shot.subjects) {
        names.push_back(subject.name);
    }
    std::string what = size_text(shot.size);
    if (!names.empty()) {
        what += fmt::format("{}{}", what.empty() ? "" : " of ", listed(names));
    }
    return fmt::format(": {}{}{}", with_kind("camera", shot.camera.name), what.empty() ? "" : ", ",
                       what);
}

} // namespace

void compare_shots(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    const ThingPairs pairs = paired_by_id(old.shots, now.shots);
    each_pair(
        pairs, old.shots, now.shots,
        [&](const Shot& before, const Shot& after) { compare(ledger, before, after); },
        [&](const Shot& gone) {
            ledger.removed({{ThingKind::shot, gone.id.name, track_of(gone), {}}, said(gone)},
                           summary_of(gone));
        },
        [&](const Shot& come, std::size_t) {
            ledger.added({{ThingKind::shot, come.id.name, {}, track_of(come)}, said(come)},
                         summary_of(come));
        });
    tell_running_order(ledger, ThingKind::shot, pairs, now.shots, "running order");
}

} // namespace throwline::plan
