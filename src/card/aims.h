#pragma once

#include "edit/thing.h"

#include <string>
#include <vector>

/// What something is aimed at or looks at, in words: a name, or a place.
namespace throwline::card {

/// Names of all that can be aimed at.
std::vector<std::string> aimable(const plan::Plan& plan);

/// A name, a place "across, up the page, height", or `none`.
std::string aim_text(const plan::Aim& aim, UnitSystem units, const std::string& none);
/// Returns what is wrong with the text. An empty text, or `none`, aims at nothing; `self` cannot be
/// aimed at.
std::string put_aim(plan::Aim& aim, const std::string& text, const edit::Context& context,
                    const std::string& none, const std::string& self);

/// A name, an angle anticlockwise from right across the page, or a place "across, up the page".
std::string facing_text(const plan::Facing& faces, UnitSystem units);
std::string put_facing(plan::Facing& faces, const std::string& text, const edit::Context& context,
                       const std::string& self);

} // namespace throwline::card
