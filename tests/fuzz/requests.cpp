#include <array>
#include <map>
#include <nlohmann/json.hpp>

#include "desk/desk.h"
#include "fuzz/targets.h"

namespace furnish::fuzz {
namespace {
using Json = nlohmann::ordered_json;

/// A salon of two texts.
class Texts final : public desk::Salon {
 public:
  std::map<desk::FileId, std::string> files{
      {{"pet", "rex"}, "[pet]\nname = \"Rex\"  # the first\n[[alert]]\ntext = \"shy\"\n"},
      {{"visit", "rex/2026-11-24"}, "date = 2026-11-24\n"}};

  Json facts() override { return Json::object(); }
  Json find(std::string_view words, std::size_t) override {
    return {{"pets", {std::string(words)}}};
  }
  Json day(Date date) override { return {{"date", to_iso(date)}}; }
  std::optional<std::string> shown_path(const desk::FileId& file) override {
    return files.contains(file) ? std::optional(file.id) : std::nullopt;
  }
  desk::FileText read(const desk::FileId& file) override { return {files.at(file), {}}; }
  std::vector<std::pair<std::string, std::string>> visits(std::string_view) override { return {}; }
  Json look(const desk::LookOrder&) override { return {{"faults", Json::array()}}; }
  std::string put_away(const desk::FileId&) override { return "it stays"; }
  std::string put_back(const desk::FileId&) override { return "it is not there"; }
  std::vector<std::pair<std::string, std::string>> away(std::string_view) override { return {}; }
  void take_back(const desk::FileId& file) override { files.erase(file); }
  std::string write(const desk::FileId& file, std::string_view text) override {
    hold(files.contains(file), "only what is there is written");
    files[file] = text;
    return {};
  }
  desk::Made create(std::string_view kind, std::string_view name) override {
    const desk::FileId file{std::string(kind), std::string(name)};
    if (!files.try_emplace(file, "").second) return {{}, "it is there"};
    return {file, {}};
  }
  desk::PhotoMade add_photo(std::string_view, std::string_view) override { return {"p.jpg", {}}; }
  desk::Printed print(const std::vector<desk::SheetWanted>&) override { return {"pdf", {}}; }
  desk::Printed print_day(Date, std::string_view) override { return {std::nullopt, "nothing"}; }
  std::optional<std::string> font(std::string_view) override { return std::nullopt; }
};

constexpr std::string_view token = "0123456789abcdef0123456789abcdef";

/// "POST /path\nName: value\n…\n\nbody".
desk::Request request_in(std::string_view bytes) {
  desk::Request out;
  const std::size_t end = std::min(bytes.find("\n\n"), bytes.size());
  std::string_view head = bytes.substr(0, end);
  out.body = bytes.substr(std::min(end + 2, bytes.size()));
  bool first = true;
  while (!head.empty()) {
    const std::string_view line = head.substr(0, head.find('\n'));
    head.remove_prefix(std::min(line.size() + 1, head.size()));
    const std::size_t at = line.find(first ? ' ' : ':');
    const std::string name(line.substr(0, at));
    const std::string value(at < line.size()
                                ? line.substr(std::min(at + (first ? 1 : 2), line.size()))
                                : std::string_view());
    if (first) {
      out.head.method = name;
      out.head.path = value;
    } else {
      out.head.headers.emplace_back(name, value);
    }
    first = false;
  }
  return out;
}

void answered(const desk::Response& response) {
  hold(response.status >= 200 && response.status < 600, "a status");
  hold(response.status != 500, "nothing unforeseen");
  if (response.type == "application/json" && !response.body.empty()) {
    hold(Json::accept(response.body), "an answer in JSON");
  }
}

/// As the page would ask, with a body that it would not send.
void ask(std::string_view bytes) {
  constexpr std::array<std::string_view, 11> names{"start", "find",  "open",   "preview",
                                                   "save",  "draft", "create", "print",
                                                   "day",   "away",  "back"};
  Texts salon;
  desk::Drafts drafts({}, system_disk());
  desk::Desk table(salon, drafts, {"", std::string(token), false});
  table.open_at(1);
  const std::size_t which = static_cast<unsigned char>(bytes.front()) % names.size();
  std::string body(bytes.substr(1));
  // A mark that was given out takes the place of the word.
  const desk::Response open = table.answer(
      {{"POST", "/" + std::string(token) + "/api/open", {}}, R"({"kind":"pet","id":"rex"})"});
  const std::string mark = Json::parse(open.body).at("mark").get<std::string>();
  if (const std::size_t at = body.find("MARK"); at != std::string::npos) body.replace(at, 4, mark);
  answered(table.answer(
      {{"POST", "/" + std::string(token) + "/api/" + std::string(names.at(which)), {}}, body}));
}
}  // namespace

void requests(std::string_view bytes) {
  if (bytes.empty()) return;
  if (bytes.front() != 'P' && bytes.front() != 'G') return ask(bytes);
  const desk::Request request = request_in(bytes);
  const desk::Door door{"127.0.0.1:1", std::string(token), false};
  if (const auto no = refused(request.head, door)) return answered(*no);
  const std::string mine = "/" + std::string(token) + "/";
  hold(request.head.path.starts_with(mine), "who comes in has the token");
  hold(request.head.header("Host") == door.authority, "and calls the desk by its name");
  Texts salon;
  desk::Drafts drafts({}, system_disk());
  desk::Desk table(salon, drafts, {"", std::string(token), false});
  table.open_at(1);
  answered(table.answer(request));
}
}  // namespace furnish::fuzz
