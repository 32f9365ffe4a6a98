#include "ui/sheets/save_sheets.h"

#include "base/text_file.h"
#include "lists/list_files.h"
#include "lists/lists.h"

#include <QFileInfo>
#include <QObject>

namespace throwline::ui {

namespace {

QString sentence_of(const Error& error) {
    return QObject::tr("Not saved: %1").arg(QString::fromStdString(error.message));
}

QString written(const QString& path, const Result<std::string>& bytes) {
    const auto done = bytes.and_then(
        [&](const std::string& whole) { return write_file_whole(path.toStdString(), whole); });
    return done ? QObject::tr("Saved %1").arg(path) : sentence_of(done.error());
}

} // namespace

QString saved_pages(const paint::PaintSession& session, const QString& path,
                    std::span<const sheet::Drawing> pages, std::size_t shown,
                    const paint::MayGoOn& may_go_on) {
    if (shown >= pages.size()) {
        return QObject::tr("There is no page to save.");
    }
    if (path.endsWith(QStringLiteral(".png"), Qt::CaseInsensitive)) {
        return written(path, paint::rendered_png(session, pages[shown]));
    }
    if (path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive)) {
        return written(path, paint::rendered_svg(session, pages[shown]));
    }
    return written(path, paint::rendered_pdf(session, pages, may_go_on));
}

QStringList lists_in(const QString& folder) {
    QStringList there;
    for (const lists::ListKind& kind : lists::all_lists()) {
        const QFileInfo file{QString::fromStdString(
            lists::file_in(folder.toStdString(), kind.name, lists::ListForm::csv))};
        if (file.exists()) {
            there << file.fileName();
        }
    }
    return there;
}

QString saved_lists(const checks::Analysis& analysis, const catalogue::Catalogue& catalogue,
                    const QString& folder) {
    std::vector<lists::Table> tables;
    for (const lists::ListKind& kind : lists::all_lists()) {
        tables.push_back(kind.make({analysis, catalogue}));
    }
    const auto files = lists::write_each(tables, lists::ListForm::csv, folder.toStdString());
    return files ? QObject::tr("Saved %1 lists in %2").arg(files->size()).arg(folder)
                 : sentence_of(files.error());
}

QString saved_list(const checks::Analysis& analysis, const catalogue::Catalogue& catalogue,
                   const QString& name, const QString& path) {
    for (const lists::ListKind& kind : lists::all_lists()) {
        if (name.toStdString() == kind.name) {
            return written(path, lists::as_csv(kind.make({analysis, catalogue})));
        }
    }
    return QObject::tr("There is no list %1.").arg(name);
}

} // namespace throwline::ui
