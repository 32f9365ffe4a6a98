#include "ui/paint/read_picture.h"

#include "base/text_file.h"
#include "ui/paint/pdf_page.h"
#include "ui/paint/quiet_qt.h"

#include <QBuffer>
#include <QImage>
#include <QImageReader>
#include <charconv>
#include <fmt/format.h>
#include <png.h>

namespace throwline::paint {

namespace {

constexpr std::string_view kPdf = ".pdf";
constexpr std::string_view kBroken = "it is broken or cut off";
constexpr int kMegabyte = 1024 * 1024;

tl::unexpected<Error> cannot_use(const std::filesystem::path& path, std::string_view why) {
    return failure(fmt::format("cannot use {} as a picture: {}", path.native(), why));
}

/// A file and the page that is asked for, 0 when it is no PDF.
struct PageOfFile {
    std::filesystem::path file;
    int page = 0;
};

bool ends_as_pdf(std::string_view name) {
    return name.size() >= kPdf.size()
           && QByteArrayView{name.substr(name.size() - kPdf.size())}.compare(QByteArrayView{kPdf},
                                                                             Qt::CaseInsensitive)
                  == 0;
}

PageOfFile page_of_file(const std::filesystem::path& path) {
    const std::string& name = path.native();
    if (ends_as_pdf(name)) {
        return {path, 1};
    }
    const std::size_t mark = name.rfind('#');
    if (mark == std::string::npos || !ends_as_pdf(std::string_view{name}.substr(0, mark))) {
        return {path, 0};
    }
    int page = 0;
    const char* end = name.data() + name.size();
    const auto [next, problem] = std::from_chars(name.data() + mark + 1, end, page);
    if (problem != std::errc{} || next != end || page < 1) {
        return {path, 0};
    }
    return {name.substr(0, mark), page};
}

sheet::Pixels pixels_of(const QImage& image) {
    sheet::Pixels pixels;
    pixels.width = image.width();
    pixels.height = image.height();
    const std::size_t row_bytes = std::size_t{3} * static_cast<std::size_t>(image.width());
    pixels.rgb.reserve(row_bytes * static_cast<std::size_t>(image.height()));
    for (int row = 0; row < image.height(); ++row) {
        const uchar* from = image.constScanLine(row);
        pixels.rgb.insert(pixels.rgb.end(), from, from + row_bytes);
    }
    return pixels;
}

Result<void> bearable_size(const std::filesystem::path& path, std::int64_t width,
                           std::int64_t height) {
    if (width < 1 || height < 1) {
        return cannot_use(path, kBroken);
    }
    if (width > kMostPixels / height) {
        return cannot_use(path, fmt::format("{} by {} pixels are too many; {} million are the most",
                                            width, height, kMostPixels / 1'000'000));
    }
    return {};
}

/// Not by Qt, which lets libpng print to standard error. See-through parts become white.
Result<sheet::Pixels> decoded_png(const std::filesystem::path& path, const std::string& bytes) {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    if (png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) == 0) {
        return cannot_use(path, kBroken);
    }
    if (const auto sized = bearable_size(path, image.width, image.height); !sized) {
        png_image_free(&image);
        return tl::unexpected{sized.error()};
    }
    image.format = PNG_FORMAT_RGB;
    sheet::Pixels pixels;
    pixels.width = static_cast<int>(image.width);
    pixels.height = static_cast<int>(image.height);
    pixels.rgb.resize(PNG_IMAGE_SIZE(image));
    constexpr png_color kWhite{255, 255, 255};
    if (png_image_finish_read(&image, &kWhite, pixels.rgb.data(), 0, nullptr) == 0) {
        return cannot_use(path, kBroken);
    }
    return pixels;
}

/// Decoders fill a cut-off JPEG up with grey and say nothing (ITU-T T.81, B.1.1.3: the last marker
/// is FFD9; cameras write other things behind it).
bool is_whole_jpeg(std::string_view bytes) {
    return bytes.rfind("\xFF\xD9") != std::string_view::npos;
}

Result<sheet::Pixels> decoded_jpeg(const std::filesystem::path& path, const std::string& bytes) {
    const QuietQt quiet;
    QByteArray held = QByteArray::fromRawData(bytes.data(), static_cast<qsizetype>(bytes.size()));
    QBuffer buffer{&held};
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader{&buffer, "jpeg"};
    reader.setAutoTransform(true);
    const QSize size = reader.size();
    if (const auto sized = bearable_size(path, size.width(), size.height()); !sized) {
        return tl::unexpected{sized.error()};
    }
    // What is allowed above, at 4 bytes a pixel.
    QImageReader::setAllocationLimit(static_cast<int>(4 * kMostPixels / kMegabyte) + 1);
    const QImage image = reader.read().convertToFormat(QImage::Format_RGB888);
    if (image.isNull() || !is_whole_jpeg(bytes)) {
        return cannot_use(path, kBroken);
    }
    return pixels_of(image);
}

Result<sheet::Pixels> decoded(const std::filesystem::path& path) {
    const Result<std::string> bytes = read_text_file(path, kLargestPictureBytes);
    if (!bytes) {
        return tl::unexpected{bytes.error()};
    }
    if (bytes->starts_with("\x89PNG\r\n\x1A\n")) {
        return decoded_png(path, *bytes);
    }
    if (bytes->starts_with("\xFF\xD8\xFF")) {
        return decoded_jpeg(path, *bytes);
    }
    return cannot_use(path, "it is not a PNG or JPEG picture, and its name does not end in .pdf");
}

} // namespace

Result<sheet::Pixels> read_picture(const std::filesystem::path& path) {
    const PageOfFile asked = page_of_file(path);
    return asked.page > 0 ? drawn_pdf_page(asked.file, asked.page) : decoded(asked.file);
}

} // namespace throwline::paint
