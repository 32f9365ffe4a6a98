#include "plan/compare_parts.h"

namespace throwline::plan {

namespace {

/// Where the two points of the picture stand.
std::vector<Vec2> points_of(const std::optional<Underlay>& underlay) {
    return underlay ? std::vector<Vec2>{underlay->at_a, underlay->at_b} : std::vector<Vec2>{};
}

void compare(DifferenceLedger& ledger, const Subject& subject, const Underlay& old,
             const Underlay& now) {
    const auto& [file, pixel_a, pixel_b, at_a, at_b, strength, mirrored] = now;
    ledger.moved(subject, subject.thing.before, subject.thing.now,
                 "has another size or stands askew");
    FieldChanges fields = ledger.fields();
    fields.text("file", old.file, file);
    if (old.pixel_a != pixel_a || old.pixel_b != pixel_b) {
        fields.say("placed by other points of the picture");
    }
    fields.share("strength", old.strength, strength);
    fields.flag(old.mirrored, mirrored, "flipped left to right now", "no longer flipped");
    ledger.changed(subject, fields);
}

} // namespace

void compare_underlay(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    Subject subject = placeless(ThingKind::underlay, {}, "picture beneath the plan");
    subject.thing.before = points_of(old.underlay);
    subject.thing.now = points_of(now.underlay);
    if (old.underlay && now.underlay) {
        compare(ledger, subject, *old.underlay, *now.underlay);
    } else if (old.underlay) {
        ledger.removed(subject);
    } else if (now.underlay) {
        ledger.added(subject);
    }
}

} // namespace throwline::plan
