#include "edit/say_words.h"

#include "base/utf8.h"

namespace throwline::edit {

namespace {

bool is_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// A comma between digits is a decimal one, and stays within its word.
bool parts(std::string_view sentence, std::size_t i) {
    return sentence[i] == ','
           && !(i > 0 && is_digit(sentence[i - 1]) && i + 1 < sentence.size()
                && is_digit(sentence[i + 1]));
}

std::string folded_word(std::string_view word) {
    std::string folded;
    for (const char c : word) {
        if (!is_space(c)) {
            folded += lower(c);
        } else if (!folded.empty() && folded.back() != ' ') {
            folded += ' ';
        }
    }
    if (!folded.empty() && folded.back() == ' ') {
        folded.pop_back();
    }
    return folded;
}

std::size_t end_of_word(std::string_view sentence, std::size_t from) {
    std::size_t i = from;
    while (i < sentence.size() && !is_space(sentence[i]) && !parts(sentence, i)) {
        ++i;
    }
    return i;
}

/// The word that begins at `from`, which is no space.
SaidWord word_at(std::string_view sentence, std::size_t from) {
    SaidWord word;
    word.begin = from;
    word.column = static_cast<int>(characters_of(sentence.substr(0, from)).size()) + 1;
    if (parts(sentence, from)) {
        word.is_comma = true;
        word.end = from + 1;
        word.folded.assign(1, ',');
        return word;
    }
    const std::size_t closing =
        sentence[from] == '"' ? sentence.find('"', from + 1) : std::string_view::npos;
    if (closing != std::string_view::npos) {
        word.quoted = true;
        word.end = closing + 1;
        word.folded = folded_word(sentence.substr(from + 1, closing - from - 1));
        return word;
    }
    word.end = end_of_word(sentence, from);
    word.folded = folded_word(sentence.substr(from, word.end - from));
    return word;
}

} // namespace

SaidWords::SaidWords(std::string_view sentence) : sentence_{sentence} {
    std::size_t i = 0;
    while (i < sentence_.size()) {
        if (is_space(sentence_[i])) {
            ++i;
            continue;
        }
        words_.push_back(word_at(sentence_, i));
        i = words_.back().end;
    }
}

std::string_view SaidWords::typed(std::size_t from, std::size_t to) const {
    if (from >= to) {
        return {};
    }
    const std::size_t begin = words_[from].begin;
    return std::string_view{sentence_}.substr(begin, words_[to - 1].end - begin);
}

std::string SaidWords::joined(std::size_t from, std::size_t to) const {
    std::string text;
    for (std::size_t i = from; i < to; ++i) {
        if (i > from && !words_[i].is_comma) {
            text += ' ';
        }
        text += words_[i].folded;
    }
    return text;
}

int SaidWords::column(std::size_t index) const {
    return index < words_.size() ? words_[index].column
                                 : static_cast<int>(characters_of(sentence_).size()) + 1;
}

bool SaidWords::ends_in_space() const {
    return sentence_.empty() || is_space(sentence_.back());
}

std::string folded(std::string_view name) {
    const SaidWords words{name};
    return words.joined(0, words.count());
}

} // namespace throwline::edit
