#pragma once

#include <QObject>
#include <QStringList>

class QLocalServer;
class QLocalSocket;

namespace throwline::ui {

/// Hands files to the program that listens under `name`; false when there is none, or it does not
/// answer for several seconds. Paths are made absolute, since it runs in a folder of its own.
bool hand_over_files(const QString& name, const QStringList& paths);

/// Listens for what later starts of the program hand over.
class HandedFiles : public QObject {
    Q_OBJECT

  public:
    explicit HandedFiles(const QString& name, QObject* parent = nullptr);

  Q_SIGNALS:
    /// Files to open, none for an empty window. Comes when nothing is being read any more: opening
    /// a file may ask something, and whoever handed it over is gone by the time of the answer.
    void handed(const QStringList& paths);

  private:
    void read(QLocalSocket& socket);

    QLocalServer* server_;
};

} // namespace throwline::ui
