#include "plan/write_parts.h"
#include "plan/write_values.h"

namespace throwline::plan {

namespace {

void put_mount(JsonOut& object, const GridHang& hang) {
    put(object, "hang", hang.position);
    put_unless(object, "drop", hang.drop, Length{});
}

void put_mount(JsonOut& object, const PipeHang& hang) {
    put(object, "pipe", hang.pipe);
    put(object, "along", hang.along);
    put_unless(object, "drop", hang.drop, Length{});
}

void put_mount(JsonOut& object, const StandMount& stand) {
    put(object, "stand", stand.at);
    put(object, "height", stand.height);
    put_some(object, "support", stand.support);
}

void put_mount(JsonOut& object, const WallMount& mount) {
    put(object, "wall", number_of_wall(mount.wall));
    put(object, "along", mount.along);
    put(object, "height", mount.height);
}

void put_mount(JsonOut& object, const PracticalMount& mount) {
    put(object, "practical", mount.at);
    put(object, "height", mount.height);
}

} // namespace

JsonOut out(const Lamp& lamp) {
    const Lamp usual;
    JsonOut object = JsonOut::object();
    put(object, "id", lamp.id);
    put(object, "instrument", lamp.instrument);
    std::visit([&](const auto& mount) { put_mount(object, mount); }, lamp.mount);
    put_unless(object, "aim", lamp.aim, usual.aim);
    put_unless(object, "aim_beat", lamp.aim_beat, usual.aim_beat);
    put_some(object, "beats", lamp.beats);
    put_unless(object, "role", lamp.role, usual.role);
    put_unless(object, "focus", lamp.focus, usual.focus);
    put_unless(object, "level", lamp.level, usual.level);
    put_some(object, "filters", lamp.filters);
    put_unless(object, "cut", lamp.cut, usual.cut);
    put_unless(object, "circuit", lamp.circuit, usual.circuit);
    put_unless(object, "channel", lamp.channel, usual.channel);
    put_some(object, "notes", lamp.notes);
    put_extra(object, lamp.extra);
    return object;
}

JsonOut out(const BeamCut& cut) {
    const BeamCut usual;
    JsonOut object = JsonOut::object();
    put_unless(object, "top", cut.top, usual.top);
    put_unless(object, "bottom", cut.bottom, usual.bottom);
    put_unless(object, "left", cut.left, usual.left);
    put_unless(object, "right", cut.right, usual.right);
    return object;
}

} // namespace throwline::plan
