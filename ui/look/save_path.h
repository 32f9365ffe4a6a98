#pragma once

#include <QString>
#include <QStringList>

class QWidget;

namespace throwline::ui {

/// Asks where to save; empty when nowhere. A name without an ending gets that of the chosen filter
/// ("A list (*.csv)") before the dialog looks whether such a file is there already, so that none is
/// replaced without a question.
QString asked_path_to_save(QWidget* over, const QString& title, const QString& suggested,
                           const QStringList& filters);

/// "csv" of "A list (*.csv)"; empty when it names none.
QString ending_of(const QString& filter);

} // namespace throwline::ui
