#pragma once

#include "ui/desk/desk.h"
#include "ui/paint/paint.h"

#include <QString>
#include <QStringList>
#include <span>

/// Sheets and lists as files. On any thread; each gives a sentence that says what was written, or
/// why nothing was.
namespace throwline::ui {

/// All pages as one PDF; the page `shown` alone where the name ends in .png or .svg. Nothing is
/// written once it was given up.
QString saved_pages(const paint::PaintSession& session, const QString& path,
                    std::span<const sheet::Drawing> pages, std::size_t shown,
                    const paint::MayGoOn& may_go_on = {});

/// Files of a folder that saved_lists() would replace.
QStringList lists_in(const QString& folder);
/// Every list as a CSV file of its own in a folder.
QString saved_lists(const checks::Analysis& analysis, const catalogue::Catalogue& catalogue,
                    const QString& folder);
/// One list, by its name.
QString saved_list(const checks::Analysis& analysis, const catalogue::Catalogue& catalogue,
                   const QString& name, const QString& path);

} // namespace throwline::ui
