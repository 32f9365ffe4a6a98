#pragma once

#include <span>
#include <string_view>

/// What is fed with hostile input: by libFuzzer in long campaigns (tests/fuzz/campaign), and by
/// fuzz_share with a fixed number of mutations in every run of the tests.
namespace throwline::fuzz {

/// Each takes any bytes and throws PropertyBroken when the program answers wrongly.

/// A length or an angle: what is shown for it reads back, exactly or to the last digit shown.
void length_input(std::string_view bytes);
/// A JSON text: nothing is accepted that the library of that name refuses, and no number is lost.
void json_input(std::string_view bytes);
/// A plan: what reads also writes, and reads back equal.
void plan_input(std::string_view bytes);
/// A user's own tables: each row that was accepted can be looked up and used.
void catalogue_input(std::string_view bytes);
/// A recce: what reads also writes, and reads back equal.
void recce_input(std::string_view bytes);

struct Target {
    /// Also of its dictionary here and of its folder in tests/corpus/.
    std::string_view name;
    void (*input)(std::string_view bytes);
    /// Mutations in the fixed share, about a second's worth in an optimised build.
    int share;
};

std::span<const Target> all_targets();

} // namespace throwline::fuzz
