#pragma once

#include "base/result.h"
#include "sheet/drawing.h"

#include <cstdint>
#include <filesystem>

namespace throwline::paint {

/// Larger pictures are refused before they are decoded.
inline constexpr std::uintmax_t kLargestPictureBytes = std::uintmax_t{200} * 1024 * 1024;
inline constexpr std::int64_t kMostPixels = 100'000'000;
/// At which a PDF page is turned into pixels.
inline constexpr int kPageDotsPerInch = 200;

/// The pixels of a PNG or JPEG picture, as a viewer shows it, on white; or of a page of a PDF at
/// kPageDotsPerInch: "plan.pdf" is its first, "plan.pdf#3" its third. Errors are one sentence that
/// names the file: not a regular file, too large, not such a picture, broken or cut off.
Result<sheet::Pixels> read_picture(const std::filesystem::path& path);

} // namespace throwline::paint
