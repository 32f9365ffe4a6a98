#pragma once

#include <string>

namespace throwline::plan {

/// What stands under an `extra` key: JSON text kept as it came and written back.
struct Extra {
    std::string json;

    bool operator==(const Extra&) const = default;
};

} // namespace throwline::plan
