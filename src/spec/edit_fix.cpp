#include "spec/edit_fix.h"

namespace furnish {
std::vector<Edit> fixes(const EditedText& file, const Diagnostic& fault) {
  std::vector<Edit> out;
  if (!file.good() || fault.span.begin.line == 0) return out;
  const EditPath path = file.path_at(fault.span.begin);
  const auto place = file.where(path);
  if (!place) return out;
  const bool value = place->value_begin == fault.span.begin && place->value_end == fault.span.end;
  const bool key = !value && !path.empty() && std::holds_alternative<std::string>(path.back());
  if (!value && !key) return out;
  for (const std::string& written : fault.instead) {
    const EditedText parsed("v = " + written);
    const EditValue* const meant = parsed.good() ? find(parsed.tree(), EditPath{"v"}) : nullptr;
    if (meant == nullptr || (key && meant->text() == nullptr)) continue;
    Edit edit{value ? Edit::Op::set : Edit::Op::rename, path, *meant};
    EditedText tried = file;
    if (tried.apply(edit)) out.push_back(std::move(edit));
  }
  return out;
}
}  // namespace furnish
