#pragma once

#include "ui/paint/paint.h"

#include <QString>
#include <span>

class QPrinter;

namespace throwline::ui {

/// Paper and way round of a page, without margins or scaling of the printer's own.
void set_up(QPrinter& printer, const sheet::Drawing& page);

/// Prints pages true to size with the painter of the preview; each page on paper of its own size.
/// A sentence that says how it went. On any thread. Pages painted before it was given up are
/// printed.
QString print_pages(QPrinter& printer, std::span<const sheet::Drawing> pages,
                    const paint::MayGoOn& may_go_on = {});

} // namespace throwline::ui
