#include "desk/server.h"

#include <arpa/inet.h>
#include <microhttpd.h>
#include <netinet/in.h>

#include <array>
#include <cctype>
#include <cstdlib>
#include <cstring>
#include <list>
#include <utility>

#include "desk/guard.h"

namespace furnish::desk {
namespace {
constexpr unsigned most_connections = 48, seconds_of_silence = 10;
constexpr std::size_t memory_of_a_head = std::size_t{32} * 1024, stream_piece = 4096;

/// Who is refused is heard out first, within these bounds, and the rest thrown away: what is closed
/// while the other end still sends is reset by the system, and the answer lost with it.
constexpr std::size_t most_heard_out = 4 * most_upload;
constexpr std::chrono::seconds heard_out_for{10};

/// What a page may load and do: its own files and nothing else. A picture of a sheet has its style
/// in itself, and may do nothing at all.
constexpr const char* page_policy =
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; "
    "connect-src 'self'; font-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors "
    "'none'";
constexpr std::array<std::pair<const char*, const char*>, 6> headers{
    {{"Content-Security-Policy", page_policy},
     {"X-Content-Type-Options", "nosniff"},
     {"Referrer-Policy", "no-referrer"},
     {"Cross-Origin-Resource-Policy", "same-origin"},
     {"Cross-Origin-Opener-Policy", "same-origin"},
     {"Cache-Control", "no-store"}}};

/// A request as it comes in.
struct Incoming {
  Request request;
  std::optional<Response> refused{};  ///< to be said once its body is past
  std::chrono::steady_clock::time_point until{};
};

/// A page that listens. A sleeping one has nothing to be told.
struct Stream {
  MHD_Connection* connection;
  std::string pending;
  bool asleep = false;
  std::list<Stream>* all;
};

::ssize_t read_stream(void* self, std::uint64_t, char* to, std::size_t most) {
  Stream& stream = *static_cast<Stream*>(self);
  const std::size_t size = std::min(most, stream.pending.size());
  std::memcpy(to, stream.pending.data(), size);
  stream.pending.erase(0, size);
  if (size == 0) {
    stream.asleep = true;
    MHD_suspend_connection(stream.connection);
  }
  return static_cast<::ssize_t>(size);
}

void end_stream(void* self) {
  const Stream* const stream = static_cast<Stream*>(self);
  stream->all->remove_if([&](const Stream& one) { return &one == stream; });
}

/// %41 is A; an end of string, a slash and an end of line stay written out, and so meet no name.
std::size_t unescape(void*, MHD_Connection*, char* text) {
  char* to = text;
  for (const char* from = text; *from != '\0'; ++from) {
    const bool escaped = *from == '%' && std::isxdigit(static_cast<unsigned char>(from[1])) != 0 &&
                         std::isxdigit(static_cast<unsigned char>(from[2])) != 0;
    const std::array<char, 3> digits{escaped ? from[1] : '\0', escaped ? from[2] : '\0', '\0'};
    const auto value = escaped ? std::strtoul(digits.data(), nullptr, 16) : 0;
    if (value >= 0x20 && value != '/' && value != 0x7F) {
      *to++ = static_cast<char>(value);
      from += 2;
    } else {
      *to++ = *from;
    }
  }
  *to = '\0';
  return static_cast<std::size_t>(to - text);
}

MHD_Result note_header(void* into, MHD_ValueKind, const char* name, const char* value) {
  static_cast<RequestHead*>(into)->headers.emplace_back(name, value == nullptr ? "" : value);
  return MHD_YES;
}

MHD_Result send(MHD_Connection* connection, MHD_Response* response, unsigned status,
                const std::string& type) {
  if (response == nullptr) return MHD_NO;
  MHD_add_response_header(response, "Content-Type", type.c_str());
  for (const auto& [name, value] : headers) MHD_add_response_header(response, name, value);
  if (type == "application/pdf") {
    // What the browser would call it if it were kept; the pet's name is nobody's business there.
    MHD_add_response_header(response, "Content-Disposition", "inline; filename=\"sheet.pdf\"");
  }
  const MHD_Result queued = MHD_queue_response(connection, status, response);
  MHD_destroy_response(response);
  return queued;
}

MHD_Result send(MHD_Connection* connection, const Response& response, bool closes = false) {
  // The library copies it; it writes nothing through the pointer that its interface lacks const
  // for.
  MHD_Response* const made = MHD_create_response_from_buffer(
      response.body.size(), const_cast<char*>(response.body.data()), MHD_RESPMEM_MUST_COPY);
  if (made != nullptr && closes) MHD_add_response_header(made, "Connection", "close");
  return send(connection, made, response.status, response.type);
}
}  // namespace

struct Server::Parts {
  explicit Parts(Answerer& who) : answerer(who) {}

  static MHD_Result take(void* self, MHD_Connection* connection, const char* path,
                         const char* method, const char*, const char* bytes, std::size_t* size,
                         void** state) {
    Parts& parts = *static_cast<Parts*>(self);
    if (*state == nullptr) return parts.begin(connection, path, method, state);
    Incoming& incoming = *static_cast<Incoming*>(*state);
    if (*size > 0) {
      if (incoming.refused) {
        if (std::chrono::steady_clock::now() > incoming.until) return MHD_NO;
      } else {
        // The head's length was held to its bound; this holds the library to the head.
        if (incoming.request.body.size() + *size > most_upload) return MHD_NO;
        incoming.request.body.append(bytes, *size);
      }
      *size = 0;
      return MHD_YES;
    }
    if (incoming.refused) return send(connection, *incoming.refused, true);
    const Response response = parts.answerer.answer(incoming.request);
    return response.stream ? parts.open_stream(connection) : send(connection, response);
  }

  static void done(void*, MHD_Connection*, void** state, MHD_RequestTerminationCode) {
    delete static_cast<Incoming*>(*state);
    *state = nullptr;
  }

  MHD_Result begin(MHD_Connection* connection, const char* path, const char* method, void** state) {
    auto* const incoming = new Incoming;
    *state = incoming;
    incoming->request.head.path = path;
    incoming->request.head.method = method;
    MHD_get_connection_values(connection, MHD_HEADER_KIND, note_header, &incoming->request.head);
    auto refused = answerer.refuse(incoming->request.head);
    if (!refused) return MHD_YES;
    const auto length = body_length(incoming->request.head);
    if (!length || *length == 0 || *length > most_heard_out)
      return send(connection, *refused, true);
    incoming->refused = std::move(refused);
    incoming->until = std::chrono::steady_clock::now() + heard_out_for;
    return MHD_YES;
  }

  MHD_Result open_stream(MHD_Connection* connection) {
    if (streams.size() >= most_streams) {
      return send(connection, refusal(429, "so many pages are open already"));
    }
    streams.push_back({connection, ": here\n\n", false, &streams});
    MHD_Response* const response = MHD_create_response_from_callback(
        MHD_SIZE_UNKNOWN, stream_piece, read_stream, &streams.back(), end_stream);
    return send(connection, response, 200, "text/event-stream");
  }

  Answerer& answerer;
  MHD_Daemon* daemon = nullptr;
  std::list<Stream> streams;
  bool woken = false;  ///< a stream was, while the daemon ran
};

Server::Server(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}

std::unique_ptr<Server> Server::open(Answerer& answerer) {
  auto parts = std::make_unique<Parts>(answerer);
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  parts->daemon = MHD_start_daemon(
      MHD_USE_EPOLL | MHD_ALLOW_SUSPEND_RESUME, 0, nullptr, nullptr, &Parts::take, parts.get(),
      MHD_OPTION_SOCK_ADDR, &address, MHD_OPTION_CONNECTION_LIMIT, most_connections,
      MHD_OPTION_CONNECTION_MEMORY_LIMIT, memory_of_a_head, MHD_OPTION_CONNECTION_TIMEOUT,
      seconds_of_silence, MHD_OPTION_STRICT_FOR_CLIENT, 1, MHD_OPTION_UNESCAPE_CALLBACK, unescape,
      nullptr, MHD_OPTION_NOTIFY_COMPLETED, &Parts::done, nullptr, MHD_OPTION_END);
  if (parts->daemon == nullptr) return nullptr;
  return std::unique_ptr<Server>(new Server(std::move(parts)));
}

Server::~Server() {
  // A suspended connection keeps the daemon from stopping.
  for (Stream& stream : parts_->streams) {
    if (std::exchange(stream.asleep, false)) MHD_resume_connection(stream.connection);
  }
  MHD_stop_daemon(parts_->daemon);
}

std::uint16_t Server::port() const {
  return MHD_get_daemon_info(parts_->daemon, MHD_DAEMON_INFO_BIND_PORT)->port;
}

int Server::descriptor() const {
  return MHD_get_daemon_info(parts_->daemon, MHD_DAEMON_INFO_EPOLL_FD)->epoll_fd;
}

std::optional<std::chrono::milliseconds> Server::timeout() const {
  MHD_UNSIGNED_LONG_LONG milliseconds = 0;
  if (MHD_get_timeout(parts_->daemon, &milliseconds) != MHD_YES) return std::nullopt;
  return std::chrono::milliseconds(milliseconds);
}

void Server::run() {
  // One that an answer woke is looked at in the next round only.
  do {
    parts_->woken = false;
    MHD_run(parts_->daemon);
  } while (parts_->woken);
}

void Server::tell(std::string_view event) {
  for (Stream& stream : parts_->streams) {
    stream.pending += event;
    if (!std::exchange(stream.asleep, false)) continue;
    parts_->woken = true;
    MHD_resume_connection(stream.connection);
  }
}

std::size_t Server::streams() const {
  return parts_->streams.size();
}
}  // namespace furnish::desk
