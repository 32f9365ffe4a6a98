#include "plan/object_reader.h"
#include "plan/read_parts.h"

#include "base/length_text.h"
#include "plan/shutter_text.h"

namespace throwline::plan {

namespace {

constexpr NumberRange kSpeeds_iso{1.0, 10'000'000.0};
constexpr NumberRange kExposures_s{0.0, 60.0, true};
constexpr NumberRange kStops{0.5, 128.0};
constexpr LengthRange kFocals{Length::millimetres(1), Length::metres(5)};
constexpr LengthRange kPoles{Length{}, Length::metres(20), true};

void read_shutter(Reading& reading, const Value& value, double& exposure_s) {
    if (!value.is(catalogue::JsonKind::string)) {
        read_value(reading, value, exposure_s, kExposures_s);
        return;
    }
    const std::optional<double> time_s = exposure_of(value.node->text);
    if (!time_s || *time_s > kExposures_s.most) {
        reading.expected(value, "a shutter time such as \"1/50\", or a number of seconds up to 60");
        return;
    }
    exposure_s = *time_s;
}

/// A focal length given as a bare number is mostly meant in millimetres: say how to write it.
void read_focal(Reading& reading, const Value& value, std::optional<Length>& focal) {
    if (value.is(catalogue::JsonKind::number) && value.node->number > kFocals.most.m()) {
        const std::string number = described(*value.node);
        reading.wrong(value, fmt::format("{} is a focal length of {} metres; write \"{}mm\" for "
                                         "millimetres",
                                         number, number, number));
        return;
    }
    read_value(reading, value, focal, kFocals);
}

void read_picture(Reading& reading, const ObjectReader& object, Shot& shot) {
    object.read("aim", shot.aim);
    if (const auto focal = object.find("focal")) {
        read_focal(reading, *focal, shot.focal);
    }
    object.read("stop", shot.stop, kStops);
    object.read("focus", shot.focus, kSize);
    object.read("extender", shot.extender);
    object.read("subjects", shot.subjects);
    object.read("size", shot.size, std::string_view{"shot size"});
    object.read("composition", shot.composition);
}

} // namespace

void read_value(Reading& reading, const Value& value, Camera& camera) {
    const ObjectReader object{reading, value, kCameraKeys};
    object.read("id", camera.id);
    object.read_name("sensor", camera.sensor);
    object.read_name("lens", camera.lens);
    object.read_name("support", camera.support);
    object.read("eye_height", camera.eye_height, kSize);
    object.read("iso", camera.iso, kSpeeds_iso);
    if (const auto shutter = object.find("shutter")) {
        read_shutter(reading, *shutter, camera.exposure_s);
    }
    object.read("home", camera.home);
    object.read("extra", camera.extra);
}

void read_value(Reading& reading, const Value& value, Shot& shot) {
    const ObjectReader object{reading, value, kShotKeys};
    object.read("id", shot.id);
    object.read("beats", shot.beats);
    object.read("camera", shot.camera);
    object.read("at", shot.at);
    object.read("height", shot.height, kSize);
    read_picture(reading, object, shot);
    object.read("notes", shot.notes);
    object.read("moves", shot.moves);
    object.read("cuts_to", shot.cuts_to);
    object.read("extra", shot.extra);
    const auto beats = object.find("beats");
    if (beats && shot.beats.empty() && !reading.is_spoilt(*beats)) {
        reading.wrong(*beats, "a shot is taken in at least one beat");
    }
}

void read_value(Reading& reading, const Value& value, Boom& boom) {
    const ObjectReader object{reading, value, kBoomKeys};
    object.read("id", boom.id);
    object.read("operator", boom.operator_at);
    object.read("pole", boom.pole, kPoles);
    object.read("microphone", boom.microphone);
    object.read("height", boom.height, kSize);
    object.read("beats", boom.beats);
    object.read("extra", boom.extra);
}

} // namespace throwline::plan
