#include "plan/shutter_text.h"
#include "plan/write_parts.h"
#include "plan/write_values.h"

namespace throwline::plan {

namespace {

JsonOut shutter_out(double exposure_s) {
    const std::optional<std::string> text = shutter_text(exposure_s);
    return text ? out(*text) : out(exposure_s);
}

JsonOut marks_out(const Beat& beat) {
    JsonOut marks = JsonOut::object();
    for (const auto& [person, change] : beat.marks) {
        const auto* mark = std::get_if<Mark>(&change);
        marks.put(person.name, mark != nullptr ? out(*mark) : out(std::string{"off"}));
    }
    return marks;
}

void put_picture(JsonOut& object, const Shot& shot) {
    put_unless(object, "aim", shot.aim, Aim{});
    if (shot.focal) {
        object.put("focal", focal_out(*shot.focal));
    }
    put_some(object, "stop", shot.stop);
    put_some(object, "focus", shot.focus);
    put_unless(object, "extender", shot.extender, false);
    put_some(object, "subjects", shot.subjects);
    put_some(object, "size", shot.size);
    put_some(object, "composition", shot.composition);
}

} // namespace

JsonOut out(const Person& person) {
    const Person usual;
    JsonOut object = JsonOut::object();
    put(object, "id", person.id);
    put_unless(object, "stature", person.stature, usual.stature);
    put_unless(object, "kind", person.kind, usual.kind);
    put_extra(object, person.extra);
    return object;
}

JsonOut out(const Beat& beat) {
    JsonOut object = JsonOut::object();
    put(object, "id", beat.id);
    put_some(object, "name", beat.name);
    if (!beat.marks.empty()) {
        object.put("marks", marks_out(beat));
    }
    put_extra(object, beat.extra);
    return object;
}

JsonOut out(const Mark& mark) {
    const Mark usual;
    JsonOut object = JsonOut::object();
    put(object, "at", mark.at);
    put_unless(object, "faces", mark.faces, usual.faces);
    put_unless(object, "pose", mark.pose, usual.pose);
    put_some(object, "elevation", mark.elevation);
    put_some(object, "seat_height", mark.seat_height);
    put_some(object, "path", mark.path);
    return object;
}

JsonOut out(const Camera& camera) {
    const Camera usual;
    JsonOut object = JsonOut::object();
    put(object, "id", camera.id);
    put(object, "sensor", camera.sensor);
    put(object, "lens", camera.lens);
    put_some(object, "support", camera.support);
    put_unless(object, "eye_height", camera.eye_height, usual.eye_height);
    put_unless(object, "iso", camera.iso, usual.iso);
    if (camera.exposure_s != usual.exposure_s) {
        object.put("shutter", shutter_out(camera.exposure_s));
    }
    put_some(object, "home", camera.home);
    put_extra(object, camera.extra);
    return object;
}

JsonOut out(const Shot& shot) {
    JsonOut object = JsonOut::object();
    put(object, "id", shot.id);
    put(object, "beats", shot.beats);
    put(object, "camera", shot.camera);
    put(object, "at", shot.at);
    put_some(object, "height", shot.height);
    put_picture(object, shot);
    put_some(object, "notes", shot.notes);
    put_some(object, "moves", shot.moves);
    put_some(object, "cuts_to", shot.cuts_to);
    put_extra(object, shot.extra);
    return object;
}

JsonOut out(const Boom& boom) {
    const Boom usual;
    JsonOut object = JsonOut::object();
    put(object, "id", boom.id);
    put(object, "operator", boom.operator_at);
    put_unless(object, "pole", boom.pole, usual.pole);
    put(object, "microphone", boom.microphone);
    put_unless(object, "height", boom.height, usual.height);
    put_some(object, "beats", boom.beats);
    put_extra(object, boom.extra);
    return object;
}

} // namespace throwline::plan
