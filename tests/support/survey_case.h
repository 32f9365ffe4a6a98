#pragma once

#include "survey/network.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::survey {

/// A network written down as a room is measured.
class SurveyCase {
  public:
    explicit SurveyCase(int outline) {
        network.outline = outline;
        network.points = outline;
    }

    /// Numbers of points count from 1, as on the sketch.
    SurveyCase& tape(int from, int to, double length_m, double sigma_m = 0.003) {
        return observe(Distance{from - 1, to - 1}, length_m, sigma_m);
    }
    SurveyCase& square(int corner, double sigma_deg = 0.5) {
        const int corners = network.outline;
        observe(Corner{corner % corners, corner - 1, (corner + corners - 2) % corners},
                std::numbers::pi / 2.0, sigma_deg * std::numbers::pi / 180.0);
        network.observations.back().assumed = true;
        return *this;
    }
    SurveyCase& along(int point, int from, int to, double length_m, double sigma_m = 0.003) {
        return observe(Along{point - 1, from - 1, to - 1}, length_m, sigma_m);
    }
    SurveyCase& offset(int point, int from, int to, double length_m, double sigma_m = 0.003) {
        return observe(Offset{point - 1, from - 1, to - 1}, length_m, sigma_m);
    }
    /// The default precision of a tape: 2 mm and half a millimetre a metre.
    SurveyCase& read(int from, int to, double length_m) {
        return tape(from, to, length_m, std::hypot(0.002, 0.0005 * length_m));
    }

    Network network;

  private:
    SurveyCase& observe(Sight sight, double value, double sigma) {
        const auto most = [this](int point) {
            network.points = std::max(network.points, point + 1);
        };
        if (const auto* tape_sight = std::get_if<Distance>(&sight)) {
            most(tape_sight->from);
            most(tape_sight->to);
        } else if (const auto* along_sight = std::get_if<Along>(&sight)) {
            most(along_sight->point);
        } else if (const auto* offset_sight = std::get_if<Offset>(&sight)) {
            most(offset_sight->point);
        }
        network.observations.push_back({sight, value, sigma, false});
        return *this;
    }
};

} // namespace throwline::survey
