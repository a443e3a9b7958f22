#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace furnish::desk {

/// What a page asks, before anything of it is believed.
struct RequestHead {
  std::string method;
  std::string path;  ///< unescaped, without a question behind it; neither an end of string in it
  std::vector<std::pair<std::string, std::string>> headers;  ///< in the order they came

  /// How often a header came; names without regard to case.
  std::size_t count(std::string_view name) const;
  /// The first of that name; empty if there is none.
  std::string_view header(std::string_view name) const;
};

struct Request {
  RequestHead head;
  std::string body;
};

/// What is answered. Nothing of a salon's is ever in a header.
struct Response {
  unsigned status = 200;
  std::string type = "application/json";
  std::string body;
  bool stream = false;  ///< it stays open: what happens is told through it
};

/// A refusal in words for people, as the page expects it.
Response refusal(unsigned status, std::string_view why, std::string_view code = {},
                 std::string_view about = {});
}  // namespace furnish::desk
