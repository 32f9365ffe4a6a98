#include "ui/paint/read_picture.h"

#include "sheet/marks.h"
#include "sheet/sheet_support.h"
#include "ui/paint/paint.h"

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <random>
#include <sys/stat.h>
#include <unistd.h>

namespace throwline::paint {
namespace {

using test::session;

/// A folder of this test's own, removed at its end.
class PictureFolder : public testing::Test {
  protected:
    PictureFolder()
        : folder_{std::filesystem::temp_directory_path()
                  / ("throwline_picture_" + std::to_string(getpid()))} {
        std::filesystem::create_directories(folder_);
        session();
    }
    ~PictureFolder() override { std::filesystem::remove_all(folder_); }

    std::filesystem::path put(const std::string& name, const std::string& bytes) const {
        const auto file = folder_ / name;
        std::ofstream{file, std::ios::binary} << bytes;
        return file;
    }

    /// One sentence that names the file, and no picture.
    void refused(const std::filesystem::path& path, const std::string& part = {}) const {
        const auto picture = read_picture(path);
        ASSERT_FALSE(picture) << path;
        const std::string& message = picture.error().message;
        EXPECT_NE(message.find(path.filename().string().substr(0, 4)), std::string::npos)
            << message;
        EXPECT_NE(message.find(part), std::string::npos) << message;
        EXPECT_EQ(message.find('\n'), std::string::npos) << message;
    }

    std::filesystem::path folder_;
};

/// A square of 20 by 10 mm, dark in its left half.
sheet::Drawing half_dark() {
    sheet::Drawing drawing;
    drawing.width_mm = 20.0;
    drawing.height_mm = 10.0;
    drawing.layers.push_back({"all",
                              {sheet::outline({{0, 0}, {10, 0}, {10, 10}, {0, 10}}, sheet::no_pen(),
                                              sheet::solid(sheet::Ink::built))},
                              Vec2::Zero()});
    return drawing;
}

std::string png_bytes() {
    return rendered_png(session(), half_dark(), 254.0).value();
}

/// The same as a JPEG, made by the packaged tool.
std::string jpeg_bytes(const std::filesystem::path& folder) {
    std::ofstream{folder / "for-jpeg.pdf", std::ios::binary}
        << rendered_pdf(session(), half_dark()).value();
    const std::string command = "pdftoppm -jpeg -r 254 -singlefile "
                                + (folder / "for-jpeg.pdf").string() + " "
                                + (folder / "made").string();
    EXPECT_EQ(std::system(command.c_str()), 0);
    std::ifstream file{folder / "made.jpg", std::ios::binary};
    return {std::istreambuf_iterator<char>{file}, {}};
}

void expect_half_dark(const sheet::Pixels& pixels) {
    const auto red = [&](double x_share) {
        const int x = static_cast<int>(x_share * pixels.width);
        const int index = 3 * (pixels.height / 2 * pixels.width + x);
        return static_cast<int>(pixels.rgb.at(static_cast<std::size_t>(index)));
    };
    EXPECT_LT(red(0.25), 60);
    EXPECT_GT(red(0.75), 240);
    EXPECT_EQ(pixels.rgb.size(), std::size_t{3} * static_cast<std::size_t>(pixels.width)
                                     * static_cast<std::size_t>(pixels.height));
}

TEST_F(PictureFolder, ReadsPngAndJpeg) {
    for (const auto& [name, bytes] :
         {std::pair{"scan.png", png_bytes()}, std::pair{"scan.jpg", jpeg_bytes(folder_)}}) {
        const auto pixels = read_picture(put(name, bytes));
        ASSERT_TRUE(pixels) << pixels.error().message;
        EXPECT_NEAR(pixels->width, 200, 1) << name;
        EXPECT_NEAR(pixels->height, 100, 1) << name;
        expect_half_dark(*pixels);
    }
}

// 20 mm are 157.48 dots at 200 dots per inch.
TEST_F(PictureFolder, ReadsPagesOfAPdf) {
    sheet::Drawing larger = half_dark();
    larger.width_mm = 40.0;
    const std::vector<sheet::Drawing> pages{half_dark(), larger};
    const auto file = put("plan.pdf", rendered_pdf(session(), pages).value());
    const auto first = read_picture(file);
    ASSERT_TRUE(first) << first.error().message;
    EXPECT_NEAR(first->width, 157.48, 1.0);
    expect_half_dark(*first);
    EXPECT_EQ(read_picture(file.string() + "#1").value(), *first);
    EXPECT_NEAR(read_picture(file.string() + "#2").value().width, 314.96, 1.0);
    refused(file.string() + "#3", "page 3");
    refused(file.string() + "#0");
    refused(file.string() + "#x");
}

TEST_F(PictureFolder, RefusesWhatIsNoPicture) {
    refused(folder_ / "missing.png");
    refused(folder_ / "missing.pdf");
    refused(put("text.png", "no picture at all"), "not a PNG or JPEG");
    refused(put("empty.png", ""));
    refused(put("text.pdf", "no document at all"), "not a PDF");
    refused(put("empty.pdf", ""));
    refused(put("bitmap.png", "BM" + std::string(200, '\0')), "not a PNG or JPEG");
    for (const char* name : {"folder.png", "folder.pdf"}) {
        std::filesystem::create_directory(folder_ / name);
        refused(folder_ / name);
    }
    for (const char* name : {"pipe.png", "pipe.pdf"}) {
        ASSERT_EQ(mkfifo((folder_ / name).c_str(), 0600), 0);
        refused(folder_ / name, "not a regular file");
    }
}

TEST_F(PictureFolder, RefusesWhatIsTooLarge) {
    for (const char* name : {"huge.png", "huge.pdf"}) {
        const auto file = put(name, png_bytes());
        std::filesystem::resize_file(file, kLargestPictureBytes + 1);
        refused(file, "larger than");
    }
    // 20 m of paper at 200 dots per inch.
    sheet::Drawing drawing = half_dark();
    drawing.width_mm = 5000.0;
    drawing.height_mm = 5000.0;
    refused(put("wide.pdf", rendered_pdf(session(), drawing).value()), "million");
}

std::string with_size(std::string png, std::uint32_t width, std::uint32_t height) {
    for (std::size_t i = 0; i < 4; ++i) {
        png[16 + i] = static_cast<char>(width >> (24 - 8 * i));
        png[20 + i] = static_cast<char>(height >> (24 - 8 * i));
    }
    return png;
}

std::uint32_t checksum(std::string_view bytes) {
    std::uint32_t rest = 0xFFFFFFFFU;
    for (const char byte : bytes) {
        rest ^= static_cast<unsigned char>(byte);
        for (int bit = 0; bit < 8; ++bit) {
            rest = (rest >> 1U) ^ ((rest & 1U) != 0 ? 0xEDB88320U : 0U);
        }
    }
    return ~rest;
}

TEST_F(PictureFolder, RefusesHeadsThatClaimTooMuch) {
    for (const auto& [width, height] :
         {std::pair{100'000U, 100'000U}, std::pair{0x7FFFFFFFU, 0x7FFFFFFFU},
          std::pair{0xFFFFFFFFU, 1U}, std::pair{0U, 0U}, std::pair{9999U, 9999U}}) {
        std::string png = with_size(png_bytes(), width, height);
        // A checksum that is right, so that the claim itself is looked at.
        const std::uint32_t sum = checksum(std::string_view{png}.substr(12, 17));
        for (std::size_t i = 0; i < 4; ++i) {
            png[29 + i] = static_cast<char>(sum >> (24 - 8 * i));
        }
        refused(put("claim.png", png));
    }
}

TEST_F(PictureFolder, RefusesPicturesThatAreCutOff) {
    for (const auto& [name, bytes] :
         {std::pair{"cut.png", png_bytes()}, std::pair{"cut.jpg", jpeg_bytes(folder_)}}) {
        // The end chunk of a PNG holds nothing that is missed.
        const std::size_t needed =
            std::string{name} == "cut.png" ? bytes.size() - 16 : bytes.size() - 1;
        for (std::size_t length = 0; length < needed; length += 1 + needed / 97) {
            refused(put(name, bytes.substr(0, length)));
        }
    }
}

TEST_F(PictureFolder, DamagedPicturesNeverDoHarm) {
    std::mt19937 random{20260504};
    const std::string pdf = rendered_pdf(session(), half_dark()).value();
    for (const auto& [name, bytes, times] :
         {std::tuple{"hurt.png", png_bytes(), 300},
          std::tuple{"hurt.jpg", jpeg_bytes(folder_), 300}, std::tuple{"hurt.pdf", pdf, 15}}) {
        for (int i = 0; i < times; ++i) {
            std::string damaged = bytes;
            for (int k = 0; k < 8; ++k) {
                damaged[random() % damaged.size()] = static_cast<char>(random());
            }
            const auto pixels = read_picture(put(name, damaged));
            if (pixels) {
                EXPECT_EQ(pixels->rgb.size(), std::size_t{3}
                                                  * static_cast<std::size_t>(pixels->width)
                                                  * static_cast<std::size_t>(pixels->height));
            } else {
                EXPECT_FALSE(pixels.error().message.empty());
            }
        }
    }
}

} // namespace
} // namespace throwline::paint
