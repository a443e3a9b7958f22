#include "output/attachments.h"

#include <fmt/format.h>
#include <zlib.h>

#include <catch2/catch.hpp>

#include <atomic>
#include <random>
#include <thread>

#include "output/sample_page.h"
#include "output/tool.h"
#include "share.h"

// The files were made by this program and changed with the qpdf program, or put together by hand
// after ISO 32000-1, 7.5.7 and 7.5.8.

namespace furnish::test {
namespace {
std::string pdf_with(Type& type, std::vector<Attachment> files) {
  DiagnosticSink sink;
  const std::vector<Frame> pages{sample_page(type)};
  auto bytes = to_pdf(pages, sample_info(), {{}, std::move(files)}, sink);
  REQUIRE(bytes);
  return *bytes;
}

struct Taken {
  std::vector<Attachment> files;
  std::string code;  ///< of the only fault
};

Taken take(const std::string& bytes, const AttachmentBounds& bounds = {}) {
  DiagnosticSink sink;
  Taken out{attachments_of(bytes, sink, bounds), {}};
  CHECK(sink.all().size() <= 1);
  if (!sink.all().empty()) {
    out.code = sink.all().front().code;
    CHECK(out.files.empty() == (sink.error_count() > 0));
  }
  return out;
}

std::string squeezed(const std::string& bytes) {
  uLongf size = compressBound(bytes.size());
  std::string out(size, '\0');
  REQUIRE(compress2(reinterpret_cast<Bytef*>(out.data()), &size,
                    reinterpret_cast<const Bytef*>(bytes.data()), bytes.size(), 1) == Z_OK);
  out.resize(size);
  return out;
}

/// A PDF whose catalogue lies in an object stream with so many blanks behind it.
std::string with_blanks(std::size_t blanks) {
  const std::string catalogue = "<</Type/Catalog/Pages 2 0 R>>";
  const std::string head = "1 0 2 " + std::to_string(catalogue.size() + 1) + " ";
  const std::string packed =
      squeezed(head + catalogue + " <</Type/Pages/Count 0/Kids[]>>" + std::string(blanks, ' '));
  std::string out = "%PDF-1.7\n";
  const std::size_t third = out.size();
  out += "3 0 obj<</Type/ObjStm/N 2/First " + std::to_string(head.size()) +
         "/Filter/FlateDecode/Length " + std::to_string(packed.size()) + ">>stream\n" + packed +
         "\nendstream endobj\n";
  const std::size_t fourth = out.size();
  std::string table;
  const auto row = [&](char kind, std::size_t value, char index) {
    table += {kind,
              static_cast<char>(value >> 24U),
              static_cast<char>(value >> 16U),
              static_cast<char>(value >> 8U),
              static_cast<char>(value),
              index};
  };
  row(0, 0, 0);
  row(2, 3, 0);
  row(2, 3, 1);
  row(1, third, 0);
  row(1, fourth, 0);
  return out + "4 0 obj<</Type/XRef/Size 5/W[1 4 1]/Root 1 0 R/Length " +
         std::to_string(table.size()) + ">>stream\n" + table + "\nendstream endobj\nstartxref\n" +
         std::to_string(fourth) + "\n%%EOF\n";
}
/// Deflated so that it may stand many times in a row, each ending at a byte.
std::string deflated_piece(const std::string& bytes) {
  z_stream z{};
  REQUIRE(deflateInit2(&z, 9, Z_DEFLATED, -15, 9, Z_DEFAULT_STRATEGY) == Z_OK);
  std::string out(compressBound(bytes.size()) + 64, '\0');
  z.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));
  z.avail_in = static_cast<uInt>(bytes.size());
  z.next_out = reinterpret_cast<Bytef*>(out.data());
  z.avail_out = static_cast<uInt>(out.size());
  REQUIRE(deflate(&z, Z_FULL_FLUSH) == Z_OK);
  out.resize(out.size() - z.avail_out);
  deflateEnd(&z);
  return out;
}
/// A stream of that piece over and over; its end is missing, which is never reached.
std::string over_and_over(const std::string& piece, std::size_t times) {
  std::string out = "\x78\xDA";
  for (std::size_t i = 0; i < times; ++i) out += piece;
  return out;
}

/// A PDF with one attachment that is packed as said.
std::string with_packed(const std::string& packed, const std::string& how) {
  std::string out = "%PDF-1.7\n";
  std::vector<std::size_t> at;
  const auto object = [&](const std::string& text) {
    at.push_back(out.size());
    out += std::to_string(at.size()) + " 0 obj" + text + "endobj\n";
  };
  object("<</Type/Catalog/Pages 2 0 R/Names<</EmbeddedFiles<</Names[(a)3 0 R]>>>>>>");
  object("<</Type/Pages/Count 0/Kids[]>>");
  object("<</Type/Filespec/F(a)/EF<</F 4 0 R>>>>");
  object("<</Type/EmbeddedFile/Length " + std::to_string(packed.size()) + how + ">>stream\n" +
         packed + "\nendstream ");
  const std::size_t table = out.size();
  out += "xref\n0 5\n0000000000 65535 f \n";
  for (const std::size_t one : at) {
    const std::string digits = std::to_string(one);
    out += std::string(10 - digits.size(), '0') + digits + " 00000 n \n";
  }
  return out + "trailer<</Size 5/Root 1 0 R>>\nstartxref\n" + std::to_string(table) + "\n%%EOF\n";
}
}  // namespace

TEST_CASE("attachments come out as they went in") {
  Type type;
  std::string bytes;
  for (int i = 0; i < 70'000; ++i) bytes += static_cast<char>(i * 7919 >> 3);
  const std::vector<Attachment> in{{"a.toml", "[pet]\r\nname = \"A\"\n", "application/toml", "A's"},
                                   {"b ü.bin", bytes, "application/octet-stream", "bytes"},
                                   {"c", "", "text/plain", "nothing"}};
  const Taken out = take(pdf_with(type, in));
  CHECK(out.code.empty());
  REQUIRE(out.files.size() == in.size());
  for (std::size_t i = 0; i < in.size(); ++i) {
    CHECK(out.files[i].name == in[i].name);
    CHECK(out.files[i].bytes == in[i].bytes);
    CHECK(out.files[i].media_type == in[i].media_type);
    CHECK(out.files[i].says == in[i].says);
  }
}

TEST_CASE("a PDF without attachments has none, and that is no fault") {
  Type type;
  const Taken out = take(pdf_with(type, {}));
  CHECK(out.code.empty());
  CHECK(out.files.empty());
}

TEST_CASE("what is no whole, open PDF is a fault") {
  Type type;
  const TemporaryFolder folder;
  const std::string whole = pdf_with(type, {sample_attachment()});
  CHECK(take("").code == "not-a-pdf");
  CHECK(take("[pet]\nname = \"A\"\n").code == "not-a-pdf");
  CHECK(take("%PDF-1.7\n").code == "pdf-broken");
  CHECK(take("%PDF-1.7\n" + std::string(100'000, '[')).code == "pdf-broken");
  CHECK(take(whole.substr(0, whole.size() / 2)).code == "pdf-broken");
  CHECK(take(whole.substr(0, whole.size() - 30)).code == "pdf-broken");
  const std::string path = folder.file("a.pdf", whole);
  for (const char* passwords : {"u o", "'' o"}) {
    const std::string closed = folder.path("closed.pdf");
    REQUIRE(
        run("qpdf --encrypt " + std::string(passwords) + " 256 -- " + path + " " + closed).status ==
        0);
    CHECK(take(bytes_of(closed)).code == "pdf-encrypted");
  }
}

TEST_CASE("an attachment is handed out whole or not at all") {
  Type type;
  const TemporaryFolder folder;
  const std::string path = folder.file("a.pdf", pdf_with(type, {sample_attachment()}));
  const std::string open = folder.path("open.pdf");
  REQUIRE(run("qpdf --qdf --object-streams=disable " + path + " " + open).status == 0);
  std::string bytes = bytes_of(open);
  REQUIRE(take(bytes).files.at(0).bytes == sample_attachment().bytes);
  const std::size_t name = bytes.find("name = \"Marlow\"");
  REQUIRE(name != std::string::npos);
  bytes[name + 8] = 'B';
  CHECK(take(bytes).code == "attachment-broken");
}

TEST_CASE("a name with folders in it is none") {
  Type type;
  const TemporaryFolder folder;
  const std::string path = folder.file("a.pdf", pdf_with(type, {}));
  const std::string more = folder.path("more.pdf");
  REQUIRE(run("qpdf " + path + " --add-attachment " + folder.file("x", "x") +
              " --filename=../../etc/x.toml -- " + more)
              .status == 0);
  const Taken out = take(bytes_of(more));
  REQUIRE(out.files.size() == 1);
  CHECK(out.files[0].name == "x.toml");
}

TEST_CASE("bounds hold: size and number of attachments, memory for the rest") {
  Type type;
  const AttachmentBounds bounds;
  const auto zeros = [&](std::size_t size) {
    return pdf_with(type, {{"z", std::string(size, '\0'), "text/plain", ""}});
  };
  CHECK(take(zeros(bounds.file)).files.size() == 1);
  CHECK(take(zeros(bounds.file + 1)).code == "attachment-too-large");
  std::vector<Attachment> many(3, {"", "x", "text/plain", ""});
  for (std::size_t i = 0; i < many.size(); ++i) many[i].name = std::to_string(i);
  AttachmentBounds few;
  few.count = 3;
  CHECK(take(pdf_with(type, many), few).files.size() == 3);
  few.count = 2;
  CHECK(take(pdf_with(type, many), few).code == "attachment-too-large");
  AttachmentBounds small;
  small.memory = std::size_t{64} * 1024 * 1024;
  CHECK(take(with_blanks(1024), small).code.empty());
  CHECK(take(with_blanks(small.memory * 3), small).code == "pdf-broken");
}

namespace {
/// A PDF of these objects, from number 1, the catalogue first.
std::string pdf_of_objects(const std::vector<std::string>& objects) {
  std::string out = "%PDF-1.7\n", table;
  for (std::size_t i = 0; i < objects.size(); ++i) {
    table += fmt::format("{:010} 00000 n \n", out.size());
    out += fmt::format("{} 0 obj\n{}\nendobj\n", i + 1, objects[i]);
  }
  return out + fmt::format(
                   "xref\n0 {0}\n0000000000 65535 f \n{1}trailer\n<</Size {0}/Root 1 0 R>>\n"
                   "startxref\n{2}\n%%EOF\n",
                   objects.size() + 1, table, out.size());
}
}  // namespace

TEST_CASE("names that hang in two places are a fault in a moment, not a walk without end") {
  constexpr int levels = 40;
  std::vector<std::string> objects{"<</Type/Catalog/Pages 2 0 R/Names<</EmbeddedFiles 3 0 R>>>>",
                                   "<</Type/Pages/Count 0/Kids[]>>"};
  for (int i = 0; i < levels; ++i) {
    objects.push_back(fmt::format("<</Kids[{0} 0 R {0} 0 R]/Limits[(a)(a)]>>", i + 4));
  }
  objects.push_back("<</Names[(a)<</Type/Filespec/F(a)>>]/Limits[(a)(a)]>>");
  CHECK(take(pdf_of_objects(objects)).code == "pdf-broken");
}

TEST_CASE("lengths that are other streams, one after the other, are a fault and no fall") {
  constexpr int streams = 20000;
  for (const char* const length : {"/Length", "/L#65ngth", "/Length%\n"}) {
    INFO(length);
    std::vector<std::string> objects{
        "<</Type/Catalog/Pages 2 0 R/Names<</EmbeddedFiles<</Names[(a)<</Type/Filespec/F(a)"
        "/EF<</F 3 0 R>>>>]>>>>>>",
        "<</Type/Pages/Count 0/Kids[]>>"};
    for (int i = 0; i < streams; ++i) {
      objects.push_back(fmt::format("<<{} {} 0 R>>\nstream\n\nendstream", length, i + 4));
    }
    objects.push_back("0");
    CHECK(take(pdf_of_objects(objects)).code == "pdf-broken");
  }
}

TEST_CASE("four filters over a terabyte of spaces are a fault in a moment") {
  // ASCIIHexDecode leaves nothing of spaces, so that what comes out says nothing of the work.
  const std::string many = deflated_piece(std::string(1024 * 1024, ' '));
  const std::string more = deflated_piece(over_and_over(many, 1024).substr(2));
  const std::string bomb = with_packed(
      squeezed("\x78\xDA" + deflated_piece("\x78\xDA") + over_and_over(more, 1024).substr(2)),
      "/Filter[/FlateDecode/FlateDecode/FlateDecode/ASCIIHexDecode]");
  CHECK(bomb.size() < 64 * 1024);
  CHECK(take(bomb).code == "pdf-broken");
  // The same filters over little give what was put in.
  const std::string little =
      with_packed(squeezed(squeezed(squeezed("41 42>"))),
                  "/Filter[/FlateDecode/FlateDecode/FlateDecode/ASCIIHexDecode]");
  const Taken out = take(little);
  REQUIRE(out.files.size() == 1);
  CHECK(out.files[0].bytes == "AB");
}

TEST_CASE("runs count as they unpack, and what unpacks by LZW is refused") {
  AttachmentBounds small;
  small.unpacked = 1000;
  const std::string runs =
      "\x81"
      "a"
      "\x80";  // 128 times "a", end
  CHECK(take(with_packed(runs, "/Filter/RunLengthDecode")).files.at(0).bytes ==
        std::string(128, 'a'));
  std::string long_runs;
  for (int i = 0; i < 10; ++i)
    long_runs +=
        "\x81"
        "a";
  CHECK(take(with_packed(long_runs + "\x80", "/Filter/RunLengthDecode"), small).code ==
        "pdf-broken");
  CHECK(take(with_packed("\x80\x0B\x60\x50\x22\x0C\x0C\x85\x01", "/Filter/LZWDecode")).code ==
        "attachment-broken");
}

TEST_CASE("rows foretold as PNG does come out as the qpdf program has them") {
  const TemporaryFolder folder;
  std::mt19937 random(7);
  std::string rows;
  for (int row = 0; row < 200; ++row) {
    rows += static_cast<char>(row % 5);
    for (int i = 0; i < 21; ++i) rows += static_cast<char>(random() & 0xFFU);
  }
  const std::string pdf = with_packed(
      squeezed(rows), "/Filter/FlateDecode/DecodeParms<</Predictor 15/Colors 3/Columns 7>>");
  const std::string path = folder.file("a.pdf", pdf), out = folder.path("out");
  REQUIRE(run("qpdf --show-object=4 --filtered-stream-data " + path + " > " + out).status == 0);
  const Taken taken = take(pdf);
  REQUIRE(taken.files.size() == 1);
  CHECK(taken.files[0].bytes.size() == 200 * 21);
  CHECK(taken.files[0].bytes == bytes_of(out));
}

TEST_CASE("what a PDF may unpack to is no bound for other threads, nor for what comes after") {
  const std::string bomb = with_blanks(std::size_t{16} * 1024 * 1024);
  AttachmentBounds small;
  small.memory = std::size_t{1} * 1024 * 1024;
  std::atomic<bool> done = false;
  std::size_t largest = 0;
  std::thread other([&] {
    do {
      const std::string much(std::size_t{32} * 1024 * 1024, 'x');
      largest = much.size();
    } while (!done);
  });
  for (int i = 0; i < 20; ++i) CHECK(take(bomb, small).code == "pdf-broken");
  done = true;
  other.join();
  CHECK(largest == std::size_t{32} * 1024 * 1024);
  CHECK(take(bomb).code.empty());
}

TEST_CASE("a PDF with random bytes changed gives its attachment, nothing or a fault") {
  Type type;
  const TemporaryFolder folder;
  const std::string packed = pdf_with(type, {sample_attachment()});
  const std::string open = folder.path("open.pdf");
  REQUIRE(run("qpdf --qdf --object-streams=disable " + folder.file("a.pdf", packed) + " " + open)
              .status == 0);
  std::mt19937 random(4);
  const std::size_t rounds = share_of(1000);
  std::size_t faults = 0, whole = 0;
  for (const std::string& original : {packed, bytes_of(open)}) {
    for (std::size_t i = 0; i < rounds; ++i) {
      std::string bytes = original;
      const std::size_t changes = 1 + random() % 30;
      for (std::size_t n = 0; n < changes; ++n) {
        bytes[8 + random() % (bytes.size() - 8)] = static_cast<char>(random());
      }
      const Taken out = take(bytes);
      faults += out.code.empty() ? 0 : 1;
      for (const Attachment& one : out.files) {
        // Where the checksum itself is gone, that is said.
        if (out.code != "attachment-unchecked") CHECK(one.bytes == sample_attachment().bytes);
        ++whole;
      }
    }
  }
  CHECK(faults > rounds / 10);
  CHECK(whole > rounds / 10);
}
}  // namespace furnish::test
