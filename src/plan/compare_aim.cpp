#include "plan/compare_parts.h"

#include "base/vec.h"

namespace throwline::plan {

namespace {

std::string text_of(const Aim& aim) {
    struct Words {
        std::string operator()(std::monostate) const { return {}; }
        std::string operator()(const ThingName& thing) const { return thing.name; }
        std::string operator()(const Vec3&) const { return "a place"; }
    };
    return std::visit(Words{}, aim);
}

} // namespace

void compare_aim(DifferenceLedger& ledger, FieldChanges& fields, const Subject& subject,
                 const Aim& before, const Aim& now) {
    const auto* from = std::get_if<Vec3>(&before);
    const auto* to = std::get_if<Vec3>(&now);
    if (from == nullptr || to == nullptr) {
        if (before.index() != now.index() && text_of(before) == text_of(now)) {
            fields.say("aimed at another kind of thing");
        }
        fields.name("aim", text_of(before), text_of(now));
        return;
    }
    const Vec2 old_place = floor_of(*from);
    const Vec2 place = floor_of(*to);
    const Subject aim{subject.thing, "the aim of " + subject.said};
    ledger.moved(aim, std::span{&old_place, 1}, std::span{&place, 1});
    ledger.raised(aim, Length::metres(from->z()), Length::metres(to->z()));
}

} // namespace throwline::plan
