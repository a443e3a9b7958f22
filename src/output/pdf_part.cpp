#include "output/pdf_part.h"

#include <fmt/format.h>

namespace furnish {
namespace {
std::string_view view(const std::shared_ptr<Buffer>& data) {
  return {reinterpret_cast<const char*>(data->getBuffer()), data->getSize()};
}

std::string text_string(const std::string& bytes) {
  return QPDFObjectHandle::newString(bytes).unparse();
}
}  // namespace

int PdfPart::number_of(Handle object) {
  const auto [found, fresh] = numbers_.try_emplace(object.getObjGen(), 0);
  if (fresh) {
    found->second = out_.reserve();
    waiting_.push_back({object, found->second});
  }
  return found->second;
}

void PdfPart::copy_as(Handle object, int number) {
  numbers_[object.getObjGen()] = number;
  waiting_.push_back({object, number});
}

void PdfPart::copy_waiting() {
  while (!waiting_.empty()) {
    const Waiting next = waiting_.front();
    waiting_.pop_front();
    copy(next);
  }
}

void PdfPart::copy(const Waiting& next) {
  Handle object = next.object;
  if (!object.isStream()) {
    std::string text;
    if (object.isDictionary()) {
      text = "<<" + entries(object) + ">>";
    } else if (object.isArray()) {
      text = "[";
      for (const Handle& one : object.aitems()) text += value(one) + " ";
      text += "]";
    } else {
      text = object.unparseResolved();
    }
    return out_.add(next.number, text);
  }
  Handle dictionary = object.getDict();
  std::string kept;
  for (auto [key, one] : dictionary.ditems()) {
    if (key != "/Length") kept += entry(key, one, false);
  }
  out_.add_stream(next.number, kept, view(object.getRawStreamData()));
}

std::string PdfPart::value(Handle object) {
  if (object.isIndirect()) return fmt::format("{} 0 R", number_of(object));
  if (object.isDictionary()) return "<<" + entries(object) + ">>";
  if (!object.isArray()) return object.unparse();
  std::string out = "[";
  for (const Handle& one : object.aitems()) {
    if (out.size() > 1) out += ' ';
    out += value(one);
  }
  return out + "]";
}

std::string PdfPart::entries(Handle dictionary) {
  const bool of_element =
      dictionary.getKey("/Type").isNameAndEquals("/StructElem") || dictionary.hasKey("/Pg");
  std::string out;
  for (auto [key, one] : dictionary.ditems()) out += entry(key, one, of_element);
  return out;
}

std::string PdfPart::entry(const std::string& key, Handle one, bool of_element) {
  // That an element is one goes without saying (ISO 32000-1, table 323).
  if (one.isNull() || (of_element && key == "/Type")) return {};
  std::string says;
  if (key == "/StructParents" || key == "/StructParent") {
    says = fmt::format("{}", whole_.parents + one.getIntValueAsInt());
  } else if (key == "/ID" && of_element && one.isString()) {
    says = text_string(whole_.ids + one.getStringValue());
  } else if (key == "/Headers" && one.isArray()) {
    says = "[";
    for (Handle id : one.aitems()) says += text_string(whole_.ids + id.getStringValue());
    says += "]";
  } else if ((key == "/Dest" || key == "/D") && one.isString() && places_) {
    says = places_(one.getStringValue());
  } else if (key == "/SD" && one.isString() && elements_) {
    says = elements_(one.getStringValue());
  } else {
    says = value(one);
  }
  const bool apart = says.find_first_of("/<[(") != 0;
  return Handle::newName(key).unparse() + (apart ? " " : "") + says;
}
}  // namespace furnish
