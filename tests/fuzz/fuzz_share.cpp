#include "fuzz/mutation.h"
#include "fuzz/targets.h"

#include <algorithm>
#include <exception>
#include <fmt/format.h>
#include <fstream>
#include <iostream>
#include <iterator>

/// The fixed share of fuzzing that every run of the tests does: each file of a target's corpus,
/// then a fixed number of mutations of them.
///     fuzz_share TARGET [KEEP]
/// With KEEP each input is written to that file before it is tried, to find one that kills the
/// program. Demo plans are part of the corpus of the plan target.
namespace {

namespace fs = std::filesystem;
using namespace throwline::fuzz;

/// Mutations of mutations reach further than single ones; more of them rarely leave anything whole.
constexpr std::size_t kMostChanges = 4;

std::string bytes_of(const fs::path& file) {
    std::ifstream in{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

std::vector<fs::path> files_in(const fs::path& folder) {
    std::vector<fs::path> files;
    for (const fs::directory_entry& entry : fs::directory_iterator{folder}) {
        if (entry.is_regular_file()) {
            files.push_back(entry.path());
        }
    }
    // A folder has no order of its own.
    std::sort(files.begin(), files.end());
    return files;
}

std::vector<fs::path> corpus_of(const Target& target) {
    const fs::path source = THROWLINE_SOURCE_DIR;
    std::vector<fs::path> files = files_in(source / "tests/corpus" / target.name);
    if (target.name == "plan") {
        for (const fs::path& file : files_in(source / "demo")) {
            if (file.extension() == ".json") {
                files.push_back(file);
            }
        }
    }
    return files;
}

/// Whether the target took it as it should.
bool holds(const Target& target, const std::string& bytes, const std::string& what,
           const fs::path& keep) {
    if (!keep.empty()) {
        std::ofstream{keep, std::ios::binary} << bytes;
    }
    try {
        target.input(bytes);
        return true;
    } catch (const std::exception& fault) {
        const std::string file = fmt::format("{}-broken", target.name);
        std::ofstream{file, std::ios::binary} << bytes;
        std::cerr << fmt::format("{}: {}; the input is in {}\n", what, fault.what(),
                                 fs::absolute(file).string());
        return false;
    }
}

bool share_holds(const Target& target, const fs::path& keep) {
    std::vector<std::string> corpus;
    for (const fs::path& file : corpus_of(target)) {
        corpus.push_back(bytes_of(file));
        if (!holds(target, corpus.back(), file.string(), keep)) {
            return false;
        }
    }
    const std::vector<std::string> tokens = dictionary_from(
        fs::path{THROWLINE_SOURCE_DIR} / "tests/fuzz" / fmt::format("{}.dict", target.name));
    if (corpus.empty() || tokens.empty()) {
        std::cerr << fmt::format("{}: the corpus or the dictionary is empty\n", target.name);
        return false;
    }
    for (int i = 0; i < target.share; ++i) {
        Dice dice{static_cast<std::uint64_t>(i)};
        std::string bytes = corpus[dice.roll(corpus.size())];
        for (std::size_t left = 1 + dice.roll(kMostChanges); left > 0; --left) {
            mutate(bytes, {tokens, corpus}, dice);
        }
        if (!holds(target, bytes, fmt::format("mutation {}", i), keep)) {
            return false;
        }
    }
    std::cout << fmt::format("{}: {} files and {} mutations\n", target.name, corpus.size(),
                             target.share);
    return true;
}

} // namespace

int main(int argc, char** argv) {
    const std::string name = argc > 1 ? argv[1] : "";
    for (const Target& target : all_targets()) {
        if (target.name == name) {
            return share_holds(target, argc > 2 ? argv[2] : "") ? 0 : 1;
        }
    }
    std::cerr << "usage: fuzz_share TARGET [KEEP]\n";
    return 2;
}
