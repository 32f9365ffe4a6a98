#pragma once

#include "catalogue/catalogue.h"
#include "checks/check.h"
#include "plan/read_plan.h"

#include <filesystem>
#include <gtest/gtest.h>
#include <memory>
#include <string>

/// The shipped catalogue and the demo productions, as the program reads them.
namespace throwline::support {

inline std::filesystem::path source_folder() {
    return THROWLINE_SOURCE_DIR;
}

inline const catalogue::Catalogue& shipped_catalogue() {
    static const catalogue::Catalogue kCatalogue = [] {
        Checked<catalogue::Catalogue> loaded =
            catalogue::load_catalogue(source_folder() / "lensdata");
        if (!loaded) {
            ADD_FAILURE() << text_of(loaded.error().front());
            return catalogue::Catalogue{};
        }
        return std::move(*loaded);
    }();
    return kCatalogue;
}

/// A plan of demo/ by its file name; a failed test and an empty plan when it cannot be read.
inline plan::Plan demo_plan(const std::string& name) {
    const Checked<plan::Plan> read =
        plan::read_plan_file(source_folder() / "demo" / name, shipped_catalogue());
    if (!read) {
        for (const Error& error : read.error()) {
            ADD_FAILURE() << text_of(error);
        }
        return {};
    }
    return *read;
}

inline checks::Analysis analysis_of(const plan::Plan& plan) {
    return *checks::analyse(std::make_shared<const plan::Plan>(plan), shipped_catalogue());
}

} // namespace throwline::support
