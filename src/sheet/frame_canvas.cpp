#include "sheet/frame_canvas.h"

#include "base/parallel.h"

#include <algorithm>
#include <cmath>

namespace throwline::sheet {

namespace {

const Colour kInk{0.12, 0.14, 0.16};
const Colour kChalk{0.60, 0.59, 0.56};
const Colour kNotDressed{0.84, 0.37, 0.0};

/// How dark a line is: around a thing, and where a surface of it turns.
constexpr double kOutline = 0.92;
constexpr double kCrease = 0.5;
/// Rays that a line of the hatch is wide.
constexpr int kHatchWide = 2;

/// The hatch of what is not dressed, the lines running up to the right.
Colour hatched_over(const FrameCanvas& canvas, const Colour& colour, int column, int row) {
    const bool on_line = (column + row) % canvas.hatch_every < kHatchWide;
    const Colour paler = colour + (1.0 - colour) * canvas.hatch_pales;
    const double ink = canvas.hatch_strength;
    return on_line ? Colour{paler * (1.0 - ink) + kNotDressed * ink} : paler;
}

/// How dark the line is that passes here.
double line_at(const FrameCanvas& canvas, int column, int row) {
    const FrameSurface& here = canvas.surfaces.at(column, row);
    double dark = 0.0;
    for (const auto& [right, down] :
         {std::pair{1, 0}, std::pair{0, 1}, std::pair{-1, 0}, std::pair{0, -1}}) {
        const int c = column + right;
        const int r = row + down;
        if (c < 0 || r < 0 || c >= canvas.surfaces.columns || r >= canvas.surfaces.rows) {
            continue;
        }
        switch (seam_between(canvas.stage, here, canvas.surfaces.at(c, r))) {
        case Seam::none:
            break;
        case Seam::crease:
            dark = std::max(dark, kCrease);
            break;
        case Seam::outline:
            dark = std::max(dark, kOutline);
            break;
        }
    }
    return dark;
}

Colour drawn_over(const FrameCanvas& canvas, Colour colour, int column, int row) {
    if (canvas.surfaces.at(column, row).backing == checks::Backing::undressed) {
        colour = hatched_over(canvas, colour, column, row);
    }
    const double dark = line_at(canvas, column, row);
    const Colour& ink = colour.mean() < canvas.pale_lines_below ? kChalk : kInk;
    return colour * (1.0 - dark) + ink * dark;
}

} // namespace

int hatch_for(int side_px) {
    return std::max(10, kRaysAcross * side_px / 60);
}

Pixels blank_frame(double aspect, int side_px) {
    Pixels pixels;
    const auto other = [&](double share) {
        return std::max(1, static_cast<int>(std::lround(side_px * share)));
    };
    pixels.width = aspect >= 1.0 ? side_px : other(aspect);
    pixels.height = aspect >= 1.0 ? other(1.0 / aspect) : side_px;
    pixels.rgb.resize(3U * static_cast<std::size_t>(pixels.width)
                      * static_cast<std::size_t>(pixels.height));
    return pixels;
}

bool paint_frame(Pixels& pixels, const FrameCanvas& canvas,
                 const std::function<Colour(int column, int row)>& colour_of_ray,
                 const std::stop_token& stop) {
    const auto paint_row = [&](std::size_t row_index) {
        const int row = static_cast<int>(row_index);
        auto out = row_index * 3U * static_cast<std::size_t>(pixels.width);
        for (int pixel = 0; pixel < pixels.width; ++pixel) {
            Colour sum = Colour::Zero();
            for (int down = 0; down < kRaysAcross; ++down) {
                for (int across = 0; across < kRaysAcross; ++across) {
                    const int c = kRaysAcross * pixel + across;
                    const int r = kRaysAcross * row + down;
                    sum += drawn_over(canvas, colour_of_ray(c, r), c, r);
                }
            }
            const Colour mean = sum / (kRaysAcross * kRaysAcross);
            for (int channel = 0; channel < 3; ++channel) {
                pixels.rgb[out++] = static_cast<std::uint8_t>(
                    std::lround(255.0 * std::clamp(mean[channel], 0.0, 1.0)));
            }
        }
    };
    parallel_for(static_cast<std::size_t>(pixels.height), paint_row, stop);
    return !stop.stop_requested();
}

} // namespace throwline::sheet
