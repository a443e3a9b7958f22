#include "spec/client_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

#include "base/encoding.h"
#include "base/text.h"
#include "spec/client_pet.h"
#include "spec/client_words.h"

namespace furnish {
namespace {
/// "sep=;" on the first line, as spreadsheets write it for each other.
std::optional<char> told_separator(std::string_view text) {
  if (!lower_ascii(text.substr(0, 4)).starts_with("sep=") || text.size() < 6) return std::nullopt;
  const bool alone = text[5] == '\n' || text[5] == '\r';
  return alone ? std::optional(text[4]) : std::nullopt;
}

class Reader {
 public:
  Reader(const ReadContext& context, const ClientListRequest& request, const Salon& salon,
         Date today)
      : context_(context), request_(request), salon_(salon), today_(today) {}

  std::optional<ClientList> read(const std::string& path) {
    const FileContent content = context_.files.read_up_to(path, largest_client_list);
    if (!content.bytes) {
      file_ = context_.sources.add(path, {});
      context_.sink.error("unreadable", {file_, {}, {}}, "cannot be read: " + content.fault);
      return std::nullopt;
    }
    DecodedText text = decoded(*content.bytes);
    out_.encoding = text.encoding;
    file_ = context_.sources.add(path, std::move(text.text));
    if (!divide() || !propose() || !settle_dates()) return std::nullopt;
    for (const CsvLine& line : lines_) make(line);
    out_.orders = std::move(orders_);
    return std::move(out_);
  }

 private:
  const SourceText& source() const { return context_.sources.at(file_); }
  SourceSpan span(std::size_t begin, std::size_t end) const {
    return {file_, source().position(begin), source().position(end)};
  }
  SourceSpan span(const CsvCell& cell) const { return span(cell.begin, cell.end); }

  /// Into lines and values.
  bool divide() {
    const std::string_view text = source().text();
    if (text.find('\0') != std::string_view::npos) {
      context_.sink.error("no-list", {file_, {}, {}}, "is no text, so it is no list").hint =
          "export it as CSV, in UTF-8, from the program that wrote it";
      return false;
    }
    const auto told = told_separator(text);
    out_.separator = told ? *told : csv_separator(text);
    CsvList list = parse_csv(text, out_.separator);
    lines_ = std::move(list.lines);
    if (told && !lines_.empty()) lines_.erase(lines_.begin());
    if (lines_.empty()) {
      context_.sink.error("empty", {file_, {}, {}}, "is empty; a list has a pet a line");
      return false;
    }
    for (const CsvFault& fault : list.faults) {
      auto& said = context_.sink.error("list-quotes", span(fault.begin, fault.begin + 1),
                                       std::string(fault.message));
      said.hint = fault.hint;
      if (fault.at != fault.begin) said.notes.emplace_back(span(fault.at, fault.at + 1), "here");
    }
    return true;
  }

  bool propose() {
    const CsvLine& first = lines_.front();
    std::string fault;
    auto columns = propose_columns(first, request_.columns, fault);
    if (!columns) {
      context_.sink.error("no-column", span(first.cells.front()), std::move(fault)).hint =
          "number them from 1, or write what stands above them";
      return false;
    }
    out_.columns = *std::move(columns);
    const bool named = std::ranges::any_of(out_.columns.columns, [](const ClientColumn& one) {
      return one.fact == ClientFact::name && one.pet == 1;
    });
    if (!named) {
      context_.sink
          .error("no-column", span(first.cells.front().begin, first.cells.back().end),
                 "no column is headed as the pet's name")
          .hint = "say which it is: --columns name=1";
      return false;
    }
    if (out_.columns.headed) lines_.erase(lines_.begin());
    out_.lines = lines_.size();
    return true;
  }

  /// In which order each column of dates has them.
  bool settle_dates() {
    bool all = true;
    orders_.resize(out_.columns.columns.size(), DateOrder::day_first);
    for (std::size_t i = 0; i < orders_.size(); ++i) {
      const ClientFact fact = out_.columns.columns[i].fact;
      if (fact != ClientFact::born && fact != ClientFact::rabies) continue;
      std::vector<std::string_view> cells;
      std::vector<const CsvCell*> places;
      for (const CsvLine& line : lines_) {
        if (!line.good || i >= line.cells.size() || blank(line.cells[i].text)) continue;
        cells.push_back(line.cells[i].text);
        places.push_back(&line.cells[i]);
      }
      const DateColumn column =
          request_.dates ? DateColumn{request_.dates} : date_column(cells, today_);
      if (column.order) {
        orders_[i] = *column.order;
      } else {
        all = false;
        report_order(*places[column.one], *places[column.other]);
      }
    }
    return all;
  }

  void report_order(const CsvCell& one, const CsvCell& other) {
    const bool alone = &one == &other;
    auto& fault = context_.sink.error(
        "date-order", span(one),
        alone ? fmt::format("nothing in this column says whether the day or the month of \"{}\" "
                            "stands first",
                            trimmed(one.text))
              : std::string("the dates of this column are not all written in one order"));
    if (!alone) fault.notes.emplace_back(span(other), "this one is of another order");
    fault.hint =
        alone ? "say it: --dates day-first, month-first or year-first; or write them as 2026-11-24"
              : "mend the ones that are wrong, or say the order of all: --dates day-first, "
                "month-first or year-first";
  }

  void make(const CsvLine& line) {
    DiagnosticSink said;
    const bool used = line.good && shape_holds(line, said) && pets_of(line, said);
    context_.sink.take(said);
    if (!used) ++out_.unusable;
  }

  bool shape_holds(const CsvLine& line, DiagnosticSink& said) const {
    const std::size_t columns = out_.columns.columns.size(), cells = line.cells.size();
    for (const CsvCell& cell : line.cells) {
      if (cell.text.find("\uFFFD") == std::string::npos) continue;
      said.error("lost-letter", span(cell),
                 fmt::format("a letter here is lost: it is not {}", out_.encoding))
          .hint = "write it anew, or export the list in UTF-8";
      return false;
    }
    const auto more = std::ranges::find_if(
        line.cells.begin() + static_cast<std::ptrdiff_t>(std::min(columns, cells)),
        line.cells.end(), [](const CsvCell& cell) { return !blank(cell.text); });
    if (more != line.cells.end()) {
      said.error("list-width", span(*more),
                 fmt::format("this line has {} values, and the first has {}", cells, columns))
          .hint = "put a value into quotes where it has the separator in it";
      return false;
    }
    if (cells < columns && cells * 2 < columns) {
      said.warning(
              "list-width", span(line.cells.front()),
              fmt::format("this line has {} of the {} values that the first has", cells, columns))
          .hint = "put a value into quotes where it has the end of a line in it";
    }
    return true;
  }

  bool pets_of(const CsvLine& line, DiagnosticSink& said) {
    ClientLine one{{}, salon_.units == Units::us ? "lb" : "kg", today_};
    for (std::size_t i = 0; i < std::min(line.cells.size(), orders_.size()); ++i) {
      const CsvCell& cell = line.cells[i];
      const ClientFact fact = out_.columns.columns[i].fact;
      const std::string_view text = trimmed(cell.text);
      const bool open = text == "?" && asks_of_dangers(fact);
      if (!open && empty_.contains(plain(text, fact))) continue;
      one.values.push_back(
          {&out_.columns.columns[i], orders_[i], std::string(text), span(cell), open});
    }
    std::vector<ClientPet> made = client_pets(one, request_.whole_names, said);
    if (said.has_errors()) return false;
    if (made.empty()) {
      said.error("no-name", span(line.cells.front()), "this line names no pet").hint =
          "write its name, or take the line out";
      return false;
    }
    for (ClientPet& pet : made) out_.pets.push_back(std::move(pet));
    return true;
  }

  /// That nobody knows is worth a line where somebody may be hurt.
  static bool asks_of_dangers(ClientFact fact) {
    return fact == ClientFact::alert || fact == ClientFact::allergies || fact == ClientFact::health;
  }

  /// What is held against the words that say nothing; those are short, and none is a name.
  static std::string plain(std::string_view text, ClientFact fact) {
    constexpr std::size_t longest = 24;
    const std::string_view seen = trimmed(text);
    if (seen.size() > longest || fact == ClientFact::name) return blank(seen) ? "-" : "a name";
    return blank(seen) ? "-" : plain_letters(seen);
  }

  const ReadContext& context_;
  const ClientListRequest& request_;
  const Salon& salon_;
  Date today_;
  std::uint32_t file_ = SourceSpan::no_file;
  std::vector<CsvLine> lines_;
  std::vector<DateOrder> orders_;
  std::set<std::string> empty_ = nothing_words();
  ClientList out_;
};
}  // namespace

std::optional<ClientList> read_client_list(const ReadContext& context, const std::string& path,
                                           const ClientListRequest& request, const Salon& salon,
                                           Date today) {
  return Reader(context, request, salon, today).read(path);
}
}  // namespace furnish
