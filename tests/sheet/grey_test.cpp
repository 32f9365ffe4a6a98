#include "sheet/marks.h"
#include "sheet/png_picture.h"
#include "sheet/sheet_support.h"

#include <array>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::analysed;
using test::floor_plan_of;
using test::full_plan;
using test::PngPicture;
using test::session;

constexpr double kDotsPerInch = 300.0;

/// Everything that means something, so all but paper and the ground that is drawn to be lost.
constexpr std::array kMeanings{Ink::built,   Ink::standing, Ink::camera,    Ink::lamp,
                               Ink::people,  Ink::sound,    Ink::power,     Ink::error,
                               Ink::caution, Ink::note,     Ink::lettering, Ink::dimension};

/// A line of a mark without its tint; nothing when it has no line of that ink.
std::optional<Mark> line_of(Mark mark, Ink ink) {
    const auto bare = [&](auto& shape) -> std::optional<Mark> {
        shape.fill = Fill{};
        return shape.pen.ink == ink && shape.pen.width_mm > 0.0 ? std::optional<Mark>{shape}
                                                                : std::nullopt;
    };
    if (auto* path = std::get_if<Path>(&mark)) {
        return bare(*path);
    }
    if (auto* circle = std::get_if<Circle>(&mark)) {
        return bare(*circle);
    }
    return std::nullopt;
}

/// The drawing with nothing on it but the lines of one ink.
Drawing lines_alone(const Drawing& drawing, Ink ink) {
    Drawing alone = drawing;
    for (Layer& layer : alone.layers) {
        Marks kept;
        for (const Mark& mark : layer.marks) {
            if (auto line = line_of(mark, ink)) {
                kept.push_back(*std::move(line));
            }
        }
        layer.marks = std::move(kept);
    }
    return alone;
}

struct Copied {
    /// Pixels that are not white, and those that a copy at half luma leaves black.
    int inked = 0;
    int black = 0;
};

/// Luma of ITU-R BT.601.
double luma_at(const PngPicture& picture, int x, int y) {
    const std::uint8_t* rgb = picture.at(x, y);
    return 0.299 * rgb[0] + 0.587 * rgb[1] + 0.114 * rgb[2];
}

Copied copied(const Drawing& drawing) {
    const auto png = paint::rendered_png(session(), drawing, kDotsPerInch);
    EXPECT_TRUE(png);
    const PngPicture picture = test::png_picture(*png);
    Copied counts;
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) {
            const double luma = luma_at(picture, x, y);
            counts.inked += luma < 250.0 ? 1 : 0;
            counts.black += luma < 127.5 ? 1 : 0;
        }
    }
    return counts;
}

/// A floor plan on which everything is that a floor plan can show.
Drawing whole_floor_plan() {
    SheetOptions options;
    options.paper = "A3";
    checks::Analysis analysis = analysed(full_plan());
    const auto drawing = floor_plan_of(analysis, options, session().measure());
    EXPECT_TRUE(drawing);
    return *drawing;
}

TEST(GreyCopy, KeepsTheLinesOfEveryMeaning) {
    // Thin lines have a soft edge on both sides, so that not all of a line comes out black.
    constexpr double kLeastShare = 0.3;
    const Drawing drawing = whole_floor_plan();
    for (const Ink ink : kMeanings) {
        const Copied counts = copied(lines_alone(drawing, ink));
        EXPECT_GT(counts.inked, 50) << name_of(ink);
        EXPECT_GT(counts.black, kLeastShare * counts.inked) << name_of(ink);
    }
}

TEST(GreyCopy, KeepsEveryLineThatIsNotGround) {
    for (const Layer& layer : whole_floor_plan().layers) {
        for (const Mark& mark : layer.marks) {
            const auto* path = std::get_if<Path>(&mark);
            if (path == nullptr || !(path->pen.width_mm > 0.0) || path->pen.ink == Ink::ground) {
                continue;
            }
            // Weaker lines would be lost; what matters less is thinner or dotted instead.
            EXPECT_EQ(path->pen.strength, 1.0) << name_of(path->pen.ink) << " in " << layer.name;
        }
    }
}

TEST(GreyCopy, LosesTheGroundAltogether) {
    const Copied counts = copied(lines_alone(whole_floor_plan(), Ink::ground));
    EXPECT_GT(counts.inked, 1000);
    EXPECT_EQ(counts.black, 0);
}

} // namespace
} // namespace throwline::sheet
