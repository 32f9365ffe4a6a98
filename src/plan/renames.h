#pragma once

#include "plan/plan.h"

#include <string>
#include <vector>

namespace throwline::plan {

enum class ThingKind;

/// Something that is equal in two plans but for what it is called.
struct Rename {
    ThingKind kind;
    std::string before;
    std::string now;
};

/// What was renamed between two plans.
struct Renames {
    std::vector<Rename> list;
    /// The older plan with the newer names, wherever they stand.
    Plan renamed;
};
Renames renames_between(const Plan& old, const Plan& now);

/// Gives the thing of that id another name, and all that mentions it. Nothing when there is none.
void rename(Plan& plan, const Id<Opening>& id, const std::string& name);
void rename(Plan& plan, const Id<Pipe>& id, const std::string& name);
void rename(Plan& plan, const Id<Circuit>& id, const std::string& name);
void rename(Plan& plan, const Id<Scenery>& id, const std::string& name);
void rename(Plan& plan, const Id<Person>& id, const std::string& name);
void rename(Plan& plan, const Id<Camera>& id, const std::string& name);
void rename(Plan& plan, const Id<Beat>& id, const std::string& name);
void rename(Plan& plan, const Id<Boom>& id, const std::string& name);
void rename(Plan& plan, const Id<Lamp>& id, const std::string& name);
void rename(Plan& plan, const Id<Shot>& id, const std::string& name);

} // namespace throwline::plan
