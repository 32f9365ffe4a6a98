#include "plan/write_parts.h"
#include "plan/write_values.h"

namespace throwline::plan {

JsonOut out(const Survey& survey) {
    const Survey usual;
    JsonOut object = JsonOut::object();
    put(object, "corners", survey.corners);
    put_unless(object, "clockwise", survey.clockwise, usual.clockwise);
    put_some(object, "square_corners", survey.square_corners);
    put_unless(object, "squareness", survey.squareness, usual.squareness);
    put_some(object, "readings", survey.readings);
    put_some(object, "chains", survey.chains);
    put_some(object, "points", survey.points);
    put_some(object, "things", survey.things);
    put_some(object, "heights", survey.heights);
    put_some(object, "outlets", survey.outlets);
    put_some(object, "first_wall_bearing", survey.first_wall_bearing);
    put_unless(object, "precision", survey.precision, usual.precision);
    put_unless(object, "precision_per_metre_mm", survey.precision_per_metre_mm,
               usual.precision_per_metre_mm);
    put_some(object, "notes", survey.notes);
    put_extra(object, survey.extra);
    return object;
}

JsonOut out(const TapeReading& tape) {
    JsonOut object = JsonOut::object();
    put(object, "from", tape.from);
    put(object, "to", tape.to);
    put(object, "length", tape.length);
    put_some(object, "note", tape.note);
    return object;
}

JsonOut out(const Chain& chain) {
    const Chain usual;
    JsonOut object = JsonOut::object();
    put(object, "from", chain.from);
    put(object, "to", chain.to);
    put(object, "stretches", chain.stretches);
    put_unless(object, "to_the_end", chain.to_the_end, usual.to_the_end);
    return object;
}

JsonOut out(const Stretch& stretch) {
    const Stretch usual;
    JsonOut object = JsonOut::object();
    put_some(object, "name", stretch.name);
    put_unless(object, "kind", stretch.kind, usual.kind);
    put(object, "width", stretch.width);
    put_unless(object, "depth", stretch.depth, usual.depth);
    put_unless(object, "height", stretch.height, usual.height);
    put_unless(object, "sill", stretch.sill, usual.sill);
    return object;
}

JsonOut out(const FloorPoint& point) {
    JsonOut object = JsonOut::object();
    put(object, "name", point.name);
    put_unless(object, "outside", point.outside, false);
    return object;
}

JsonOut out(const FloorThing& thing) {
    const FloorThing usual;
    JsonOut object = JsonOut::object();
    put(object, "name", thing.name);
    put(object, "points", thing.points);
    put_unless(object, "diameter", thing.diameter, usual.diameter);
    put_unless(object, "height", thing.height, usual.height);
    return object;
}

JsonOut out(const HeightReading& height) {
    JsonOut object = JsonOut::object();
    put_some(object, "at", height.at);
    put(object, "height", height.height);
    return object;
}

JsonOut out(const OutletReading& outlet) {
    const OutletReading usual;
    JsonOut object = JsonOut::object();
    put(object, "circuit", outlet.circuit);
    put(object, "from", outlet.from);
    put(object, "to", outlet.to);
    put(object, "along", outlet.along);
    put_unless(object, "height", outlet.height, usual.height);
    return object;
}

JsonOut out(const SiteNote& note) {
    if (note.kind == SiteNoteKind::other) {
        return out(note.text);
    }
    JsonOut object = JsonOut::object();
    put(object, "kind", note.kind);
    put(object, "text", note.text);
    return object;
}

} // namespace throwline::plan
