#include "sheet/written_sheet.h"

// Makes qpdf's headers use std::shared_ptr throughout.
#define POINTERHOLDER_TRANSITION 4
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFMatrix.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>

namespace throwline::test {

namespace {

constexpr double kMillimetresPerPoint = 25.4 / 72.0;

/// Follows the operators of a content stream (ISO 32000-1:2008, table 51) as far as paths go.
class StrokeReader : public QPDFObjectHandle::ParserCallbacks {
  public:
    StrokeReader(QPDFObjectHandle resources, QPDFMatrix matrix, std::vector<Stroke>& strokes)
        : resources_{std::move(resources)}, matrix_{matrix}, strokes_{strokes} {}

    void handleObject(QPDFObjectHandle object) override {
        if (!object.isOperator()) {
            operands_.push_back(object);
            return;
        }
        follow(object.getOperatorValue());
        operands_.clear();
    }
    void handleEOF() override {}

  private:
    double number(std::size_t index) { return operands_.at(index).getNumericValue(); }

    Vec2 place(std::size_t index) {
        double x = 0.0;
        double y = 0.0;
        matrix_.transform(number(index), number(index + 1), x, y);
        return {x, y};
    }

    void line_to(const Vec2& to) {
        path_.push_back({at_, to});
        at_ = to;
    }

    void follow(const std::string& name) {
        if (name == "q") {
            saved_.push_back(matrix_);
        } else if (name == "Q") {
            matrix_ = saved_.back();
            saved_.pop_back();
        } else if (name == "cm") {
            matrix_.concat(
                QPDFMatrix{number(0), number(1), number(2), number(3), number(4), number(5)});
        } else if (name == "Do") {
            form(resources_.getKey("/XObject").getKey(operands_.at(0).getName()));
        } else {
            follow_path(name);
        }
    }

    void follow_path(const std::string& name) {
        if (name == "m") {
            at_ = place(0);
            start_ = at_;
        } else if (name == "l") {
            line_to(place(0));
        } else if (name == "c") {
            at_ = place(4);
        } else if (name == "h") {
            line_to(start_);
        } else if (name == "S" || name == "s" || name == "B" || name == "B*" || name == "b") {
            strokes_.insert(strokes_.end(), path_.begin(), path_.end());
            path_.clear();
        } else if (name == "f" || name == "f*" || name == "n") {
            path_.clear();
        }
    }

    void form(QPDFObjectHandle form) {
        QPDFObjectHandle dictionary = form.getDict();
        if (dictionary.getKey("/Subtype").getName() != "/Form") {
            return;
        }
        QPDFMatrix inner = matrix_;
        if (dictionary.getKey("/Matrix").isArray()) {
            inner.concat(QPDFMatrix{dictionary.getKey("/Matrix").getArrayAsMatrix()});
        }
        StrokeReader reader{dictionary.getKey("/Resources"), inner, strokes_};
        QPDFObjectHandle::parseContentStream(form, &reader);
    }

    QPDFObjectHandle resources_;
    QPDFMatrix matrix_;
    std::vector<Stroke>& strokes_;
    std::vector<QPDFMatrix> saved_;
    std::vector<QPDFObjectHandle> operands_;
    std::vector<Stroke> path_;
    Vec2 at_ = Vec2::Zero();
    Vec2 start_ = Vec2::Zero();
};

WrittenSheet sheet_of_page(QPDFPageObjectHelper& page) {
    const auto box = page.getMediaBox(true).getArrayAsRectangle();
    WrittenSheet sheet;
    sheet.width_mm = (box.urx - box.llx) * kMillimetresPerPoint;
    sheet.height_mm = (box.ury - box.lly) * kMillimetresPerPoint;
    StrokeReader reader{page.getAttribute("/Resources", false), QPDFMatrix{}, sheet.strokes};
    page.parseContents(&reader);
    const auto on_paper = [&](const Vec2& place) {
        return Vec2{(place.x() - box.llx) * kMillimetresPerPoint,
                    (box.ury - place.y()) * kMillimetresPerPoint};
    };
    for (Stroke& stroke : sheet.strokes) {
        stroke = {on_paper(stroke.from), on_paper(stroke.to)};
    }
    return sheet;
}

} // namespace

std::vector<WrittenSheet> sheets_of_pdf(const std::string& bytes) {
    QPDF pdf;
    pdf.processMemoryFile("sheet", bytes.data(), bytes.size());
    std::vector<WrittenSheet> sheets;
    for (QPDFPageObjectHelper& page : QPDFPageDocumentHelper{pdf}.getAllPages()) {
        sheets.push_back(sheet_of_page(page));
    }
    return sheets;
}

} // namespace throwline::test
