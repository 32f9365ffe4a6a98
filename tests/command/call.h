#pragma once

#include <cstddef>
#include <string>
#include <vector>

/// The command line called in this process, with the shipped tables of the tree.
namespace throwline::command_test {

struct Called {
    int code = -1;
    std::string out;
    std::string err;
};

/// `in` is what stands on standard input.
Called call(const std::vector<std::string>& arguments, const std::string& in = {});

/// A whole command line, split at spaces; double quotes keep words together and \" is a quote.
std::vector<std::string> split(const std::string& line);

/// What `out` holds at a JSON pointer. A failed test when it is not JSON, or holds something else.
double number_at(const Called& called, const std::string& pointer);
std::string text_at(const Called& called, const std::string& pointer);
bool is_null_at(const Called& called, const std::string& pointer);
std::size_t size_at(const Called& called, const std::string& pointer);
/// Keys of the object there, in their order.
std::vector<std::string> keys_at(const Called& called, const std::string& pointer);

/// A folder that is removed at the end, as the working folder until then.
class WorkingFolder {
  public:
    WorkingFolder();
    ~WorkingFolder();
    WorkingFolder(const WorkingFolder&) = delete;
    WorkingFolder& operator=(const WorkingFolder&) = delete;

    const std::string& path() const { return path_; }
    /// Names of the files in it, sorted.
    std::vector<std::string> files() const;

  private:
    std::string path_;
    std::string before_;
};

void write(const std::string& path, const std::string& text);
std::string read(const std::string& path);

} // namespace throwline::command_test
