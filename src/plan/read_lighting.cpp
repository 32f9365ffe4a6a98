#include "plan/object_reader.h"
#include "plan/read_parts.h"

#include <algorithm>

namespace throwline::plan {

namespace {

constexpr WholeRange kChannels{0, 100'000};
constexpr WholeRange kWalls{1, static_cast<int>(kMostItems)};

/// The keys that say how a lamp is held; a lamp has exactly one of them.
const std::vector<std::string> kMounts{"hang", "pipe", "stand", "wall", "practical"};

/// Keys that only mean something beside some of the mounts.
struct Companion {
    std::string_view key;
    std::vector<std::string> mounts;
    std::vector<std::string> needed_by;
};
const std::vector<Companion> kCompanions{
    {"along", {"pipe", "wall"}, {"pipe", "wall"}},
    {"drop", {"hang", "pipe"}, {}},
    {"height", {"stand", "wall", "practical"}, {"stand", "wall", "practical"}},
    {"support", {"stand"}, {}},
};

bool is_among(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

/// The one mount that is given; empty after reporting none or several.
std::string mount_of(Reading& reading, const ObjectReader& object) {
    std::vector<std::string> given;
    for (const std::string& mount : kMounts) {
        if (object.has(mount)) {
            given.push_back(mount);
        }
    }
    if (given.size() == 1) {
        return given.front();
    }
    if (object.value().is(catalogue::JsonKind::object)) {
        reading.wrong(object.value(),
                      fmt::format("a lamp is held in one way, by one of {}; found {}",
                                  listed(kMounts), given.empty() ? "none" : listed(given)));
    }
    return {};
}

void check_companions(Reading& reading, const ObjectReader& object, const std::string& mount) {
    for (const Companion& companion : kCompanions) {
        const auto found = object.find(companion.key);
        if (found && !is_among(companion.mounts, mount)) {
            reading.wrong(*found, fmt::format("\"{}\" goes with {}, not with \"{}\"", companion.key,
                                              listed(companion.mounts), mount));
        }
        if (!found && is_among(companion.needed_by, mount)) {
            reading.wrong(object.value(),
                          fmt::format("a lamp with \"{}\" needs \"{}\"", mount, companion.key));
        }
    }
}

void read_mount(const ObjectReader& object, GridHang& hang) {
    object.read_name("hang", hang.position);
    object.read("drop", hang.drop, kNotNegative);
}

void read_mount(const ObjectReader& object, PipeHang& hang) {
    object.read("pipe", hang.pipe);
    object.read("along", hang.along, kNotNegative);
    object.read("drop", hang.drop, kNotNegative);
}

void read_mount(const ObjectReader& object, StandMount& stand) {
    object.read("stand", stand.at);
    object.read("height", stand.height, kSize);
    object.read_name("support", stand.support);
}

void read_mount(const ObjectReader& object, WallMount& mount) {
    int wall = number_of_wall(mount.wall);
    object.read("wall", wall, kWalls);
    mount.wall = index_of_wall(wall);
    object.read("along", mount.along, kNotNegative);
    object.read("height", mount.height, kSize);
}

void read_mount(const ObjectReader& object, PracticalMount& mount) {
    object.read("practical", mount.at);
    object.read("height", mount.height, kNotNegative);
}

template <class Mount>
LampMount mount_from(const ObjectReader& object) {
    Mount mount;
    read_mount(object, mount);
    return mount;
}

void read_mounting(Reading& reading, const ObjectReader& object, LampMount& into) {
    const std::string mount = mount_of(reading, object);
    if (mount.empty()) {
        return;
    }
    check_companions(reading, object, mount);
    if (mount == "hang") {
        into = mount_from<GridHang>(object);
    } else if (mount == "pipe") {
        into = mount_from<PipeHang>(object);
    } else if (mount == "stand") {
        into = mount_from<StandMount>(object);
    } else if (mount == "wall") {
        into = mount_from<WallMount>(object);
    } else {
        into = mount_from<PracticalMount>(object);
    }
}

} // namespace

void read_value(Reading& reading, const Value& value, Lamp& lamp) {
    const ObjectReader object{reading, value, kLampKeys};
    object.read("id", lamp.id);
    object.read_name("instrument", lamp.instrument);
    read_mounting(reading, object, lamp.mount);
    object.read("aim", lamp.aim);
    object.read("aim_beat", lamp.aim_beat);
    object.read("beats", lamp.beats);
    object.read("role", lamp.role, std::string_view{"lamp role"});
    object.read("focus", lamp.focus, kShare);
    object.read("level", lamp.level, kShare);
    object.read("filters", lamp.filters);
    object.read("cut", lamp.cut);
    object.read("circuit", lamp.circuit);
    object.read("channel", lamp.channel, kChannels);
    object.read("notes", lamp.notes);
    object.read("extra", lamp.extra);
}

void read_value(Reading& reading, const Value& value, BeamCut& cut) {
    const ObjectReader object{reading, value, kBeamCutKeys};
    object.read("top", cut.top, kShare);
    object.read("bottom", cut.bottom, kShare);
    object.read("left", cut.left, kShare);
    object.read("right", cut.right, kShare);
}

} // namespace throwline::plan
