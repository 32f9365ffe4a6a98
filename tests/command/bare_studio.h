#pragma once

#include <string>

namespace throwline::command_test {

/// A room with two lamps, 3000 W, on a breaker of so many amperes at 230 V. `more` stands behind
/// the lamps, such as ", \"accepted\": [...]".
inline std::string bare_studio(int breaker_amps, const std::string& more = {}) {
    return R"({
  "format": 1, "title": "Bare studio", "units": "metric",
  "room": { "outline": [["0 m", "0 m"], ["8 m", "0 m"], ["8 m", "6 m"], ["0 m", "6 m"]],
            "height": "4 m" },
  "circuits": [ { "id": "C1", "volts": 230, "breaker_amps": )"
           + std::to_string(breaker_amps) + R"(, "outlets": [["1 m", "1.5 m"]] } ],
  "lamps": [
    { "id": "1", "instrument": "Fresnel 2 kW", "stand": ["2 m", "2 m"], "height": "2.4 m",
      "aim": ["4 m", "3 m", "0 m"], "role": "background", "circuit": "C1" },
    { "id": "2", "instrument": "Fresnel 1 kW", "stand": ["6 m", "2 m"], "height": "2.4 m",
      "aim": ["4 m", "3 m", "0 m"], "role": "background", "circuit": "C1" } ])"
           + more + "\n}\n";
}

} // namespace throwline::command_test
