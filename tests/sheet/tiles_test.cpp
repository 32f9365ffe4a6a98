#include "sheet/tiles.h"

#include "sheet/marks.h"
#include "sheet/plan_frame.h"
#include "sheet/png_picture.h"
#include "sheet/sheet_support.h"
#include "sheet/written_sheet.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::session;

constexpr double kPixelsPerMillimetre = 4.0;
constexpr double kDotsPerInch = 25.4 * kPixelsPerMillimetre;

SheetOptions tile_options(const std::string& paper, const std::string& scale,
                          double overlap_mm = 10.0) {
    SheetOptions options;
    options.paper = paper;
    options.scale = scale;
    options.tile_overlap = Length::millimetres(overlap_mm);
    options.file_hash = "0badcafe";
    return options;
}

Drawing whole_drawing(const SheetOptions& options) {
    static const checks::Analysis analysis = test::analysed(test::full_plan());
    return test::floor_plan_of(analysis, options, session().measure()).value();
}

/// Where a tile's piece begins on the whole drawing, millimetres.
Vec2 piece_corner(const TileGrid& grid, std::size_t index) {
    const auto columns = static_cast<std::size_t>(grid.columns);
    return {static_cast<double>(index % columns) * (grid.piece_width_mm() - grid.overlap_mm),
            static_cast<double>(index / columns) * (grid.piece_height_mm() - grid.overlap_mm)};
}

int pixels(double length_mm) {
    return static_cast<int>(std::lround(length_mm * kPixelsPerMillimetre));
}

test::PngPicture picture_of(const Drawing& drawing) {
    return test::png_picture(paint::rendered_png(session(), drawing, kDotsPerInch).value());
}

/// How many pixels of a tile's piece differ from those of the whole by more than some levels of
/// 255.
int different_pixels(const test::PngPicture& whole, const test::PngPicture& tile,
                     const TileGrid& grid, std::size_t index, int levels = 0) {
    const Vec2 corner = piece_corner(grid, index);
    const int margin = pixels(grid.margin_mm);
    int different = 0;
    for (int y = 0; y < pixels(grid.piece_height_mm()); ++y) {
        for (int x = 0; x < pixels(grid.piece_width_mm()); ++x) {
            const std::uint8_t* a = whole.at(pixels(corner.x()) + x, pixels(corner.y()) + y);
            const std::uint8_t* b = tile.at(margin + x, margin + y);
            const bool same = std::equal(a, a + 3, b, [levels](int of_whole, int of_tile) {
                return std::abs(of_whole - of_tile) <= levels;
            });
            different += same ? 0 : 1;
        }
    }
    return different;
}

TEST(Tiles, PutBackTogetherTheyAreTheDrawingPixelForPixel) {
    for (const auto& [paper, scale] : {std::pair{"A4", "1:50"}, std::pair{"A3", "1:20"}}) {
        const Drawing whole = whole_drawing(tile_options(paper, scale));
        ASSERT_TRUE(whole.tiles) << paper;
        const test::PngPicture picture = picture_of(whole);
        const std::vector<Drawing> tiles = tiles_of(whole, session().measure());
        ASSERT_EQ(tiles.size(), static_cast<std::size_t>(whole.tiles->columns * whole.tiles->rows));
        for (std::size_t i = 0; i < tiles.size(); ++i) {
            EXPECT_EQ(different_pixels(picture, picture_of(tiles[i]), *whole.tiles, i), 0)
                << paper << " " << scale << " tile " << i;
        }
    }
}

/// A scan of stripes, beneath the plan and turned.
std::shared_ptr<const Pixels> striped() {
    auto pixels = std::make_shared<Pixels>();
    pixels->width = 300;
    pixels->height = 200;
    for (int i = 0; i < pixels->width * pixels->height; ++i) {
        const auto grey = static_cast<std::uint8_t>(i % 300 / 10 % 2 == 0 ? 90 : 230);
        pixels->rgb.insert(pixels->rgb.end(), {grey, grey, 255});
    }
    return pixels;
}

// The painter steps through a picture from where each row of it begins on the paper, and rounds.
TEST(Tiles, ShowTheirPartsOfThePictureBeneath) {
    constexpr int kRounding_levels = 2;
    plan::Plan plan = test::small_plan();
    plan.underlay =
        plan::Underlay{"scan.png", {20, 180}, {280, 20}, {0.5, 0.5}, {4.5, 3.5}, 0.6, false};
    SheetOptions options = tile_options("A4", "1:20");
    options.underlay = striped();
    const Drawing whole =
        test::floor_plan_of(test::analysed(plan), options, session().measure()).value();
    ASSERT_TRUE(whole.tiles);
    ASSERT_EQ(whole.layers.front().name, "underlay");
    const test::PngPicture picture = picture_of(whole);
    const std::vector<Drawing> tiles = tiles_of(whole, session().measure());
    for (std::size_t i = 0; i < tiles.size(); ++i) {
        EXPECT_EQ(
            different_pixels(picture, picture_of(tiles[i]), *whole.tiles, i, kRounding_levels), 0)
            << i;
    }
}

bool holds(const Box& box, const Vec2& point) {
    return box.inset(0.01).contains(point);
}

TEST(Tiles, EveryLineOfTheDrawingIsOnItsTileWhereItBelongs) {
    const Drawing whole = whole_drawing(tile_options("A3", "1:20"));
    const TileGrid& grid = *whole.tiles;
    const auto strokes =
        test::sheets_of_pdf(paint::rendered_pdf(session(), whole).value()).at(0).strokes;
    const std::vector<Drawing> tiles = tiles_of(whole, session().measure());
    const auto pages = test::sheets_of_pdf(paint::rendered_pdf(session(), tiles).value());
    ASSERT_EQ(pages.size(), tiles.size());
    double worst_mm = 0.0;
    std::size_t found = 0;
    for (std::size_t i = 0; i < tiles.size(); ++i) {
        const Vec2 corner = piece_corner(grid, i);
        const Vec2 shift = Vec2::Constant(grid.margin_mm) - corner;
        const Box piece{corner.x(), corner.y(), grid.piece_width_mm(), grid.piece_height_mm()};
        for (std::size_t k = 0; k < strokes.size(); k += 7) {
            const test::Stroke& stroke = strokes[k];
            if (holds(piece, stroke.from) && holds(piece, stroke.to)) {
                const Vec2 from = stroke.from + shift;
                const Vec2 to = stroke.to + shift;
                const test::Stroke twin = test::nearest_stroke(pages[i].strokes, from, to);
                worst_mm = std::max({worst_mm, (twin.from - from).norm(), (twin.to - to).norm()});
                ++found;
            }
        }
    }
    EXPECT_GT(found, strokes.size() / 10);
    EXPECT_LT(worst_mm, 0.002);
}

/// What a text without accents takes up; turned ones read upwards.
Box box_of(const Text& text) {
    const double width_mm = session().measure().width_mm(text.text, text.height_mm, text.bold);
    const double down_mm = kDescent * text.height_mm;
    if (text.turn_rad != 0.0) {
        return {text.at.x() - text.height_mm, text.at.y() - width_mm, text.height_mm + down_mm,
                width_mm};
    }
    return {text.at.x(), text.at.y() - text.height_mm, width_mm, text.height_mm + down_mm};
}

/// What lies over the piece of a tile: points of marks and boxes of lettering inside of it.
int marks_over_piece(const Layer& margins, const TileGrid& grid) {
    const Box inside =
        Box{grid.margin_mm, grid.margin_mm, grid.piece_width_mm(), grid.piece_height_mm()}.inset(
            0.01);
    int over = 0;
    for (const Mark& mark : margins.marks) {
        if (const auto* path = std::get_if<Path>(&mark)) {
            over += static_cast<int>(
                std::count_if(path->points.begin(), path->points.end(),
                              [&](const Vec2& point) { return inside.contains(point); }));
        } else if (const auto* text = std::get_if<Text>(&mark)) {
            over += box_of(*text).overlaps(inside) ? 1 : 0;
        }
    }
    return over;
}

std::vector<Text> texts_of(const Layer& layer) {
    std::vector<Text> texts;
    for (const Mark& mark : layer.marks) {
        if (const auto* text = std::get_if<Text>(&mark)) {
            texts.push_back(*text);
        }
    }
    return texts;
}

bool has_text(const Layer& layer, const std::string& words) {
    const std::vector<Text> texts = texts_of(layer);
    return std::any_of(texts.begin(), texts.end(), [&](const Text& text) {
        return text.text.find(words) != std::string::npos;
    });
}

TEST(Tiles, MarginsTellWhatIsNeededAndStayOffTheDrawing) {
    for (const char* paper : {"A4", "A3", "letter", "arch C"}) {
        const Drawing whole = whole_drawing(tile_options(paper, "1:20"));
        ASSERT_TRUE(whole.tiles) << paper;
        const std::vector<Drawing> tiles = tiles_of(whole, session().measure());
        for (std::size_t i = 0; i < tiles.size(); ++i) {
            const Layer& margins = tiles[i].layers.back();
            ASSERT_EQ(margins.name, "tile");
            EXPECT_EQ(marks_over_piece(margins, *whole.tiles), 0) << paper << i;
            const auto columns = static_cast<std::size_t>(whole.tiles->columns);
            EXPECT_TRUE(has_text(
                margins, tile_code(static_cast<int>(i / columns), static_cast<int>(i % columns))));
            for (const char* words : {"100 mm", "up", "1:20", "0badcafe"}) {
                EXPECT_TRUE(has_text(margins, words)) << paper << i << words;
            }
            for (const Text& text : texts_of(margins)) {
                EXPECT_GE(text.height_mm, 2.5);
                const Box sheet{0.0, 0.0, tiles[i].width_mm, tiles[i].height_mm};
                EXPECT_TRUE(sheet.inset(4.5).holds(box_of(text))) << paper << " " << text.text;
            }
        }
    }
}

TEST(Tiles, LetteringInTheMarginsDoesNotMeet) {
    for (const char* paper : {"A4", "A3", "legal"}) {
        const Drawing whole = whole_drawing(tile_options(paper, "1:20"));
        for (const Drawing& tile : tiles_of(whole, session().measure())) {
            const std::vector<Text> texts = texts_of(tile.layers.back());
            for (std::size_t a = 0; a < texts.size(); ++a) {
                for (std::size_t b = a + 1; b < texts.size(); ++b) {
                    EXPECT_FALSE(box_of(texts[a]).overlaps(box_of(texts[b])))
                        << texts[a].text << " / " << texts[b].text;
                }
            }
        }
    }
}

TEST(Tiles, NeighboursShowTheOverlapTwice) {
    const Drawing whole = whole_drawing(tile_options("A3", "1:20", 15.0));
    const TileGrid& grid = *whole.tiles;
    ASSERT_GT(grid.columns, 1);
    EXPECT_NEAR(whole.width_mm, grid.whole_width_mm(), 1e-9);
    const double left_ends = piece_corner(grid, 0).x() + grid.piece_width_mm();
    EXPECT_NEAR(left_ends - piece_corner(grid, 1).x(), 15.0, 1e-9);
}

TEST(Tiles, DrawingThatFitsIsNotCut) {
    const Drawing whole = whole_drawing(tile_options("A0", "1:50"));
    EXPECT_FALSE(whole.tiles);
    EXPECT_EQ(tiles_of(whole, session().measure()).size(), 1U);
}

TEST(Tiles, PaperTooSmallForTilesIsRefused) {
    const checks::Analysis analysis = test::analysed(test::small_plan());
    SheetOptions options = tile_options("100 x 120 mm", "1:10");
    EXPECT_FALSE(test::floor_plan_of(analysis, options, session().measure()));
}

TEST(Tiles, CodesGoRowByRow) {
    EXPECT_EQ(tile_code(0, 0), "A1");
    EXPECT_EQ(tile_code(1, 1), "B2");
    EXPECT_EQ(tile_code(11, 11), "L12");
}

} // namespace
} // namespace throwline::sheet
