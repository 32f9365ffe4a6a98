#pragma once

#include <cstdint>
#include <filesystem>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Deterministic mutations: the same seed gives the same bytes on every machine.
namespace throwline::fuzz {

/// splitmix64: small, and the standard library's distributions differ between libraries.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_{seed} {}
    /// Below `sides`, which is above 0.
    std::size_t roll(std::size_t sides);

  private:
    std::uint64_t state_;
};

/// The tokens of a dictionary in libFuzzer's format: "text" a line, with \\, \" and \xAB.
std::vector<std::string> dictionary_from(const std::filesystem::path& file);

/// What a mutation draws on: tokens of the format, and other inputs to take parts from.
struct Material {
    std::span<const std::string> tokens;
    std::span<const std::string> others;
};

/// One small change: of bytes, or of a whole word, number or quoted text, so that many results
/// still make sense to a reader that checks structure first.
void mutate(std::string& bytes, const Material& material, Dice& dice);

} // namespace throwline::fuzz
