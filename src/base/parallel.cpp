#include "base/parallel.h"

#include <algorithm>
#include <atomic>
#include <thread>
#include <vector>

namespace throwline {

void parallel_for(std::size_t count, const std::function<void(std::size_t)>& work,
                  const std::stop_token& stop) {
    std::atomic<std::size_t> next{0};
    const auto take = [&] {
        for (std::size_t i = next++; i < count && !stop.stop_requested(); i = next++) {
            work(i);
        }
    };
    const std::size_t cores = std::max(1U, std::thread::hardware_concurrency());
    const std::size_t helpers = std::min(cores, count) - (count > 0 ? 1 : 0);
    std::vector<std::jthread> threads;
    threads.reserve(helpers);
    for (std::size_t i = 0; i < helpers; ++i) {
        threads.emplace_back(take);
    }
    take();
}

} // namespace throwline
