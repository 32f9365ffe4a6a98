#include "plan/compare_parts.h"
#include "plan/places.h"

namespace throwline::plan {

namespace {

std::string said(const Lamp& lamp) {
    return fmt::format("{} ({})", with_kind("lamp", lamp.id.name), name_of(lamp.role));
}

std::vector<Vec2> place_of(const Plan& plan, const Lamp& lamp) {
    const std::optional<Vec3> point = lamp_point(plan, lamp);
    return point ? std::vector<Vec2>{floor_of(*point)} : std::vector<Vec2>{};
}

std::string mount_text(const LampMount& mount) {
    struct Words {
        std::string operator()(const GridHang& hang) const { return "grid " + hang.position; }
        std::string operator()(const PipeHang& hang) const {
            return with_kind("pipe", hang.pipe.name);
        }
        std::string operator()(const StandMount&) const { return "a stand"; }
        std::string operator()(const WallMount& mount) const {
            return fmt::format("wall {}", number_of_wall(mount.wall));
        }
        std::string operator()(const PracticalMount&) const { return "a place in the set"; }
    };
    return std::visit(Words{}, mount);
}

/// Compares two mounts of one kind.
struct MountComparison {
    DifferenceLedger& ledger;
    const Subject& subject;
    FieldChanges& fields;

    void moved(const Vec2& before, const Vec2& now) const {
        ledger.moved(subject, std::span{&before, 1}, std::span{&now, 1});
    }
    void from_to(const LampMount& before, const LampMount& now) const {
        ledger.tell(
            Change::moved, subject,
            fmt::format("{} from {} to {}", subject.said, mount_text(before), mount_text(now)));
    }
    void operator()(const GridHang& old, const GridHang& now) const {
        const auto& [position, drop] = now;
        if (old.position != position) {
            from_to(old, now);
        }
        ledger.raised(subject, -old.drop, -drop);
    }
    void operator()(const PipeHang& old, const PipeHang& now) const {
        const auto& [pipe, along, drop] = now;
        if (old.pipe != pipe) {
            from_to(old, now);
        }
        fields.length(fmt::format("along {}", mount_text(now)), old.along, along);
        ledger.raised(subject, -old.drop, -drop);
    }
    void operator()(const StandMount& old, const StandMount& now) const {
        const auto& [at, height, support] = now;
        moved(old.at, at);
        ledger.raised(subject, old.height, height);
        fields.name("stand", old.support, support);
    }
    void operator()(const WallMount& old, const WallMount& now) const {
        const auto& [wall, along, height] = now;
        if (old.wall != wall) {
            from_to(old, now);
        }
        fields.length(fmt::format("along {}", mount_text(now)), old.along, along);
        ledger.raised(subject, old.height, height);
    }
    void operator()(const PracticalMount& old, const PracticalMount& now) const {
        const auto& [at, height] = now;
        moved(old.at, at);
        ledger.raised(subject, old.height, height);
    }
};

void compare_mount(const MountComparison& comparison, const LampMount& before,
                   const LampMount& now) {
    if (before.index() != now.index()) {
        comparison.from_to(before, now);
        return;
    }
    std::visit(
        [&](const auto& old) {
            using Mount = std::decay_t<decltype(old)>;
            comparison(old, std::get<Mount>(now));
        },
        before);
}

void compare_cut(FieldChanges& fields, const BeamCut& old, const BeamCut& now) {
    const auto& [top, bottom, left, right] = now;
    fields.share("cut in at the top", old.top, top);
    fields.share("cut in at the bottom", old.bottom, bottom);
    fields.share("cut in at the left", old.left, left);
    fields.share("cut in at the right", old.right, right);
}

void compare(DifferenceLedger& ledger, const Subject& subject, const Lamp& old, const Lamp& now) {
    const auto& [id, instrument, mount, aim, aim_beat, role, focus, level, beats, filters, cut,
                 circuit, channel, notes, extra] = now;
    FieldChanges fields = ledger.fields();
    compare_mount({ledger, subject, fields}, old.mount, mount);
    fields.name("instrument", old.instrument, instrument);
    compare_aim(ledger, fields, subject, old.aim, aim);
    fields.id("aimed for beat", old.aim_beat, aim_beat);
    fields.choice("role", old.role, role);
    fields.share("focus towards flood", old.focus, focus);
    fields.share("level", old.level, level);
    fields.ids("beats", old.beats, beats);
    fields.list("filters", old.filters, filters);
    compare_cut(fields, old.cut, cut);
    fields.id("circuit", old.circuit, circuit);
    fields.name("channel", old.channel == 0 ? "" : std::to_string(old.channel),
                channel == 0 ? "" : std::to_string(channel));
    fields.notes(old.notes, notes);
    fields.extra(old.extra, extra);
    ledger.changed(subject, fields);
}

std::string summary_of(const Lamp& lamp) {
    return fmt::format(": {}, {}", lamp.instrument, mount_text(lamp.mount));
}

} // namespace

void compare_lamps(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    const ThingPairs pairs = paired_by_id(old.lamps, now.lamps);
    each_pair(
        pairs, old.lamps, now.lamps,
        [&](const Lamp& before, const Lamp& after) {
            const Subject subject{
                {ThingKind::lamp, after.id.name, place_of(old, before), place_of(now, after)},
                said(after)};
            compare(ledger, subject, before, after);
        },
        [&](const Lamp& gone) {
            ledger.removed({{ThingKind::lamp, gone.id.name, place_of(old, gone), {}}, said(gone)},
                           summary_of(gone));
        },
        [&](const Lamp& come, std::size_t) {
            ledger.added({{ThingKind::lamp, come.id.name, {}, place_of(now, come)}, said(come)},
                         summary_of(come));
        });
    tell_order(ledger, ThingKind::lamp, pairs, "lamps");
}

} // namespace throwline::plan
