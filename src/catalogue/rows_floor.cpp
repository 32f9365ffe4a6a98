#include "catalogue/row_words.h"
#include "catalogue/rows.h"

namespace throwline::catalogue {

namespace {

constexpr Range kSizeM = above_zero_to(50.0);
constexpr Range kMassKg = zero_to(20000.0);
constexpr Range kPaperSideMm = above_zero_to(5000.0);
constexpr Range kRatio = above_zero_to(1e6);

/// A round item gives its diameter as the width and may leave the depth out.
Length depth_from(RowReader& row, const StockItem& item) {
    const double width_m = item.width.m();
    const double depth_m = item.shape == StockShape::round
                               ? row.number_or("depth_m", kSizeM, width_m)
                               : row.number("depth_m", kSizeM);
    row.require(item.shape != StockShape::round || depth_m == width_m, "depth_m",
                "a round item is as deep as it is wide");
    return Length::metres(depth_m);
}

} // namespace

StockItem stock_item_from(RowReader& row) {
    StockItem item;
    item.name = row.text("name");
    item.use = row.choice("use", kUses);
    item.shape = row.choice("shape", kShapes);
    item.width = Length::metres(row.number("width_m", kSizeM));
    item.depth = depth_from(row, item);
    item.height = Length::metres(row.number("height_m", kSizeM));
    item.seat_height = Length::metres(row.number_or("seat_height_m", zero_to(kSizeM.high), 0.0));
    item.clear_under = Length::metres(row.number_or("clear_under_m", zero_to(kSizeM.high), 0.0));
    item.mass_kg = row.number("mass_kg", kMassKg);
    item.source = row.source();
    row.require(item.seat_height <= item.height, "seat_height_m",
                "the seat is higher than the whole item");
    row.require(item.clear_under < item.height, "clear_under_m",
                "the space under the top reaches above the top");
    return item;
}

BodyLandmark landmark_from(RowReader& row) {
    BodyLandmark landmark;
    landmark.name = row.text("name");
    landmark.share_of_stature = row.number("share_of_stature", above_zero_to(1.0));
    landmark.source = row.source();
    return landmark;
}

Paper paper_from(RowReader& row) {
    Paper paper;
    paper.name = row.text("name");
    paper.family = row.choice("family", kPaperFamilies);
    paper.width = Length::millimetres(row.number("width_mm", kPaperSideMm));
    paper.height = Length::millimetres(row.number("height_mm", kPaperSideMm));
    paper.source = row.source();
    row.require(paper.width <= paper.height, "width_mm",
                "papers are entered upright: the width may not exceed the height");
    return paper;
}

DrawingScale scale_from(RowReader& row) {
    DrawingScale scale;
    scale.name = row.text("name");
    scale.system = row.choice("system", kUnitSystems);
    scale.ratio = row.number("ratio", kRatio);
    scale.standard = row.flag_or("standard", true);
    scale.source = row.source();
    return scale;
}

} // namespace throwline::catalogue
