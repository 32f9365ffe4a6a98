#pragma once

#include "catalogue/catalogue.h"

#include <filesystem>
#include <gtest/gtest.h>
#include <string>

namespace throwline::catalogue {

inline std::filesystem::path source_tables() {
    return std::filesystem::path{THROWLINE_SOURCE_DIR} / "lensdata";
}

/// All errors, one a line, to show when something that should load does not.
inline std::string lines_of(const Errors& errors) {
    std::string lines;
    for (const Error& error : errors) {
        lines += text_of(error) + "\n";
    }
    return lines;
}

/// The tables of the source tree; empty, with a failure noted, when they do not load.
inline Catalogue shipped_catalogue() {
    Checked<Catalogue> loaded = load_catalogue(source_tables());
    EXPECT_TRUE(loaded) << (loaded ? "" : lines_of(loaded.error()));
    return loaded ? std::move(*loaded) : Catalogue{};
}

} // namespace throwline::catalogue
