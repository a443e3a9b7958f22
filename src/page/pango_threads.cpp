#include "page/pango_threads.h"

#include <glib.h>

#include <string_view>

/// Pango 1.50 starts two threads for each size of each face, in which fontconfig matches and sorts
/// the fonts. Ours has four, which takes less than starting a thread, and a card has twenty sizes.
/// A program's function comes before a library's of the same name: so this one is called for
/// g_thread_new(), and does Pango's work there and then.
extern "C" GThread* g_thread_new(const gchar* name, GThreadFunc work, gpointer data) {
  if (name != nullptr && std::string_view(name).starts_with("[pango] FcFontSet")) {
    work(data);
    return g_thread_ref(g_thread_self());  // whoever asked gives it back
  }
  GError* fault = nullptr;
  GThread* const thread = g_thread_try_new(name, work, data, &fault);
  if (thread == nullptr) g_error("no thread can be started: %s", fault->message);
  return thread;
}

void furnish::run_pango_inline() {
  // Naming this file's only other function brings the file into whatever is linked.
}
