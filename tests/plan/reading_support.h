#pragma once

#include "base/result.h"
#include "plan/read_plan.h"
#include "support/shipped_catalogue.h"

#include <string>
#include <string_view>

namespace throwline::plan::testing {

/// The shipped tables, read once for all cases of this program.
inline const catalogue::Catalogue& tables() {
    static const catalogue::Catalogue kTables = testing_support::shipped_catalogue();
    return kTables;
}

inline Checked<Plan> read(std::string_view json) {
    return read_plan(json, tables(), "plan.json");
}

/// All errors, a line each; empty when the plan was read.
inline std::string errors_of(const Checked<Plan>& plan) {
    std::string text;
    if (!plan) {
        for (const Error& error : plan.error()) {
            text += text_of(error) + "\n";
        }
    }
    return text;
}

/// A room of 6 m by 4 m as a plan's last member, and what else the plan holds.
inline std::string plan_with(const std::string& members) {
    return "{\"format\": 1, \"title\": \"t\",\n" + members
           + ",\n\"room\": {\"outline\": [[0, 0], [6, 0], [6, 4], [0, 4]], \"height\": 3}}";
}

} // namespace throwline::plan::testing
