#include "ui/look/save_path.h"

#include <QFileDialog>
#include <QRegularExpression>

namespace throwline::ui {

QString ending_of(const QString& filter) {
    static const QRegularExpression kEnding{QStringLiteral("\\*\\.(\\w+)")};
    return kEnding.match(filter).captured(1);
}

QString asked_path_to_save(QWidget* over, const QString& title, const QString& suggested,
                           const QStringList& filters) {
    QFileDialog dialog{over, title};
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setFileMode(QFileDialog::AnyFile);
    dialog.setNameFilters(filters);
    const auto take_ending = [&dialog](const QString& filter) {
        dialog.setDefaultSuffix(ending_of(filter));
    };
    QObject::connect(&dialog, &QFileDialog::filterSelected, &dialog, take_ending);
    take_ending(filters.value(0));
    dialog.selectFile(suggested);
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) {
        return {};
    }
    return dialog.selectedFiles().first();
}

} // namespace throwline::ui
