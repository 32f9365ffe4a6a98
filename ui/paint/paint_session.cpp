#include "ui/paint/fonts.h"
#include "ui/paint/paint.h"

#include <QGuiApplication>
#include <clocale>
#include <cstdio>

namespace throwline::paint {

namespace {

/// While Qt starts it remarks on the machine, such as a missing XDG_RUNTIME_DIR, which is no
/// business of whoever asked for a sheet. What stops it is still said.
class QuietStart {
  public:
    QuietStart() : before_{qInstallMessageHandler(say_if_fatal)} {}
    ~QuietStart() { qInstallMessageHandler(before_); }
    QuietStart(const QuietStart&) = delete;
    QuietStart& operator=(const QuietStart&) = delete;

  private:
    static void say_if_fatal(QtMsgType type, const QMessageLogContext& context,
                             const QString& message) {
        if (type == QtFatalMsg) {
            std::fprintf(stderr, "%s\n", qPrintable(qFormatLogMessage(type, context, message)));
        }
    }

    QtMessageHandler before_;
};

} // namespace

/// Qt keeps references to the arguments, so they live beside the application.
class PaintSession::Application {
  public:
    Application() : application_{count_, arguments_} {}

  private:
    char name_[10] = "throwline";
    char* arguments_[2] = {name_, nullptr};
    int count_ = 1;
    QGuiApplication application_;
};

PaintSession::PaintSession() {
    if (QCoreApplication::instance() == nullptr) {
        // Nothing is shown, so nothing should need a screen.
        qputenv("QT_QPA_PLATFORM", "offscreen");
        const QuietStart quiet;
        application_ = std::make_unique<Application>();
    }
    // Qt takes the locale of the environment over into the C library.
    std::setlocale(LC_NUMERIC, "C");
    load_sheet_fonts();
    measure_ = std::make_unique<FontMeasure>();
}

PaintSession::~PaintSession() = default;

} // namespace throwline::paint
