#pragma once

#include "catalogue/catalogue.h"

#include <stdexcept>

namespace throwline::testing_support {

/// The shipped tables, read anew; a fault in them fails the test that asks.
inline catalogue::Catalogue shipped_catalogue() {
    auto loaded = catalogue::load_catalogue(THROWLINE_SOURCE_DIR "/lensdata");
    if (!loaded) {
        throw std::runtime_error{text_of(loaded.error().front())};
    }
    return *loaded;
}

} // namespace throwline::testing_support
