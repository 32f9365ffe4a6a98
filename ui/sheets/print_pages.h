#pragma once

#include "sheet/drawing.h"

#include <QString>
#include <span>

class QPrinter;

namespace throwline::ui {

/// Paper and way round of a page, without margins or scaling of the printer's own.
void set_up(QPrinter& printer, const sheet::Drawing& page);

/// Prints pages true to size with the painter of the preview; each page on paper of its own size. A
/// sentence when the printer would not, else empty.
QString print_pages(QPrinter& printer, std::span<const sheet::Drawing> pages);

} // namespace throwline::ui
