#include "sheet/drawn_words.h"

#include <algorithm>
#include <stdexcept>

namespace throwline::test {

std::vector<sheet::Text> texts_of(const sheet::Drawing& drawing) {
    std::vector<sheet::Text> texts;
    for (const sheet::Layer& layer : drawing.layers) {
        for (const sheet::Mark& mark : layer.marks) {
            if (const auto* text = std::get_if<sheet::Text>(&mark)) {
                texts.push_back(*text);
            }
        }
    }
    return texts;
}

std::size_t count_of(const sheet::Drawing& drawing, const std::string& words) {
    const std::vector<sheet::Text> texts = texts_of(drawing);
    return static_cast<std::size_t>(std::count_if(
        texts.begin(), texts.end(), [&](const sheet::Text& text) { return text.text == words; }));
}

std::string all_words(const sheet::Drawing& drawing) {
    std::string all;
    for (const sheet::Text& text : texts_of(drawing)) {
        all += text.text + " ";
    }
    return all;
}

sheet::Drawing with_blank_pictures(sheet::Drawing drawing) {
    for (sheet::Layer& layer : drawing.layers) {
        for (sheet::Mark& mark : layer.marks) {
            if (auto* picture = std::get_if<sheet::Picture>(&mark)) {
                sheet::Pixels blank = *picture->pixels;
                std::fill(blank.rgb.begin(), blank.rgb.end(), std::uint8_t{255});
                picture->pixels = std::make_shared<const sheet::Pixels>(std::move(blank));
            }
        }
    }
    return drawing;
}

std::vector<sheet::Drawing> pages_of(const sheet::SheetInput& input,
                                     const sheet::SheetOptions& options, const std::string& kind) {
    const std::vector<std::string> names{kind};
    sheet::SheetOptions named = options;
    named.sheet_name.clear();
    auto drawn = sheet::sheet_set(input, named, names);
    if (!drawn) {
        throw std::runtime_error{drawn.error().message};
    }
    return *std::move(drawn);
}

} // namespace throwline::test
