#pragma once

#include <chrono>
#include <deque>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

#include "desk/drafts.h"
#include "desk/guard.h"
#include "desk/mark.h"
#include "desk/salon.h"
#include "desk/server.h"

namespace furnish::desk {

/// Answers what a page asks: a function of the request, the salon and the texts that were given
/// out. It knows no sockets.
class Desk final : public Answerer {
 public:
  using Json = nlohmann::ordered_json;

  /// Keeps references to both.
  Desk(Salon&, Drafts&, Door);
  /// Once it is known where the server listens.
  void open_at(std::uint16_t port);
  const Door& door() const { return door_; }

  std::optional<Response> refuse(const RequestHead& head) override { return refused(head, door_); }
  Response answer(const Request&) override;

 private:
  struct Kept {
    std::string handle, pdf;
    std::chrono::steady_clock::time_point until;
  };

  Response get(const std::string& path);
  Response post(const std::string& name, const Json& asked);
  Response upload(const Request&);

  Response start();
  Response open(const FileId&);
  Response preview(const Json& asked);
  Response save(const Json& asked);
  Response draft(const Json& asked);
  Response create(const Json& asked);
  Response print(const Json& asked);
  Response move(bool away, const FileId&);
  /// The text that edits were made of; empty if nobody knows it any more.
  std::optional<std::string> text_of_mark(const FileId&, const std::string& mark);
  /// Writes a text and says what the file is now.
  Response written(const FileId&, std::string text, const std::vector<std::string>& lost);

  Salon& salon_;
  Drafts& drafts_;
  Door door_;
  GivenTexts given_;
  std::deque<Kept> kept_;  ///< to be printed
};
}  // namespace furnish::desk
