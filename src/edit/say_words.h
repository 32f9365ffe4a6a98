#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace throwline::edit {

/// A word of a sentence: what stands between spaces and commas, or in double quotes. A comma that
/// parts is a word of its own.
struct SaidWord {
    /// For comparing: ASCII letters in lower case, spaces within quotes single.
    std::string folded;
    /// Bytes of the sentence that it takes up, quotes included.
    std::size_t begin = 0;
    std::size_t end = 0;
    /// In characters, from 1.
    int column = 1;
    bool quoted = false;
    bool is_comma = false;
};

/// The words of one sentence.
class SaidWords {
  public:
    explicit SaidWords(std::string_view sentence);

    std::size_t count() const { return words_.size(); }
    const SaidWord& operator[](std::size_t index) const { return words_[index]; }
    std::string_view sentence() const { return sentence_; }
    /// Words as they were typed, from one to before another.
    std::string_view typed(std::size_t from, std::size_t to) const;
    /// Words for comparing with a folded name: single spaces, none before a comma.
    std::string joined(std::size_t from, std::size_t to) const;
    /// Column of a word; of the end of the sentence, one past its last character.
    int column(std::size_t index) const;
    /// Whether a space stands after the last word, so that the next one can begin.
    bool ends_in_space() const;

  private:
    std::string sentence_;
    std::vector<SaidWord> words_;
};

/// A name as `SaidWords::joined` gives it when it is typed.
std::string folded(std::string_view name);

} // namespace throwline::edit
