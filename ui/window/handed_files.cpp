#include "ui/window/handed_files.h"

#include <QFileInfo>
#include <QLocalServer>
#include <QLocalSocket>
#include <QMetaObject>
#include <optional>

namespace throwline::ui {

namespace {

constexpr int kPatience_ms = 500;
/// One that listens may be busy, printing for one.
constexpr int kBusy_ms = 8000;
constexpr char kTaken = 'T';
/// Names of more files than this are nonsense, bytes.
constexpr qsizetype kMostNames = 1 << 20;
/// Digits of that, and the end of the line.
constexpr qsizetype kLongestHead = 8;

/// How many bytes of names follow, on a line, then the names parted by NUL, which no path has.
QByteArray told(const QStringList& paths) {
    const QByteArray names = paths.join(QChar{u'\0'}).toUtf8();
    return QByteArray::number(names.size()) + '\n' + names;
}

/// What a reader has so far.
struct Heard {
    bool is_nonsense = false;
    /// Nothing before all of it has come.
    std::optional<QStringList> paths;
};

Heard heard(const QByteArray& bytes) {
    const qsizetype head = bytes.indexOf('\n');
    if (head < 0) {
        return {bytes.size() > kLongestHead, {}};
    }
    bool is_number = false;
    const qsizetype size = bytes.left(head).toLongLong(&is_number);
    if (!is_number || size < 0 || size > kMostNames) {
        return {true, {}};
    }
    if (bytes.size() - head - 1 < size) {
        return {};
    }
    const QString names = QString::fromUtf8(bytes.mid(head + 1, size));
    return {false, names.split(QChar{u'\0'}, Qt::SkipEmptyParts)};
}

/// Whether a program listens under the name, though it may be too busy to answer.
bool is_heard(const QString& name) {
    QLocalSocket socket;
    socket.connectToServer(name);
    return socket.waitForConnected(kPatience_ms);
}

} // namespace

bool hand_over_files(const QString& name, const QStringList& paths) {
    QLocalSocket socket;
    socket.connectToServer(name);
    if (!socket.waitForConnected(kPatience_ms)) {
        return false;
    }
    QStringList absolute;
    for (const QString& path : paths) {
        absolute << QFileInfo{path}.absoluteFilePath();
    }
    socket.write(told(absolute));
    return socket.waitForBytesWritten(kBusy_ms) && socket.waitForReadyRead(kBusy_ms);
}

HandedFiles::HandedFiles(const QString& name, QObject* parent)
    : QObject{parent}, server_{new QLocalServer{this}} {
    server_->setSocketOptions(QLocalServer::UserAccessOption);
    // With options a name is taken from whoever has it.
    if (!is_heard(name)) {
        server_->listen(name);
    }
    connect(server_, &QLocalServer::newConnection, this, [this] {
        while (QLocalSocket* socket = server_->nextPendingConnection()) {
            connect(socket, &QLocalSocket::disconnected, socket, &QObject::deleteLater);
            connect(socket, &QLocalSocket::readyRead, this, [this, socket] { read(*socket); });
        }
    });
}

void HandedFiles::read(QLocalSocket& socket) {
    const Heard words = heard(socket.peek(kLongestHead + kMostNames));
    if (words.is_nonsense) {
        socket.abort();
        return;
    }
    if (!words.paths) {
        return;
    }
    socket.readAll();
    socket.putChar(kTaken);
    socket.flush();
    QMetaObject::invokeMethod(
        this, [this, paths = *words.paths] { Q_EMIT handed(paths); }, Qt::QueuedConnection);
}

} // namespace throwline::ui
