#include "sheet/text_wrap.h"

#include "base/utf8.h"

namespace throwline::sheet {

namespace {

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    std::string word;
    for (const char c : text) {
        if (c == ' ' || c == '\n' || c == '\t') {
            if (!word.empty()) {
                words.push_back(std::move(word));
                word.clear();
            }
        } else {
            word += c;
        }
    }
    if (!word.empty()) {
        words.push_back(std::move(word));
    }
    return words;
}

/// Pieces of a word that fit by themselves.
std::vector<std::string> pieces_of(const std::string& word, double width_mm, double height_mm,
                                   bool bold, const TextMeasure& measure) {
    if (measure.width_mm(word, height_mm, bold) <= width_mm) {
        return {word};
    }
    std::vector<std::string> pieces;
    std::string piece;
    for (const char32_t character : characters_of(word)) {
        std::string longer = piece;
        longer += utf8_of(std::array{character});
        if (!piece.empty() && measure.width_mm(longer, height_mm, bold) > width_mm) {
            pieces.push_back(std::move(piece));
            piece = utf8_of(std::array{character});
        } else {
            piece = std::move(longer);
        }
    }
    pieces.push_back(std::move(piece));
    return pieces;
}

} // namespace

std::vector<std::string> wrapped_lines(std::string_view text, double width_mm, double height_mm,
                                       bool bold, const TextMeasure& measure) {
    std::vector<std::string> lines;
    std::string line;
    for (const std::string& word : words_of(text)) {
        for (const std::string& piece : pieces_of(word, width_mm, height_mm, bold, measure)) {
            std::string longer = line;
            if (!longer.empty()) {
                longer += ' ';
            }
            longer += piece;
            if (!line.empty() && measure.width_mm(longer, height_mm, bold) > width_mm) {
                lines.push_back(std::move(line));
                line = piece;
            } else {
                line = std::move(longer);
            }
        }
    }
    lines.push_back(std::move(line));
    return lines;
}

std::string cut_to_width(const std::string& text, double width_mm, double height_mm, bool bold,
                         const TextMeasure& measure) {
    if (measure.width_mm(text, height_mm, bold) <= width_mm) {
        return text;
    }
    std::vector<char32_t> characters = characters_of(text);
    while (!characters.empty()) {
        characters.pop_back();
        std::string cut = utf8_of(characters);
        cut += "…";
        if (measure.width_mm(cut, height_mm, bold) <= width_mm) {
            return cut;
        }
    }
    return {};
}

} // namespace throwline::sheet
