#pragma once

#include "survey/network.h"

#include <random>

namespace throwline::survey {

/// A room made up by chance and read with a tape that errs as a tape does.
struct SimulatedRoom {
    /// In the datum of `network`.
    std::vector<Vec2> truth;
    /// What each observation would have read without any error; of a square corner a right angle.
    std::vector<double> without_error;
    Network network;
};

using Chance = std::mt19937_64;

/// From off-square rectangles over L, T, bays and splayed walls to any simple outline of 4 to 12
/// corners: all walls are read, most diagonals that can be seen, some floor marks, and some corners
/// are believed to be square. Standard errors are those of the default precision, rounded to
/// millimetres as one reads.
SimulatedRoom simulated_room(Chance& chance);

/// Reads one more distance between two points.
void read_distance(SimulatedRoom& room, int from, int to, Chance& chance);

/// Makes a reading wrong as people do: a foot or 100 mm out, two digits swapped, or by anything
/// from 25 mm to 1 m. Returns by how much.
double make_wrong(SimulatedRoom& room, std::size_t observation, Chance& chance);

} // namespace throwline::survey
