#pragma once

// Makes qpdf's headers use std::shared_ptr throughout.
#define POINTERHOLDER_TRANSITION 4
#include <map>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <span>
#include <string>
#include <vector>

namespace throwline::paint {

/// Optional content of a PDF (ISO 32000-1:2008, 8.11): named layers that a viewer shows and hides.
class PdfLayers {
  public:
    explicit PdfLayers(QPDF& pdf) : pdf_{pdf} {}

    /// A new page on which pages with one layer each lie, in order; `names` are those of the
    /// layers. They live on as forms of it and are to be taken out of the file as pages.
    QPDFObjectHandle stacked(std::span<QPDFPageObjectHelper> pages,
                             std::span<const std::string> names);
    /// Lists all layers in the file's catalogue, shown to begin with.
    void list();

  private:
    /// The layer of a name; one for the whole file.
    QPDFObjectHandle group(const std::string& name);

    QPDF& pdf_;
    std::map<std::string, QPDFObjectHandle> groups_;
    std::vector<QPDFObjectHandle> in_order_;
};

} // namespace throwline::paint
