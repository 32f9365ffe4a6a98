#include "fuzz/mutation.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <fstream>

namespace throwline::fuzz {

namespace {

/// Inputs that grew beyond this only cost time.
constexpr std::size_t kLargest = std::size_t{64} * 1024;

/// Bytes from `begin` up to but without `end`.
struct Part {
    std::size_t begin = 0;
    std::size_t end = 0;
    std::size_t size() const { return end - begin; }
};

Part any_part(const std::string& bytes, Dice& dice) {
    const std::size_t begin = dice.roll(bytes.size() + 1);
    constexpr std::size_t kLongestPart = 40;
    return {begin, begin + dice.roll(std::min(bytes.size() - begin, kLongestPart) + 1)};
}

bool is_word(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return std::isalnum(byte) != 0 || c == '.' || c == '-' || c == '_' || byte >= 0x80;
}

/// The end of the quoted text that begins at `begin`.
std::size_t end_of_quoted(const std::string& bytes, std::size_t begin) {
    std::size_t at = begin + 1;
    while (at < bytes.size() && bytes[at] != '"') {
        at += bytes[at] == '\\' ? 2 : 1;
    }
    return std::min(at + 1, bytes.size());
}

/// Words, numbers and quoted texts, quotation marks with them.
std::vector<Part> words_of(const std::string& bytes) {
    std::vector<Part> words;
    std::size_t at = 0;
    while (at < bytes.size()) {
        Part part{at, at + 1};
        if (bytes[at] == '"') {
            part.end = end_of_quoted(bytes, at);
        } else if (is_word(bytes[at])) {
            const auto first = bytes.begin() + static_cast<std::ptrdiff_t>(at);
            part.end = static_cast<std::size_t>(std::find_if_not(first, bytes.end(), is_word)
                                                - bytes.begin());
        } else {
            ++at;
            continue;
        }
        words.push_back(part);
        at = part.end;
    }
    return words;
}

/// The bracketed value around a random place, with its brackets; nothing where there is none.
Part bracketed(const std::string& bytes, Dice& dice) {
    const std::size_t begin = bytes.find_first_of("[{", dice.roll(bytes.size() + 1));
    int depth = 0;
    for (std::size_t at = begin; at < bytes.size(); ++at) {
        depth += bytes[at] == '[' || bytes[at] == '{' ? 1 : 0;
        depth -= bytes[at] == ']' || bytes[at] == '}' ? 1 : 0;
        if (depth == 0) {
            return {begin, at + 1};
        }
    }
    return {};
}

std::string cut(const std::string& bytes, const Part& part) {
    return bytes.substr(part.begin, part.size());
}

void replace(std::string& bytes, const Part& part, const std::string& by) {
    bytes.replace(part.begin, part.size(), by);
}

void change_byte(std::string& bytes, const Material&, Dice& dice) {
    if (!bytes.empty()) {
        bytes[dice.roll(bytes.size())] = static_cast<char>(dice.roll(256));
    }
}

void flip_bit(std::string& bytes, const Material&, Dice& dice) {
    if (!bytes.empty()) {
        char& byte = bytes[dice.roll(bytes.size())];
        byte = static_cast<char>(static_cast<unsigned char>(byte) ^ (1U << dice.roll(8)));
    }
}

void drop_part(std::string& bytes, const Material&, Dice& dice) {
    replace(bytes, any_part(bytes, dice), "");
}

void repeat_part(std::string& bytes, const Material&, Dice& dice) {
    const std::string part = cut(bytes, any_part(bytes, dice));
    bytes.insert(dice.roll(bytes.size() + 1), part);
}

void cut_short(std::string& bytes, const Material&, Dice& dice) {
    bytes.resize(dice.roll(bytes.size() + 1));
}

void insert_token(std::string& bytes, const Material& material, Dice& dice) {
    if (!material.tokens.empty()) {
        bytes.insert(dice.roll(bytes.size() + 1),
                     material.tokens[dice.roll(material.tokens.size())]);
    }
}

void take_from_other(std::string& bytes, const Material& material, Dice& dice) {
    if (!material.others.empty()) {
        const std::string& other = material.others[dice.roll(material.others.size())];
        bytes.insert(dice.roll(bytes.size() + 1), cut(other, any_part(other, dice)));
    }
}

void change_word(std::string& bytes, const Material& material, Dice& dice) {
    const std::vector<Part> words = words_of(bytes);
    if (!words.empty() && !material.tokens.empty()) {
        replace(bytes, words[dice.roll(words.size())],
                material.tokens[dice.roll(material.tokens.size())]);
    }
}

void copy_word(std::string& bytes, const Material&, Dice& dice) {
    const std::vector<Part> words = words_of(bytes);
    if (!words.empty()) {
        const std::string word = cut(bytes, words[dice.roll(words.size())]);
        replace(bytes, words[dice.roll(words.size())], word);
    }
}

void drop_bracketed(std::string& bytes, const Material&, Dice& dice) {
    const Part part = bracketed(bytes, dice);
    const bool comma = part.end < bytes.size() && bytes[part.end] == ',';
    replace(bytes, {part.begin, part.end + (comma ? 1 : 0)}, "");
}

void repeat_bracketed(std::string& bytes, const Material&, Dice& dice) {
    const Part part = bracketed(bytes, dice);
    if (part.size() > 0) {
        const std::string again = cut(bytes, part);
        bytes.insert(part.end, again);
        bytes.insert(part.end, 1, ',');
    }
}

void copy_bracketed(std::string& bytes, const Material&, Dice& dice) {
    const std::string from = cut(bytes, bracketed(bytes, dice));
    const Part to = bracketed(bytes, dice);
    if (to.size() > 0) {
        replace(bytes, to, from);
    }
}

using Change = void (*)(std::string&, const Material&, Dice&);
constexpr std::array<Change, 12> kChanges{
    change_byte,     flip_bit,    drop_part, repeat_part,    cut_short,        insert_token,
    take_from_other, change_word, copy_word, drop_bracketed, repeat_bracketed, copy_bracketed};

/// A quoted token without its quotation marks, its escapes resolved.
std::string unescaped(std::string_view text) {
    std::string plain;
    while (!text.empty()) {
        if (text.starts_with("\\x") && text.size() >= 4) {
            unsigned char byte = 0;
            std::from_chars(text.data() + 2, text.data() + 4, byte, 16);
            plain.push_back(static_cast<char>(byte));
            text.remove_prefix(4);
            continue;
        }
        if (text.front() == '\\' && text.size() >= 2) {
            text.remove_prefix(1);
        }
        plain.push_back(text.front());
        text.remove_prefix(1);
    }
    return plain;
}

} // namespace

std::size_t Dice::roll(std::size_t sides) {
    state_ += 0x9E3779B97F4A7C15U;
    std::uint64_t mixed = state_;
    mixed = (mixed ^ (mixed >> 30U)) * 0xBF58476D1CE4E5B9U;
    mixed = (mixed ^ (mixed >> 27U)) * 0x94D049BB133111EBU;
    return static_cast<std::size_t>((mixed ^ (mixed >> 31U)) % sides);
}

std::vector<std::string> dictionary_from(const std::filesystem::path& file) {
    std::ifstream in{file};
    std::vector<std::string> tokens;
    std::string line;
    while (std::getline(in, line)) {
        if (line.size() >= 2 && line.front() == '"' && line.back() == '"') {
            tokens.push_back(unescaped(std::string_view{line}.substr(1, line.size() - 2)));
        }
    }
    return tokens;
}

void mutate(std::string& bytes, const Material& material, Dice& dice) {
    kChanges[dice.roll(kChanges.size())](bytes, material, dice);
    if (bytes.size() > kLargest) {
        bytes.resize(kLargest);
    }
}

} // namespace throwline::fuzz
