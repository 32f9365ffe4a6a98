#include "ui/sheets/print_pages.h"

#include "ui/sheets/save_sheets.h"

#include <QFile>
#include <QPrinter>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

sheet::Drawing page(double width_mm, double height_mm) {
    sheet::Drawing drawing;
    drawing.width_mm = width_mm;
    drawing.height_mm = height_mm;
    drawing.title = "A page";
    return drawing;
}

/// Two upright pages and one on its side, and a printer that prints into a file.
class PrintPages : public testing::Test {
  protected:
    PrintPages() : pages{page(210, 297), page(420, 297), page(297, 420)} {
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(path("print.pdf"));
        set_up(printer, pages.front());
    }
    QString path(const char* name) const { return folder.filePath(QLatin1String{name}); }
    QByteArray bytes(const char* name) const {
        QFile in{path(name)};
        return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray{};
    }

    QTemporaryDir folder;
    std::vector<sheet::Drawing> pages;
    QPrinter printer{QPrinter::HighResolution};
    paint::PaintSession session;
};

TEST_F(PrintPages, PutsEachOnPaperOfItsOwnSize) {
    std::vector<std::size_t> done;
    const QString told = print_pages(printer, pages, [&](std::size_t pages_done) {
        done.push_back(pages_done);
        return true;
    });
    EXPECT_EQ(told, QStringLiteral("Sent to the printer."));
    EXPECT_EQ(done, (std::vector<std::size_t>{0, 1, 2}));
    // In points of 1/72 in; Qt rounds to whole ones.
    const QByteArray pdf = bytes("print.pdf");
    EXPECT_EQ(pdf.count("/MediaBox [0 0 595"), 1) << "A4 upright";
    EXPECT_EQ(pdf.count("/MediaBox [0 0 1191"), 1) << "A3 on its side";
    EXPECT_EQ(pdf.count("/MediaBox [0 0 842"), 1) << "A3 upright";
}

TEST_F(PrintPages, PrintsNothingMoreOnceItWasStopped) {
    const QString told =
        print_pages(printer, pages, [](std::size_t pages_done) { return pages_done < 1; });
    EXPECT_EQ(told, QStringLiteral("Stopped: 1 of 3 pages went to the printer."));
    EXPECT_EQ(bytes("print.pdf").count("/MediaBox [0 0 595"), 1);
    EXPECT_EQ(bytes("print.pdf").count("/MediaBox"), 1);
}

TEST_F(PrintPages, PrintsNothingWhenItWasStoppedAtOnce) {
    EXPECT_EQ(print_pages(printer, pages, [](std::size_t) { return false; }),
              QStringLiteral("Not printed: it was stopped."));
    EXPECT_FALSE(QFile::exists(path("print.pdf")));
}

TEST_F(PrintPages, TellsThatThePrinterWouldNot) {
    printer.setOutputFileName(path("no such folder/print.pdf"));
    EXPECT_EQ(print_pages(printer, pages), QStringLiteral("The printer did not take the pages."));
}

TEST_F(PrintPages, SavedSheetsAreWholeOrNotThere) {
    const QString told = saved_pages(session, path("set.pdf"), pages, 0,
                                     [](std::size_t pages_done) { return pages_done < 2; });
    EXPECT_EQ(told, QStringLiteral("Not saved: it was stopped"));
    EXPECT_FALSE(QFile::exists(path("set.pdf")));
    EXPECT_EQ(saved_pages(session, path("set.pdf"), pages, 0),
              QStringLiteral("Saved ") + path("set.pdf"));
    EXPECT_TRUE(QFile::exists(path("set.pdf")));
}

} // namespace
} // namespace throwline::ui
