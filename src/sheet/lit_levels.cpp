#include "sheet/lit_levels.h"

#include "base/parallel.h"
#include "photometry/beam_model.h"
#include "stage/light_at.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace throwline::sheet {

namespace {

/// Cells each way between those that are always worked out.
constexpr int kCoarse = 4;
/// Points that one thread takes at a time.
constexpr std::size_t kPiece = 1024;
/// Four corners are even when they differ by less than this share of the higher of the highest and
/// of a sixteenth of what the stop asks for: half a step of an eight bit picture or so.
constexpr double kEven = 0.12;
constexpr double kDark = 1.0 / 16.0;
/// What one lamp gives counts from this share of what the stop asks for.
constexpr double kNothing = 1.0 / 2048.0;
/// Facets of a round body turn by up to 22.5 degrees and are shaded as one.
constexpr double kSameFace = 0.9;
/// Corners this far off the plane of a surface lie on another; bodies are round.
constexpr double kOffPlane_m = 0.03;
/// Points are lifted off their surfaces by this, so that these are not in their way.
constexpr double kLift_m = 0.0005;

class Filler {
  public:
    Filler(const stage::Stage& stage, const FrameSurfaces& surfaces, int every, double needed_lx)
        : stage_{stage}, surfaces_{surfaces}, needed_lx_{needed_lx} {
        levels_.every = every;
        levels_.columns = (surfaces.columns + every - 1) / every;
        levels_.rows = (surfaces.rows + every - 1) / every;
        levels_.levels_lx.assign(static_cast<std::size_t>(levels_.columns)
                                     * static_cast<std::size_t>(levels_.rows),
                                 0.0);
    }

    LitLevels fill(const std::stop_token& stop) {
        std::vector<std::size_t> coarse;
        for (int row = 0; row < levels_.rows; row += kCoarse) {
            for (int column = 0; column < levels_.columns; column += kCoarse) {
                coarse.push_back(index(column, row));
            }
        }
        work_out(coarse, stop);
        if (!stop.stop_requested()) {
            work_out(filled_in(), stop);
        }
        return std::move(levels_);
    }

  private:
    std::size_t index(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(levels_.columns)
               + static_cast<std::size_t>(column);
    }
    const FrameSurface& surface(int column, int row) const {
        return surfaces_.at(column * levels_.every, row * levels_.every);
    }
    const FrameSurface& surface(std::size_t cell) const {
        const auto columns = static_cast<std::size_t>(levels_.columns);
        return surface(static_cast<int>(cell % columns), static_cast<int>(cell / columns));
    }

    /// Levels of all lamps at some cells.
    void work_out(const std::vector<std::size_t>& cells, const std::stop_token& stop) {
        const std::size_t pieces = (cells.size() + kPiece - 1) / kPiece;
        const auto light = [&](std::size_t piece) {
            const std::size_t begin = piece * kPiece;
            const std::size_t end = std::min(begin + kPiece, cells.size());
            std::vector<std::size_t> lit;
            std::vector<Vec3> points;
            std::vector<Vec3> normals;
            for (std::size_t i = begin; i < end; ++i) {
                const FrameSurface& here = surface(cells[i]);
                if (here.owner >= 0) {
                    lit.push_back(cells[i]);
                    points.push_back(lifted(here));
                    normals.push_back(here.normal);
                }
            }
            for (std::size_t lamp = 0; lamp < stage_.lamps.size() && !points.empty(); ++lamp) {
                if (stage_.lamps[lamp].beam.peak_cd <= 0.0) {
                    continue;
                }
                const auto sent = stage::levels_from(stage_, static_cast<int>(lamp), points,
                                                     normals, kNothing * needed_lx_);
                for (std::size_t i = 0; i < sent.size(); ++i) {
                    levels_.levels_lx[lit[i]] += sent[i];
                }
            }
        };
        parallel_for(pieces, light, stop);
    }

    bool is_one_surface(const FrameSurface& a, const FrameSurface& b) const {
        return a.solid == b.solid && a.normal.dot(b.normal) > kSameFace
               && std::abs(a.normal.dot(b.point - a.point)) < kOffPlane_m;
    }

    /// The corners of the coarse square around a cell, from the top left, when all is even there.
    struct Square {
        std::array<double, 4> levels{};
        std::array<const FrameSurface*, 4> surfaces{};
        bool even = false;
    };
    Square square_at(int column, int row) const {
        Square square;
        const int right = std::min(column + kCoarse, (levels_.columns - 1) / kCoarse * kCoarse);
        const int low = std::min(row + kCoarse, (levels_.rows - 1) / kCoarse * kCoarse);
        std::size_t corner = 0;
        for (const int r : {row, low}) {
            for (const int c : {column, right}) {
                square.levels[corner] = levels_.levels_lx[index(c, r)];
                square.surfaces[corner] = &surface(c, r);
                ++corner;
            }
        }
        const auto [least, most] = std::minmax_element(square.levels.begin(), square.levels.end());
        square.even = *most - *least <= kEven * std::max(*most, kDark * needed_lx_);
        return square;
    }

    /// Fills in what lies evenly between corners; tells the cells that must be worked out.
    std::vector<std::size_t> filled_in() {
        std::vector<std::size_t> open;
        for (int row = 0; row < levels_.rows; row += kCoarse) {
            for (int column = 0; column < levels_.columns; column += kCoarse) {
                fill_square(square_at(column, row), column, row, open);
            }
        }
        return open;
    }
    void fill_square(const Square& square, int left, int top, std::vector<std::size_t>& open) {
        for (int row = top; row < std::min(top + kCoarse, levels_.rows); ++row) {
            for (int column = left; column < std::min(left + kCoarse, levels_.columns); ++column) {
                if (row == top && column == left) {
                    continue;
                }
                const FrameSurface& here = surface(column, row);
                const bool on_corners = std::all_of(
                    square.surfaces.begin(), square.surfaces.end(),
                    [&](const FrameSurface* corner) { return is_one_surface(here, *corner); });
                if (square.even && on_corners) {
                    const double x = static_cast<double>(column - left) / kCoarse;
                    const double y = static_cast<double>(row - top) / kCoarse;
                    levels_.levels_lx[index(column, row)] =
                        (1.0 - y) * ((1.0 - x) * square.levels[0] + x * square.levels[1])
                        + y * ((1.0 - x) * square.levels[2] + x * square.levels[3]);
                } else {
                    open.push_back(index(column, row));
                }
            }
        }
    }

    const stage::Stage& stage_;
    const FrameSurfaces& surfaces_;
    double needed_lx_;
    LitLevels levels_;
};

double area_of(const stage::Mesh& mesh) {
    double doubled_m2 = 0.0;
    for (const auto& [a, b, c] : mesh.triangles) {
        const Vec3& corner = mesh.vertices[a];
        doubled_m2 += (mesh.vertices[b] - corner).cross(mesh.vertices[c] - corner).norm();
    }
    return doubled_m2 / 2.0;
}

} // namespace

Vec3 lifted(const FrameSurface& surface) {
    return surface.point + kLift_m * surface.normal;
}

LitLevels levels_over_frame(const stage::Stage& stage, const FrameSurfaces& surfaces, int every,
                            double needed_lx, const std::stop_token& stop) {
    return Filler{stage, surfaces, every, needed_lx}.fill(stop);
}

double bounced_level_lx(const stage::Stage& stage) {
    double area_m2 = 0.0;
    double reflecting_m2 = 0.0;
    for (const stage::Solid& solid : stage.solids) {
        if (solid.kind == stage::OwnerKind::room) {
            const double part_m2 = area_of(solid.mesh);
            area_m2 += part_m2;
            reflecting_m2 += part_m2 * solid.reflectance;
        }
    }
    double flux_lm = 0.0;
    for (const stage::PlacedLamp& lamp : stage.lamps) {
        flux_lm += lamp.beam.peak_cd > 0.0 ? photometry::flux_lm(lamp.beam) : 0.0;
    }
    const double absorbing_m2 = area_m2 - reflecting_m2;
    return absorbing_m2 > 0.0 ? flux_lm * reflecting_m2 / (area_m2 * absorbing_m2) : 0.0;
}

} // namespace throwline::sheet
