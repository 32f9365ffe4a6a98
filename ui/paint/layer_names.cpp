#include "ui/paint/layer_names.h"

namespace throwline::paint {

std::vector<const sheet::Layer*> layers_with_marks(const sheet::Drawing& drawing) {
    std::vector<const sheet::Layer*> layers;
    for (const sheet::Layer& layer : drawing.layers) {
        if (!layer.marks.empty()) {
            layers.push_back(&layer);
        }
    }
    return layers;
}

std::string shown_name(const sheet::Layer& layer) {
    std::string name = layer.name;
    if (!name.empty() && name.front() >= 'a' && name.front() <= 'z') {
        name.front() = static_cast<char>(name.front() - 'a' + 'A');
    }
    return name;
}

} // namespace throwline::paint
