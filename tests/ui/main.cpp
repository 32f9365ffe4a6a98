/// Runs tests of the window in a Qt application without a screen.

#include "ui/paint/paint.h"

#include <QApplication>
#include <gtest/gtest.h>

int main(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application{argc, argv};
    const throwline::paint::PaintSession session;
    return RUN_ALL_TESTS();
}
