#include "ui/paint/pdf_layers.h"

#include <fmt/format.h>

namespace throwline::paint {

QPDFObjectHandle PdfLayers::group(const std::string& name) {
    const auto known = groups_.find(name);
    if (known != groups_.end()) {
        return known->second;
    }
    QPDFObjectHandle made = QPDFObjectHandle::newDictionary();
    made.replaceKey("/Type", QPDFObjectHandle::newName("/OCG"));
    made.replaceKey("/Name", QPDFObjectHandle::newUnicodeString(name));
    made = pdf_.makeIndirectObject(made);
    groups_.emplace(name, made);
    in_order_.push_back(made);
    return made;
}

QPDFObjectHandle PdfLayers::stacked(std::span<QPDFPageObjectHelper> pages,
                                    std::span<const std::string> names) {
    QPDFObjectHandle forms = QPDFObjectHandle::newDictionary();
    std::string contents;
    for (std::size_t i = 0; i < names.size(); ++i) {
        QPDFObjectHandle form = pages[i].getFormXObjectForPage();
        form.getDict().replaceKey("/OC", group(names[i]));
        const std::string key = fmt::format("/Layer{}", i + 1);
        forms.replaceKey(key, form);
        contents += fmt::format("q {} Do Q\n", key);
    }
    QPDFObjectHandle resources = QPDFObjectHandle::newDictionary();
    resources.replaceKey("/XObject", forms);
    QPDFObjectHandle page = QPDFObjectHandle::newDictionary();
    page.replaceKey("/Type", QPDFObjectHandle::newName("/Page"));
    page.replaceKey("/MediaBox", pages.front().getMediaBox(true));
    page.replaceKey("/Resources", resources);
    page.replaceKey("/Contents", QPDFObjectHandle::newStream(&pdf_, contents));
    return pdf_.makeIndirectObject(page);
}

void PdfLayers::list() {
    const QPDFObjectHandle all = QPDFObjectHandle::newArray(in_order_);
    QPDFObjectHandle shown = QPDFObjectHandle::newDictionary();
    shown.replaceKey("/Order", all);
    shown.replaceKey("/ON", all);
    QPDFObjectHandle properties = QPDFObjectHandle::newDictionary();
    properties.replaceKey("/OCGs", all);
    properties.replaceKey("/D", shown);
    pdf_.getRoot().replaceKey("/OCProperties", properties);
}

} // namespace throwline::paint
