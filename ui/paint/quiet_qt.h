#pragma once

#include <QString>
#include <QtGlobal>
#include <cstdio>

namespace throwline::paint {

/// While it lives Qt remarks on nothing, such as a missing XDG_RUNTIME_DIR or a broken picture:
/// what matters of that is said by us. What stops the program is still said.
class QuietQt {
  public:
    QuietQt() : before_{qInstallMessageHandler(say_if_fatal)} {}
    ~QuietQt() { qInstallMessageHandler(before_); }
    QuietQt(const QuietQt&) = delete;
    QuietQt& operator=(const QuietQt&) = delete;

  private:
    static void say_if_fatal(QtMsgType type, const QMessageLogContext& context,
                             const QString& message) {
        if (type == QtFatalMsg) {
            std::fprintf(stderr, "%s\n", qPrintable(qFormatLogMessage(type, context, message)));
        }
    }

    QtMessageHandler before_;
};

} // namespace throwline::paint
