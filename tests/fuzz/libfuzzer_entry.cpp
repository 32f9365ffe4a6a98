#include "fuzz/mutation.h"
#include "fuzz/targets.h"

#include <cstring>

// libFuzzer's interface; THROWLINE_FUZZ_INPUT names the target. Half of the mutations are its own,
// half are ours, which keep words and brackets whole.

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t max_size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    throwline::fuzz::THROWLINE_FUZZ_INPUT({reinterpret_cast<const char*>(data), size});
    return 0;
}

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t max_size, unsigned seed) {
    using namespace throwline::fuzz;
    static const std::vector<std::string> kTokens = dictionary_from(THROWLINE_FUZZ_DICTIONARY);
    Dice dice{seed};
    if (dice.roll(2) == 0) {
        return LLVMFuzzerMutate(data, size, max_size);
    }
    std::string bytes{reinterpret_cast<const char*>(data), size};
    mutate(bytes, {kTokens, {}}, dice);
    const std::size_t kept = std::min(bytes.size(), max_size);
    std::memcpy(data, bytes.data(), kept);
    return kept;
}
