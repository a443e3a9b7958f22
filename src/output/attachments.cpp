#include "output/attachments.h"

#include <fmt/format.h>

#include <qpdf/Pipeline.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFEFStreamObjectHelper.hh>
#include <qpdf/QPDFEmbeddedFileDocumentHelper.hh>
#include <qpdf/QPDFExc.hh>
#include <qpdf/QPDFFileSpecObjectHelper.hh>
#include <qpdf/QPDFLogger.hh>

#include <algorithm>
#include <exception>
#include <mutex>
#include <optional>
#include <set>
#include <stdexcept>
#include <vector>

#include "output/length_chains.h"
#include "output/memory_budget.h"
#include "output/unpack_budget.h"

namespace furnish {
namespace {
/// libqpdf has no other way to warn of objects that belong to no file than its one logger. Said to
/// it once and for good, so that no thread changes it under another.
void quiet_library() {
  static std::once_flag once;
  std::call_once(once, [] {
    const auto logger = QPDFLogger::defaultLogger();
    logger->setWarn(logger->discard());
    logger->setError(logger->discard());
  });
}

struct TooLarge : std::length_error {
  using std::length_error::length_error;
};

/// Keeps what flows in, up to a bound.
class Bounded final : public Pipeline {
 public:
  explicit Bounded(std::size_t most) : Pipeline("attachment", nullptr), most_(most) {}
  using Pipeline::write;
  void write(const unsigned char* data, std::size_t size) override {
    if (size > most_ - bytes_.size()) {
      // libqpdf may turn this into a warning and an end.
      too_large_ = true;
      throw TooLarge("too large");
    }
    bytes_.append(reinterpret_cast<const char*>(data), size);
  }
  void finish() override {}
  bool too_large() const { return too_large_; }
  std::string take() { return std::move(bytes_); }

 private:
  std::size_t most_;
  std::string bytes_;
  bool too_large_ = false;
};

/// As written by a person's system: "marlow.toml"; never a path.
std::string plain_name(std::string name) {
  const std::size_t slash = name.find_last_of("/\\");
  if (slash != std::string::npos) name.erase(0, slash + 1);
  std::erase_if(name, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
  return name.empty() || name == "." || name == ".." ? "unnamed" : name;
}

/// MD5, which libqpdf tells only of a stream that it makes.
std::string checksum(const std::string& bytes) {
  QPDF scratch;
  scratch.emptyPDF();
  return QPDFEFStreamObjectHelper::createEFStream(scratch, bytes).getChecksum();
}

/// False if a node of the tree of names (ISO 32000-1, 7.9.6) hangs in two places: walking it would
/// double with each level, or never end.
bool names_are_a_tree(QPDF& pdf) {
  std::set<QPDFObjGen> seen;
  std::vector<QPDFObjectHandle> open{pdf.getRoot().getKey("/Names").getKey("/EmbeddedFiles")};
  while (!open.empty()) {
    QPDFObjectHandle node = open.back();
    open.pop_back();
    if (!node.isDictionary()) continue;
    if (node.isIndirect() && !seen.insert(node.getObjGen()).second) return false;
    QPDFObjectHandle kids = node.getKey("/Kids");
    if (!kids.isArray()) continue;
    for (int i = 0; i < kids.getArrayNItems(); ++i) open.push_back(kids.getArrayItem(i));
  }
  return true;
}

class Reader {
 public:
  Reader(DiagnosticSink& sink, const AttachmentBounds& bounds, const UnpackBudget& work)
      : sink_(sink), bounds_(bounds), work_(work) {}

  std::vector<Attachment> read(const std::string& bytes) {
    QPDF pdf;
    pdf.setSuppressWarnings(true);
    // A file put together again by guessing could give something else than was put in.
    pdf.setAttemptRecovery(false);
    pdf.processMemoryFile("PDF", bytes.data(), bytes.size());
    if (pdf.isEncrypted()) {
      report_encrypted();
      return {};
    }
    if (!names_are_a_tree(pdf)) {
      sink_.error("pdf-broken", {},
                  "the PDF is broken: the names of its attached files lead round in a ring");
      return {};
    }
    QPDFEmbeddedFileDocumentHelper embedded(pdf);
    if (!embedded.hasEmbeddedFiles()) return {};
    std::vector<Attachment> out;
    for (auto& [name, spec] : embedded.getEmbeddedFiles()) {
      if (out.size() == bounds_.count) {
        sink_.error("attachment-too-large", {},
                    fmt::format("more than {} files are attached", bounds_.count));
        return {};
      }
      auto one = read_one(name, *spec);
      if (!one) return {};
      out.push_back(*std::move(one));
    }
    return out;
  }

  void report_encrypted() {
    sink_.error("pdf-encrypted", {}, "the PDF is encrypted").hint =
        "save a copy without a password, and unpack that";
  }

 private:
  std::optional<Attachment> read_one(const std::string& key, QPDFFileSpecObjectHelper& spec) {
    Attachment out;
    const std::string written = spec.getFilename();
    out.name = plain_name(written.empty() ? key : written);
    out.says = spec.getDescription();
    QPDFObjectHandle stream = spec.getEmbeddedFileStream();
    if (!stream.isStream()) return broken(out.name, "it has no content");
    QPDFEFStreamObjectHelper file(stream);
    out.media_type = file.getSubtype();
    Bounded data(bounds_.file);
    bool decoded = false;
    const bool whole = stream.pipeStreamData(&data, &decoded, 0, qpdf_dl_generalized, true);
    if (data.too_large()) {
      sink_.error(
          "attachment-too-large", {},
          fmt::format("the attached file {} is larger than {} KiB", out.name, bounds_.file / 1024));
      return std::nullopt;
    }
    if (work_.spent()) return std::nullopt;  // which is a fault of the whole file
    if (!whole || !decoded) return broken(out.name, "its content cannot be unpacked");
    out.bytes = data.take();
    const std::string sum = file.getChecksum();
    if (sum.empty()) {
      sink_.warning("attachment-unchecked", {},
                    fmt::format("the attached file {} has no checksum: nothing says whether it is "
                                "as it was put in",
                                out.name));
    } else if (sum != checksum(out.bytes)) {
      return broken(out.name, "its content is not what its checksum says");
    }
    return out;
  }

  std::optional<Attachment> broken(const std::string& name, const char* why) {
    sink_.error("attachment-broken", {}, fmt::format("the attached file {}: {}", name, why));
    return std::nullopt;
  }

  DiagnosticSink& sink_;
  const AttachmentBounds& bounds_;
  const UnpackBudget& work_;
};
}  // namespace

std::vector<Attachment> attachments_of(const std::string& pdf_bytes, DiagnosticSink& sink,
                                       const AttachmentBounds& bounds) {
  if (pdf_bytes.substr(0, 1024).find("%PDF-") == std::string::npos) {
    sink.error("not-a-pdf", {}, "this is not a PDF");
    return {};
  }
  if (has_length_chains(pdf_bytes)) {
    sink.error("pdf-broken", {}, "the PDF is broken: its streams have lengths that are no numbers");
    return {};
  }
  const std::size_t before = sink.error_count();
  const UnpackBudget work(bounds.unpacked);
  const auto too_much = [&] {
    sink.error("pdf-broken", {}, "the PDF unpacks to more than this program has room for");
  };
  Reader reader(sink, bounds, work);
  // libqpdf tells of all that is wrong with a file by exceptions.
  try {
    quiet_library();
    const MemoryBudget budget(bounds.memory);
    auto found = reader.read(pdf_bytes);
    if (work.spent() && sink.error_count() == before) too_much();
    return sink.error_count() == before ? found : std::vector<Attachment>();
  } catch (const QPDFExc& fault) {
    if (fault.getErrorCode() == qpdf_e_password) {
      reader.report_encrypted();
    } else if (work.spent()) {
      too_much();
    } else {
      sink.error("pdf-broken", {}, fmt::format("the PDF is broken: {}", fault.getMessageDetail()));
    }
  } catch (const std::bad_alloc&) {
    too_much();
  } catch (const std::exception& fault) {
    if (work.spent()) {
      too_much();
    } else {
      sink.error("pdf-broken", {}, fmt::format("the PDF is broken: {}", fault.what()));
    }
  }
  return {};
}
}  // namespace furnish
