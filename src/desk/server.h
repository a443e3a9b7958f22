#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "desk/request.h"

namespace furnish::desk {

/// Who answers what the server was asked. Called by the one thread that runs the server.
class Answerer {
 public:
  virtual ~Answerer() = default;
  /// Why a request is not even read; empty: it is.
  virtual std::optional<Response> refuse(const RequestHead&) = 0;
  virtual Response answer(const Request&) = 0;
};

/// An HTTP server of this computer alone (127.0.0.1, a port that is free), in one thread: it works
/// only while run() is called. So many connections at once, and each closes if nothing comes for a
/// while, that a page that sends halves of requests keeps nobody else out.
class Server {
 public:
  static constexpr std::size_t most_streams = 8;

  /// Null if no port can be had.
  static std::unique_ptr<Server> open(Answerer&);
  ~Server();
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  std::uint16_t port() const;
  /// Readable whenever there is work for run(), for poll().
  int descriptor() const;
  /// After how long there is work in any case.
  std::optional<std::chrono::milliseconds> timeout() const;
  /// Does what there is to do, without waiting.
  void run();

  /// Tells every open stream; `event` is a line "event: changed" with its data, or a comment.
  void tell(std::string_view event);
  /// Streams that are open: pages that somebody looks at.
  std::size_t streams() const;

 private:
  struct Parts;
  explicit Server(std::unique_ptr<Parts>);
  std::unique_ptr<Parts> parts_;
};
}  // namespace furnish::desk
