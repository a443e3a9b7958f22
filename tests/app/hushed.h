#pragma once

#include <fcntl.h>
#include <unistd.h>

#include <cstdio>
#include <string>

namespace furnish::test {

/// All that a run in this program says goes to files meanwhile.
class Hushed {
 public:
  Hushed(const std::string& out, const std::string& err)
      : out_(STDOUT_FILENO, out), err_(STDERR_FILENO, err) {}
  /// Both to one file.
  explicit Hushed(const std::string& path) : Hushed(path, path) {}

 private:
  class Turned {
   public:
    Turned(int number, const std::string& path) : number_(number), before_(::dup(number)) {
      std::fflush(nullptr);
      const int file = ::open(path.c_str(), O_RDWR | O_CREAT | O_APPEND, 0600);
      ::dup2(file, number_);
      ::close(file);
    }
    ~Turned() {
      std::fflush(nullptr);
      ::dup2(before_, number_);
      ::close(before_);
    }
    Turned(const Turned&) = delete;
    Turned& operator=(const Turned&) = delete;

   private:
    int number_, before_;
  };
  Turned out_, err_;
};
}  // namespace furnish::test
