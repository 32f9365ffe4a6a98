#include "sheet/marks.h"
#include "sheet/sheet_support.h"
#include "ui/paint/paint.h"
#include "ui/paint/read_picture.h"

// Makes qpdf's headers use std::shared_ptr throughout.
#define POINTERHOLDER_TRANSITION 4
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <pugixml.hpp>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>
#include <set>
#include <unistd.h>

namespace throwline::paint {
namespace {

using sheet::Drawing;
using sheet::Layer;
using test::session;

Layer layer(const std::string& name, double y_mm) {
    return {name,
            {sheet::line({20, y_mm}, {120, y_mm}, sheet::pen(sheet::Ink::built, 0.5)),
             sheet::Text{"words on " + name,
                         {20, y_mm + 10},
                         3.5,
                         sheet::TextAnchor::start,
                         0.0,
                         false,
                         sheet::Ink::lettering}},
            Vec2::Zero()};
}

Drawing layered(const std::vector<std::string>& names) {
    Drawing drawing;
    drawing.title = "Layers";
    drawing.width_mm = 210.0;
    drawing.height_mm = 148.0;
    double y_mm = 20.0;
    for (const std::string& name : names) {
        drawing.layers.push_back(layer(name, y_mm));
        y_mm += 20.0;
    }
    drawing.layers.push_back({"empty", {}, Vec2::Zero()});
    return drawing;
}

std::vector<std::string> names_in(QPDFObjectHandle groups) {
    std::vector<std::string> names;
    for (QPDFObjectHandle group : groups.getArrayAsVector()) {
        names.push_back(group.getKey("/Name").getUTF8Value());
    }
    return names;
}

/// A written file, held as long as its objects are looked at.
class OpenPdf {
  public:
    explicit OpenPdf(std::string bytes) : bytes_{std::move(bytes)} {
        pdf.processMemoryFile("sheet", bytes_.data(), bytes_.size());
    }
    QPDFObjectHandle layers() { return pdf.getRoot().getKey("/OCProperties"); }

    QPDF pdf;

  private:
    std::string bytes_;
};

TEST(PaintPdfLayers, EachLayerHasANameAndIsShownToBeginWith) {
    OpenPdf file{rendered_pdf(session(), layered({"ground", "lamps", "frame"})).value()};
    const std::vector<std::string> names{"Ground", "Lamps", "Frame"};
    EXPECT_EQ(names_in(file.layers().getKey("/OCGs")), names);
    EXPECT_EQ(names_in(file.layers().getKey("/D").getKey("/Order")), names);
    EXPECT_EQ(names_in(file.layers().getKey("/D").getKey("/ON")), names);
    EXPECT_FALSE(file.layers().getKey("/D").hasKey("/OFF"));
}

TEST(PaintPdfLayers, PagesShareLayersOfTheSameName) {
    const std::vector<Drawing> drawings{layered({"ground", "lamps"}), layered({"lamps", "frame"})};
    OpenPdf file{rendered_pdf(session(), drawings).value()};
    EXPECT_EQ(names_in(file.layers().getKey("/OCGs")),
              (std::vector<std::string>{"Ground", "Lamps", "Frame"}));
    EXPECT_EQ(QPDFPageDocumentHelper{file.pdf}.getAllPages().size(), 2U);
}

TEST(PaintPdfLayers, EveryFormOnAPageBelongsToALayerOfTheList) {
    OpenPdf file{rendered_pdf(session(), layered({"ground", "lamps", "frame"})).value()};
    std::set<int> listed;
    for (QPDFObjectHandle group : file.layers().getKey("/OCGs").getArrayAsVector()) {
        listed.insert(group.getObjectID());
    }
    int forms = 0;
    for (QPDFPageObjectHelper& page : QPDFPageDocumentHelper{file.pdf}.getAllPages()) {
        for (auto& [key, form] : page.getFormXObjects()) {
            ++forms;
            EXPECT_TRUE(listed.contains(form.getDict().getKey("/OC").getObjectID())) << key;
        }
    }
    EXPECT_EQ(forms, 3);
}

/// How many dark pixels a renderer of another house shows of a file.
int dark_pixels(const std::string& bytes) {
    const auto file = std::filesystem::temp_directory_path()
                      / ("throwline_layers_" + std::to_string(getpid()) + ".pdf");
    std::ofstream{file, std::ios::binary} << bytes;
    const sheet::Pixels pixels = read_picture(file).value();
    std::filesystem::remove(file);
    int dark = 0;
    for (std::size_t i = 0; i < pixels.rgb.size(); i += 3) {
        dark += pixels.rgb[i] < 128 ? 1 : 0;
    }
    return dark;
}

/// The file again, one of its layers hidden as a reader of it would.
std::string with_hidden(const std::string& bytes, std::size_t layer) {
    OpenPdf file{bytes};
    QPDFObjectHandle shown = file.layers().getKey("/D");
    QPDFObjectHandle off = QPDFObjectHandle::newArray();
    off.appendItem(file.layers().getKey("/OCGs").getArrayItem(static_cast<int>(layer)));
    shown.replaceKey("/OFF", off);
    shown.removeKey("/ON");
    QPDFWriter writer{file.pdf};
    writer.setOutputMemory();
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    return {buffer->getBuffer(), buffer->getBuffer() + buffer->getSize()};
}

TEST(PaintPdfLayers, AreHiddenOneByOne) {
    const std::vector<std::string> names{"ground", "lamps", "frame"};
    const std::string bytes = rendered_pdf(session(), layered(names)).value();
    const int all = dark_pixels(bytes);
    ASSERT_GT(all, 1000);
    int sum = 0;
    for (std::size_t i = 0; i < names.size(); ++i) {
        const int hidden = all - dark_pixels(with_hidden(bytes, i));
        EXPECT_GT(hidden, 100) << names[i];
        sum += hidden;
    }
    EXPECT_EQ(sum, all);
}

TEST(PaintPdfLayers, EmbedEachFontOnceInAFile) {
    const std::vector<Drawing> drawings{layered({"ground", "lamps"}), layered({"lamps", "frame"})};
    OpenPdf file{rendered_pdf(session(), drawings).value()};
    int fonts = 0;
    for (QPDFObjectHandle& object : file.pdf.getAllObjects()) {
        fonts += object.isDictionary() && object.hasKey("/FontFile2") ? 1 : 0;
    }
    EXPECT_EQ(fonts, 1);
}

TEST(PaintPdfLayers, BareDrawingIsStillAPage) {
    Drawing drawing;
    OpenPdf file{rendered_pdf(session(), drawing).value()};
    EXPECT_EQ(QPDFPageDocumentHelper{file.pdf}.getAllPages().size(), 1U);
}

TEST(PaintSvgLayers, AreGroupsWithIdsOfTheirOwn) {
    Drawing drawing = layered({"ground", "sound & power", "ground"});
    drawing.title = "Bread & <butter>\x01";
    const std::string svg = rendered_svg(session(), drawing).value();
    pugi::xml_document document;
    ASSERT_TRUE(document.load_buffer(svg.data(), svg.size()));
    const pugi::xml_node root = document.child("svg");
    std::vector<std::string> ids;
    for (const pugi::xml_node& group : root.children("g")) {
        if (const std::string id = group.attribute("id").value(); !id.empty()) {
            ids.push_back(id);
            EXPECT_NE(group.child("title").text().get(), std::string{});
        }
    }
    EXPECT_EQ(ids,
              (std::vector<std::string>{"layer-ground", "layer-sound---power", "layer-ground-2"}));
    EXPECT_STREQ(root.child("title").text().get(), "Bread & <butter>");
}

TEST(PaintSvgLayers, HoldTheWordsOfTheirMarks) {
    const std::string svg = rendered_svg(session(), layered({"ground", "lamps"})).value();
    pugi::xml_document document;
    ASSERT_TRUE(document.load_buffer(svg.data(), svg.size()));
    for (const char* name : {"ground", "lamps"}) {
        const pugi::xml_node group = document.child("svg").find_child_by_attribute(
            "g", "id", (std::string{"layer-"} + name).c_str());
        const pugi::xpath_node words = group.select_node(".//text");
        ASSERT_TRUE(words) << name;
        EXPECT_NE(std::string{words.node().text().get()}.find(std::string{"words on "} + name),
                  std::string::npos);
    }
}

} // namespace
} // namespace throwline::paint
