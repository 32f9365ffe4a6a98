#include "ui/paint/fonts.h"
#include "ui/paint/paint.h"
#include "ui/paint/quiet_qt.h"

#include <QGuiApplication>
#include <clocale>

namespace throwline::paint {

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
        const QuietQt quiet;
        application_ = std::make_unique<Application>();
    }
    // Qt takes the locale of the environment over into the C library.
    std::setlocale(LC_NUMERIC, "C");
    load_sheet_fonts();
    measure_ = std::make_unique<FontMeasure>();
}

PaintSession::~PaintSession() = default;

} // namespace throwline::paint
