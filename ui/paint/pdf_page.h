#pragma once

#include "base/result.h"
#include "sheet/drawing.h"

#include <filesystem>

namespace throwline::paint {

/// A page of a PDF as a picture. Documents come from anywhere, so the page is drawn by a program of
/// its own (pdftoppm of poppler-utils), which is bounded in time and memory and cannot take this
/// one with it. `page` counts from 1.
Result<sheet::Pixels> drawn_pdf_page(const std::filesystem::path& path, int page);

} // namespace throwline::paint
