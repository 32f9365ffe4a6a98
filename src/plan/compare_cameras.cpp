#include "plan/compare_parts.h"
#include "plan/shutter_text.h"

namespace throwline::plan {

namespace {

std::string said(const Camera& camera) {
    return with_kind("camera", camera.id.name);
}

std::string exposure_text(double exposure_s) {
    return shutter_text(exposure_s).value_or(shortest(exposure_s)) + " s";
}

/// Where it is first seen on the plan: at home, else in its first shot.
std::vector<Vec2> place_of(const Plan& plan, const Camera& camera) {
    if (camera.home) {
        return {*camera.home};
    }
    for (const Shot& shot : plan.shots) {
        if (shot.camera == camera.id) {
            return {shot.at};
        }
    }
    return {};
}

void compare_home(DifferenceLedger& ledger, FieldChanges& fields, const Subject& subject,
                  const Camera& old, const Camera& now) {
    if (old.home && now.home) {
        ledger.moved({subject.thing, "home of " + subject.said}, std::span{&*old.home, 1},
                     std::span{&*now.home, 1});
    } else if (old.home || now.home) {
        fields.say(now.home ? "has a home now" : "has no home now");
    }
}

void compare(DifferenceLedger& ledger, const Subject& subject, const Camera& old,
             const Camera& now) {
    const auto& [id, sensor, lens, support, eye_height, iso, exposure_s, home, extra] = now;
    FieldChanges fields = ledger.fields();
    compare_home(ledger, fields, subject, old, now);
    fields.name("sensor", old.sensor, sensor);
    fields.name("lens", old.lens, lens);
    fields.name("support", old.support, support);
    fields.length("lens height", old.eye_height, eye_height);
    fields.number("ISO", old.iso, iso);
    fields.name("shutter", old.exposure_s == exposure_s ? "" : exposure_text(old.exposure_s),
                old.exposure_s == exposure_s ? "" : exposure_text(exposure_s));
    fields.extra(old.extra, extra);
    ledger.changed(subject, fields);
}

} // namespace

void compare_cameras(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    const ThingPairs pairs = paired_by_id(old.cameras, now.cameras);
    each_pair(
        pairs, old.cameras, now.cameras,
        [&](const Camera& before, const Camera& after) {
            const Subject subject{
                {ThingKind::camera, after.id.name, place_of(old, before), place_of(now, after)},
                said(after)};
            compare(ledger, subject, before, after);
        },
        [&](const Camera& gone) {
            ledger.removed(
                {{ThingKind::camera, gone.id.name, place_of(old, gone), {}}, said(gone)});
        },
        [&](const Camera& come, std::size_t) {
            ledger.added({{ThingKind::camera, come.id.name, {}, place_of(now, come)}, said(come)},
                         come.lens.empty() ? "" : ": " + come.lens);
        });
    tell_order(ledger, ThingKind::camera, pairs, "cameras");
}

} // namespace throwline::plan
