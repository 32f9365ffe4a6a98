#include "plan/object_reader.h"
#include "plan/read_parts.h"

#include <algorithm>

namespace throwline::plan {

namespace {

template <class Piece>
void read_sizes(const ObjectReader& object, Piece& piece) {
    object.read("at", piece.at);
    object.read("width", piece.width, kSize);
    object.read("depth", piece.depth, kSize);
    object.read("height", piece.height, kSize);
    object.read("turn", piece.turn, kAnyTurn);
}

void read_shape(const ObjectReader& object, FlatRun& run) {
    object.read("from", run.from);
    object.read("heading", run.heading, kAnyTurn);
    object.read("widths", run.widths, kSize);
    object.read("height", run.height, kSize);
    object.read("thickness", run.thickness, kSize);
}

void read_shape(const ObjectReader& object, StockPiece& piece) {
    object.read_name("item", piece.item);
    object.read("at", piece.at);
    object.read("turn", piece.turn, kAnyTurn);
}

void read_shape(const ObjectReader& object, BoxPiece& box) {
    read_sizes(object, box);
}

void read_shape(const ObjectReader& object, Riser& riser) {
    read_sizes(object, riser);
}

void read_shape(const ObjectReader& object, CylinderPiece& cylinder) {
    object.read("at", cylinder.at);
    object.read("diameter", cylinder.diameter, kSize);
    object.read("height", cylinder.height, kSize);
}

void read_shape(const ObjectReader& object, PrismPiece& prism) {
    object.read("outline", prism.outline);
    object.read("height", prism.height, kSize);
}

void read_shape(const ObjectReader& object, Drape& drape) {
    object.read("along", drape.along);
    object.read("height", drape.height, kSize);
}

template <class Shape>
void read_piece(Reading& reading, const Value& value, const KeyTable& table, Scenery& scenery) {
    const ObjectReader object{reading, value, table};
    object.read("id", scenery.id);
    Shape shape;
    read_shape(object, shape);
    scenery.shape = std::move(shape);
    object.read("elevation", scenery.elevation, kNotNegative);
    object.read("finish", scenery.finish);
    object.read("dressed", scenery.dressed);
    object.read("extra", scenery.extra);
}

/// A kind of scenery as files name it, the keys it has, and its reader.
struct SceneryKind {
    const KeyTable* keys;
    void (*read)(Reading&, const Value&, const KeyTable&, Scenery&);
};

constexpr std::array kKinds{
    SceneryKind{&kFlatRunKeys, read_piece<FlatRun>},
    SceneryKind{&kBoxKeys, read_piece<BoxPiece>},
    SceneryKind{&kCylinderKeys, read_piece<CylinderPiece>},
    SceneryKind{&kPrismKeys, read_piece<PrismPiece>},
    SceneryKind{&kRiserKeys, read_piece<Riser>},
    SceneryKind{&kDrapeKeys, read_piece<Drape>},
};

std::vector<std::string> kind_names() {
    std::vector<std::string> names;
    for (const SceneryKind& kind : kKinds) {
        names.emplace_back(kind.keys->object);
    }
    return names;
}

} // namespace

void read_value(Reading& reading, const Value& value, Scenery& scenery) {
    if (value.member("item")) {
        read_piece<StockPiece>(reading, value, kStockPieceKeys, scenery);
        return;
    }
    const auto named = value.member("kind");
    const std::vector<std::string> names = kind_names();
    if (!named) {
        reading.wrong(value, fmt::format("a piece of scenery is an object with \"kind\" ({}) or, "
                                         "from stock, \"item\"",
                                         listed(names)));
        return;
    }
    const int chosen = read_choice(reading, *named, "kind of scenery", names);
    if (chosen >= 0) {
        const SceneryKind& kind = kKinds[static_cast<std::size_t>(chosen)];
        kind.read(reading, value, *kind.keys, scenery);
    }
}

} // namespace throwline::plan
