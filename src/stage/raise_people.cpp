#include "stage/raising.h"

namespace throwline::stage {

namespace {

/// Stature of operators: between the means of men and women of ANSUR II.
constexpr Length kCrewStature = Length::metres(1.72);

} // namespace

void raise_people(Raising& raising) {
    const auto marks = plan::marks_at(raising.moment.plan, raising.moment.beat);
    for (const plan::Person& person : raising.moment.plan.people) {
        const auto mark = marks.find(person.id);
        if (mark == marks.end()) {
            continue;
        }
        const bool is_cast = person.kind == plan::PersonKind::cast;
        const int owner =
            raising.owner(is_cast ? OwnerKind::cast : OwnerKind::crew, person.id.name);
        Body body = body_on_mark(raising.moment, person, mark->second);
        body.figure.owner = owner;
        for (FigurePart& part : body.parts) {
            raising.add(owner, part.part, std::move(part.mesh), {kPersonReflectance, is_cast});
        }
        raising.stage.figures.push_back(std::move(body.figure));
    }
}

Body standing_crew(const Moment& moment, const Vec2& at, Angle facing) {
    plan::Person person;
    person.kind = plan::PersonKind::crew;
    person.stature = kCrewStature;
    plan::Mark mark;
    mark.at = at;
    mark.faces = facing;
    return body_on_mark(moment, person, mark);
}

} // namespace throwline::stage
