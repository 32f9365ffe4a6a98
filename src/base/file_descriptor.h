#pragma once

#include <string>
#include <string_view>

namespace throwline {

/// An open POSIX file, closed when it goes. Private to the files that read and write.
class FileDescriptor {
  public:
    explicit FileDescriptor(int number) : number_{number} {}
    ~FileDescriptor();
    FileDescriptor(const FileDescriptor&) = delete;
    FileDescriptor& operator=(const FileDescriptor&) = delete;

    bool is_open() const { return number_ >= 0; }
    int number() const { return number_; }
    /// Closes now; false with errno set if the system reports a late error of writing.
    bool close();

  private:
    int number_;
};

/// What the system says about errno: "No such file or directory".
std::string system_reason(int error_number);

/// Writes everything; false with errno set if that fails.
bool write_all(const FileDescriptor& file, std::string_view bytes);

} // namespace throwline
