#include "base/csv.h"

#include <string>

#include "base/date.h"
#include "fuzz/salon_files.h"
#include "fuzz/targets.h"
#include "spec/client_list.h"
#include "spec/salon_reader.h"

namespace furnish::fuzz {
void csv(std::string_view bytes) {
  Reading reading({{"clients.csv", std::string(bytes)}});
  const auto list = read_client_list(reading.context, "clients.csv", {}, default_salon(),
                                     make_date(2026, 11, 24).value());
  hold(list || reading.sink.has_errors(), "a list, or a fault");
  if (list) hold(list->pets.size() <= 64 * list->lines, "no pets out of nothing");
  reading.tell();
}
}  // namespace furnish::fuzz
