// In a program that libraries are linked into (FURNISH_ARCHIVES): what libqpdf asks of GnuTLS.
// Every PDF has MD5 sums, which GLib works out, as it is there anyway; GnuTLS is opened for a file
// that somebody encrypted, and not for each card, as with all that belongs to it that takes as long
// as drawing the page.

#include <glib.h>
#include <gnutls/crypto.h>
#include <gnutls/gnutls.h>

#include <optional>

#include "base/late_library.h"

#define LATE(result, name, parameters, arguments) \
  FURNISH_LATE("libgnutls.so.30", result, name, parameters, arguments)

namespace {
/// The sums that PDF knows (ISO 32000-2, 7.6).
std::optional<GChecksumType> sum_of(gnutls_digest_algorithm_t algorithm) {
  switch (algorithm) {
    case GNUTLS_DIG_MD5:
      return G_CHECKSUM_MD5;
    case GNUTLS_DIG_SHA256:
      return G_CHECKSUM_SHA256;
    case GNUTLS_DIG_SHA384:
      return G_CHECKSUM_SHA384;
    case GNUTLS_DIG_SHA512:
      return G_CHECKSUM_SHA512;
    default:
      return std::nullopt;
  }
}
/// A sum in the making and the size of its result.
struct Sum {
  GChecksum* made;
  gsize bytes;
};
}  // namespace

extern "C" {
int gnutls_hash_init(gnutls_hash_hd_t* handle, gnutls_digest_algorithm_t algorithm) {
  const auto type = sum_of(algorithm);
  if (!type) return GNUTLS_E_UNKNOWN_HASH_ALGORITHM;
  *handle = reinterpret_cast<gnutls_hash_hd_t>(
      new Sum{g_checksum_new(*type), static_cast<gsize>(g_checksum_type_get_length(*type))});
  return 0;
}
int gnutls_hash(gnutls_hash_hd_t handle, const void* bytes, std::size_t size) {
  g_checksum_update(reinterpret_cast<Sum*>(handle)->made, static_cast<const guchar*>(bytes),
                    static_cast<gssize>(size));
  return 0;
}
void gnutls_hash_deinit(gnutls_hash_hd_t handle, void* digest) {
  Sum* const sum = reinterpret_cast<Sum*>(handle);
  if (digest != nullptr) {
    g_checksum_get_digest(sum->made, static_cast<guint8*>(digest), &sum->bytes);
  }
  g_checksum_free(sum->made);
  delete sum;
}
LATE(int, gnutls_cipher_init,
     (gnutls_cipher_hd_t * handle, gnutls_cipher_algorithm_t algorithm, const gnutls_datum_t* key,
      const gnutls_datum_t* start),
     (handle, algorithm, key, start))
LATE(std::size_t, gnutls_cipher_get_key_size, (gnutls_cipher_algorithm_t algorithm), (algorithm))
LATE(int, gnutls_cipher_encrypt2,
     (gnutls_cipher_hd_t handle, const void* text, std::size_t size, void* to, std::size_t most),
     (handle, text, size, to, most))
LATE(int, gnutls_cipher_decrypt2,
     (gnutls_cipher_hd_t handle, const void* text, std::size_t size, void* to, std::size_t most),
     (handle, text, size, to, most))
LATE(void, gnutls_cipher_deinit, (gnutls_cipher_hd_t handle), (handle))
LATE(int, gnutls_rnd, (gnutls_rnd_level_t level, void* to, std::size_t size), (level, to, size))
LATE(const char*, gnutls_strerror, (int fault), (fault))
}
