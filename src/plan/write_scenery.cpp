#include "plan/file_keys.h"
#include "plan/write_parts.h"
#include "plan/write_values.h"

namespace throwline::plan {

namespace {

void put_kind(JsonOut& object, const KeyTable& keys) {
    put(object, "kind", std::string{keys.object});
}

template <class Piece>
void put_sizes(JsonOut& object, const Piece& piece) {
    put(object, "at", piece.at);
    put(object, "width", piece.width);
    put(object, "depth", piece.depth);
    put(object, "height", piece.height);
    put_unless(object, "turn", piece.turn, Angle{});
}

void put_shape(JsonOut& object, const FlatRun& run) {
    const FlatRun usual;
    put_kind(object, kFlatRunKeys);
    put(object, "from", run.from);
    put(object, "heading", run.heading);
    put(object, "widths", run.widths);
    put(object, "height", run.height);
    put_unless(object, "thickness", run.thickness, usual.thickness);
}

void put_shape(JsonOut& object, const StockPiece& piece) {
    put(object, "item", piece.item);
    put(object, "at", piece.at);
    put_unless(object, "turn", piece.turn, Angle{});
}

void put_shape(JsonOut& object, const BoxPiece& box) {
    put_kind(object, kBoxKeys);
    put_sizes(object, box);
}

void put_shape(JsonOut& object, const CylinderPiece& cylinder) {
    put_kind(object, kCylinderKeys);
    put(object, "at", cylinder.at);
    put(object, "diameter", cylinder.diameter);
    put(object, "height", cylinder.height);
}

void put_shape(JsonOut& object, const PrismPiece& prism) {
    put_kind(object, kPrismKeys);
    put(object, "outline", prism.outline);
    put(object, "height", prism.height);
}

void put_shape(JsonOut& object, const Riser& riser) {
    put_kind(object, kRiserKeys);
    put_sizes(object, riser);
}

void put_shape(JsonOut& object, const Drape& drape) {
    put_kind(object, kDrapeKeys);
    put(object, "along", drape.along);
    put(object, "height", drape.height);
}

} // namespace

JsonOut out(const Scenery& scenery) {
    const Scenery usual;
    JsonOut object = JsonOut::object();
    put(object, "id", scenery.id);
    std::visit([&](const auto& shape) { put_shape(object, shape); }, scenery.shape);
    put_unless(object, "elevation", scenery.elevation, usual.elevation);
    put_some(object, "finish", scenery.finish);
    put_unless(object, "dressed", scenery.dressed, usual.dressed);
    put_extra(object, scenery.extra);
    return object;
}

} // namespace throwline::plan
