#include "sheet/marks.h"
#include "ui/paint/paint.h"

#include "sheet/sheet_support.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <regex>
#include <sstream>
#include <unistd.h>

namespace throwline::paint {
namespace {

using sheet::Drawing;
using sheet::Ink;
using test::session;

constexpr double kPointsPerMillimetre = 72.0 / 25.4;

/// Lines of 100 mm across and down, lettering with accents, hatches, a dashed circle.
Drawing test_sheet(double width_mm = 420.0, double height_mm = 297.0) {
    sheet::Marks marks;
    marks.emplace_back(sheet::line({30, 40}, {130, 40}, sheet::pen(Ink::built, 0.5)));
    marks.emplace_back(sheet::line({30, 50}, {30, 150}, sheet::pen(Ink::built, 0.5)));
    marks.emplace_back(sheet::outline({{60, 60}, {90, 60}, {90, 80}, {60, 80}},
                                      sheet::pen(Ink::camera, 0.35),
                                      sheet::hatched(Ink::camera, sheet::Hatch::cross)));
    marks.emplace_back(sheet::Circle{{120, 90},
                                     12,
                                     sheet::pen(Ink::lamp, 0.25, sheet::LinePattern::long_dash),
                                     sheet::solid(Ink::lamp, 0.2)});
    marks.emplace_back(sheet::Text{"Große Bühne 1/4 in",
                                   {60, 110},
                                   5.0,
                                   sheet::TextAnchor::start,
                                   0.0,
                                   false,
                                   Ink::lettering});
    Drawing drawing;
    drawing.title = "Check sheet";
    drawing.subject = "Lengths";
    drawing.width_mm = width_mm;
    drawing.height_mm = height_mm;
    drawing.layers.push_back({"all", std::move(marks)});
    return drawing;
}

/// A folder of this test's own, removed at its end.
class Folder {
  public:
    Folder()
        : path_{std::filesystem::temp_directory_path()
                / ("throwline_paint_" + std::to_string(getpid()))} {
        std::filesystem::create_directories(path_);
    }
    ~Folder() { std::filesystem::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::filesystem::path put(const std::string& name, const std::string& bytes) const {
        const auto file = path_ / name;
        std::ofstream{file, std::ios::binary} << bytes;
        return file;
    }
    std::filesystem::path at(const std::string& name) const { return path_ / name; }

  private:
    std::filesystem::path path_;
};

std::string output_of(const std::string& command) {
    std::string text;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        return text;
    }
    std::array<char, 4096> part{};
    for (std::size_t got = 0; (got = fread(part.data(), 1, part.size(), pipe)) > 0;) {
        text.append(part.data(), got);
    }
    pclose(pipe);
    return text;
}

std::vector<double> numbers_in(const std::string& text) {
    std::vector<double> numbers;
    const char* at = text.data();
    const char* end = at + text.size();
    while (at < end) {
        double value = 0.0;
        const auto [next, problem] = std::from_chars(at, end, value);
        if (problem == std::errc{}) {
            numbers.push_back(value);
            at = next;
        } else {
            ++at;
        }
    }
    return numbers;
}

/// Lengths in millimetres of the single strokes that an independent renderer finds in a PDF.
std::vector<double> stroke_lengths_mm(const std::string& svg) {
    std::vector<double> lengths;
    const std::regex stroke{
        R"re(<path [^>]*?d="M ([-0-9.]+) ([-0-9.]+) L ([-0-9.]+) ([-0-9.]+) ?"[^>]*?/>)re"};
    const std::regex matrix{R"re(matrix\(([^)]*)\))re"};
    for (std::sregex_iterator at{svg.begin(), svg.end(), stroke}, end; at != end; ++at) {
        const std::string whole = at->str();
        double scale_x = 1.0;
        double scale_y = 1.0;
        if (std::smatch found; std::regex_search(whole, found, matrix)) {
            const auto values = numbers_in(found[1]);
            scale_x = values.at(0);
            scale_y = values.at(3);
        }
        const auto number = [&](std::size_t group) { return numbers_in((*at)[group]).at(0); };
        const double x = (number(3) - number(1)) * scale_x;
        const double y = (number(4) - number(2)) * scale_y;
        lengths.push_back(std::hypot(x, y) / kPointsPerMillimetre);
    }
    return lengths;
}

TEST(PaintPdf, SameDrawingGivesTheSameBytes) {
    const auto first = rendered_pdf(session(), test_sheet());
    const auto second = rendered_pdf(session(), test_sheet());
    ASSERT_TRUE(first && second);
    EXPECT_EQ(*first, *second);
}

TEST(PaintPdf, HundredMillimetresAreAHundredMillimetres) {
    const Folder folder;
    const auto pdf = folder.put("sheet.pdf", rendered_pdf(session(), test_sheet()).value());
    const std::string svg = output_of("pdftocairo -svg -noshrink -nocenter " + pdf.string() + " -");
    std::vector<double> lengths = stroke_lengths_mm(svg);
    ASSERT_GE(lengths.size(), 2U) << svg.substr(0, 2000);
    const auto near_hundred = std::count_if(lengths.begin(), lengths.end(), [](double length) {
        return std::abs(length - 100.0) < 0.01;
    });
    EXPECT_EQ(near_hundred, 2);
}

TEST(PaintPdf, PageIsAsLargeAsTheSheet) {
    const Folder folder;
    for (const auto& [width_mm, height_mm] : {std::pair{420.0, 297.0}, std::pair{297.0, 420.0},
                                              std::pair{215.9, 279.4}, std::pair{500.3, 311.1}}) {
        const auto pdf = folder.put(
            "sheet.pdf", rendered_pdf(session(), test_sheet(width_mm, height_mm)).value());
        const std::string info = output_of("pdfinfo -box " + pdf.string());
        std::smatch box;
        ASSERT_TRUE(std::regex_search(info, box, std::regex{"MediaBox:([^\n]*)"})) << info;
        const auto sides = numbers_in(box[1]);
        ASSERT_EQ(sides.size(), 4U);
        EXPECT_NEAR((sides[2] - sides[0]) / kPointsPerMillimetre, width_mm, 0.01);
        EXPECT_NEAR((sides[3] - sides[1]) / kPointsPerMillimetre, height_mm, 0.01);
    }
}

TEST(PaintPdf, TextCanBeSearchedAndTheFontIsInside) {
    const Folder folder;
    const auto pdf = folder.put("sheet.pdf", rendered_pdf(session(), test_sheet()).value());
    EXPECT_NE(output_of("pdftotext " + pdf.string() + " -").find("Große Bühne 1/4 in"),
              std::string::npos);
    const std::string fonts = output_of("pdffonts " + pdf.string());
    EXPECT_NE(fonts.find("DejaVuSans"), std::string::npos) << fonts;
    EXPECT_EQ(fonts.find(" no "), fonts.rfind(" no ")) << fonts;
    const std::string info = output_of("pdfinfo " + pdf.string());
    EXPECT_NE(info.find("Check sheet"), std::string::npos);
    EXPECT_NE(info.find("Lengths"), std::string::npos);
}

TEST(PaintPdf, AsksViewersNotToScale) {
    const std::string bytes = rendered_pdf(session(), test_sheet()).value();
    EXPECT_NE(bytes.find("/PrintScaling /None"), std::string::npos);
}

TEST(PaintPdf, SeveralSheetsAreSeveralPages) {
    const Folder folder;
    const std::vector<Drawing> pages{test_sheet(420, 297), test_sheet(210, 297)};
    const auto pdf = folder.put("sheets.pdf", rendered_pdf(session(), pages).value());
    const std::string info = output_of("pdfinfo -f 1 -l 2 -box " + pdf.string());
    EXPECT_NE(info.find("Pages:           2"), std::string::npos) << info;
    EXPECT_NE(info.find("Page    2 size:  595.27"), std::string::npos) << info;
}

TEST(PaintPdf, NoSheetIsAnError) {
    EXPECT_FALSE(rendered_pdf(session(), std::span<const Drawing>{}));
}

TEST(PaintSvg, OneUnitIsOneMillimetre) {
    const std::string svg = rendered_svg(session(), test_sheet()).value();
    EXPECT_NE(svg.find("width=\"420mm\" height=\"297mm\""), std::string::npos)
        << svg.substr(0, 400);
    EXPECT_NE(svg.find("viewBox=\"0 0 420 297\""), std::string::npos);
    EXPECT_NE(svg.find("points=\"30,40 130,40 \""), std::string::npos);
    EXPECT_NE(svg.find("<title>Check sheet</title>"), std::string::npos);
    EXPECT_EQ(svg, rendered_svg(session(), test_sheet()).value());
}

/// Grey values of a picture, from the packaged renderer's plain format.
struct Picture {
    int width = 0;
    int height = 0;
    std::string grey;
    int at(int x, int y) const {
        const int index = y * width + x;
        return static_cast<unsigned char>(grey[static_cast<std::size_t>(index)]);
    }
};

Picture pdf_as_grey(const std::filesystem::path& pdf, const std::filesystem::path& to, int dpi) {
    output_of("pdftoppm -gray -aa no -aaVector no -r " + std::to_string(dpi) + " -singlefile "
              + pdf.string() + " " + to.string());
    std::ifstream file{to.string() + ".pgm", std::ios::binary};
    std::string magic;
    int depth = 0;
    Picture picture;
    file >> magic >> picture.width >> picture.height >> depth;
    file.get();
    std::ostringstream rest;
    rest << file.rdbuf();
    picture.grey = rest.str();
    return picture;
}

TEST(PaintPdf, MeasuresTrueWhenRendered) {
    constexpr int kDpi = 600;
    const Folder folder;
    const auto pdf = folder.put("sheet.pdf", rendered_pdf(session(), test_sheet()).value());
    const Picture picture = pdf_as_grey(pdf, folder.at("sheet"), kDpi);
    ASSERT_GT(picture.width, 0);
    const int row = static_cast<int>(40.0 / 25.4 * kDpi);
    int dark = 0;
    for (int x = 0; x < picture.width; ++x) {
        dark += picture.at(x, row) < 128 ? 1 : 0;
    }
    EXPECT_NEAR(dark * 25.4 / kDpi, 100.0, 0.05);
}

TEST(PaintPng, KnowsItsSizeAndResolution) {
    const std::string png = rendered_png(session(), test_sheet(), 254.0).value();
    ASSERT_EQ(png.substr(1, 3), "PNG");
    const auto number = [&](std::size_t at) {
        std::uint32_t value = 0;
        for (std::size_t i = 0; i < 4; ++i) {
            value = value << 8U | static_cast<unsigned char>(png[at + i]);
        }
        return value;
    };
    EXPECT_EQ(number(16), 4200U);
    EXPECT_EQ(number(20), 2970U);
    const std::size_t physical = png.find("pHYs");
    ASSERT_NE(physical, std::string::npos);
    EXPECT_EQ(number(physical + 4), 10000U);
    EXPECT_EQ(png, rendered_png(session(), test_sheet(), 254.0).value());
}

TEST(PaintPng, RefusesPicturesThatAreTooLarge) {
    EXPECT_FALSE(rendered_png(session(), test_sheet(), 5000.0));
    EXPECT_FALSE(rendered_png(session(), test_sheet(), 0.0));
    EXPECT_FALSE(rendered_png(session(), test_sheet(), -100.0));
}

TEST(FontMeasure, GrowsWithHeightAndText) {
    const sheet::TextMeasure& measure = session().measure();
    const double width_mm = measure.width_mm("camera 1", 2.5, false);
    EXPECT_GT(width_mm, 10.0);
    EXPECT_LT(width_mm, 25.0);
    EXPECT_NEAR(measure.width_mm("camera 1", 5.0, false), 2.0 * width_mm, 1e-9);
    EXPECT_GT(measure.width_mm("camera 1", 2.5, true), width_mm);
}

} // namespace
} // namespace throwline::paint
