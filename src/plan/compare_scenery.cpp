#include "plan/compare_parts.h"

#include "base/vec.h"

namespace throwline::plan {

namespace {

std::string kind_text(const SceneryShape& shape) {
    struct Words {
        std::string operator()(const FlatRun&) const { return "run of flats"; }
        std::string operator()(const StockPiece& piece) const { return piece.item; }
        std::string operator()(const BoxPiece&) const { return "box"; }
        std::string operator()(const CylinderPiece&) const { return "cylinder"; }
        std::string operator()(const PrismPiece&) const { return "solid with an outline"; }
        std::string operator()(const Riser&) const { return "platform"; }
        std::string operator()(const Drape&) const { return "drape"; }
    };
    return std::visit(Words{}, shape);
}

template <class Box>
std::vector<Vec2> outline_of(const Box& box) {
    return rectangle(box.at, box.width.m(), box.depth.m(), box.turn.rad());
}

/// Outline or line on the floor; the middle alone of a stock piece, whose size is in the catalogue.
std::vector<Vec2> place_of(const SceneryShape& shape) {
    struct Place {
        std::vector<Vec2> operator()(const FlatRun& run) const {
            return {run.from, run.from + unit_at(run.heading.rad()) * run.total_width().m()};
        }
        std::vector<Vec2> operator()(const StockPiece& piece) const { return {piece.at}; }
        std::vector<Vec2> operator()(const BoxPiece& box) const { return outline_of(box); }
        std::vector<Vec2> operator()(const Riser& riser) const { return outline_of(riser); }
        std::vector<Vec2> operator()(const CylinderPiece& piece) const {
            return rectangle(piece.at, piece.diameter.m(), piece.diameter.m(), 0.0);
        }
        std::vector<Vec2> operator()(const PrismPiece& prism) const { return prism.outline; }
        std::vector<Vec2> operator()(const Drape& drape) const { return drape.along; }
    };
    return std::visit(Place{}, shape);
}

/// Compares two shapes of one kind.
struct ShapeComparison {
    DifferenceLedger& ledger;
    const Subject& subject;
    FieldChanges& fields;

    void moved(const Vec2& before, const Vec2& now) const {
        ledger.moved(subject, std::span{&before, 1}, std::span{&now, 1});
    }
    void operator()(const FlatRun& old, const FlatRun& now) const {
        const auto& [from, heading, widths, height, thickness] = now;
        moved(old.from, from);
        ledger.turned(subject, old.heading, heading);
        fields.lengths("widths of flats", old.widths, widths);
        fields.length("height", old.height, height);
        fields.length("thickness", old.thickness, thickness);
    }
    void operator()(const StockPiece& old, const StockPiece& now) const {
        const auto& [item, at, turn] = now;
        moved(old.at, at);
        ledger.turned(subject, old.turn, turn);
        fields.name("item", old.item, item);
    }
    void operator()(const CylinderPiece& old, const CylinderPiece& now) const {
        const auto& [at, diameter, height] = now;
        moved(old.at, at);
        fields.length("diameter", old.diameter, diameter);
        fields.length("height", old.height, height);
    }
    void operator()(const PrismPiece& old, const PrismPiece& now) const {
        const auto& [outline, height] = now;
        ledger.moved(subject, old.outline, outline, "has another outline");
        fields.length("height", old.height, height);
    }
    void operator()(const Drape& old, const Drape& now) const {
        const auto& [along, height] = now;
        ledger.moved(subject, old.along, along, "hangs along another line");
        fields.length("height", old.height, height);
    }
    void operator()(const BoxPiece& old, const BoxPiece& now) const { box(old, now); }
    void operator()(const Riser& old, const Riser& now) const { box(old, now); }

    /// A box or a platform.
    template <class Box>
    void box(const Box& old, const Box& now) const {
        const auto& [at, width, depth, height, turn] = now;
        moved(old.at, at);
        ledger.turned(subject, old.turn, turn);
        fields.length("width", old.width, width);
        fields.length("depth", old.depth, depth);
        fields.length("height", old.height, height);
    }
};

void compare(DifferenceLedger& ledger, const Scenery& old, const Scenery& now) {
    const auto& [id, shape, elevation, finish, dressed, extra] = now;
    const Subject subject{{ThingKind::scenery, id.name, place_of(old.shape), place_of(shape)},
                          id.name};
    FieldChanges fields = ledger.fields();
    if (old.shape.index() != shape.index()) {
        fields.name("kind", kind_text(old.shape), kind_text(shape));
    } else {
        std::visit(
            [&](const auto& before) {
                using Shape = std::decay_t<decltype(before)>;
                ShapeComparison{ledger, subject, fields}(before, std::get<Shape>(now.shape));
            },
            old.shape);
    }
    ledger.raised(subject, old.elevation, elevation);
    fields.name("finish", old.finish, finish);
    fields.flag(old.dressed, dressed, "a shot may see it now", "no shot may see it now");
    fields.extra(old.extra, extra);
    ledger.changed(subject, fields);
}

} // namespace

void compare_scenery(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    const ThingPairs pairs = paired_by_id(old.scenery, now.scenery);
    each_pair(
        pairs, old.scenery, now.scenery,
        [&](const Scenery& before, const Scenery& after) { compare(ledger, before, after); },
        [&](const Scenery& gone) {
            ledger.removed(
                {{ThingKind::scenery, gone.id.name, place_of(gone.shape), {}}, gone.id.name});
        },
        [&](const Scenery& come, std::size_t) {
            ledger.added(
                {{ThingKind::scenery, come.id.name, {}, place_of(come.shape)}, come.id.name},
                ": " + kind_text(come.shape));
        });
    tell_order(ledger, ThingKind::scenery, pairs, "scenery");
}

} // namespace throwline::plan
