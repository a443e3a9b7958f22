// In a program that libraries are linked into (FURNISH_ARCHIVES): libmicrohttpd is opened when a
// desk is, as it brings all of TLS with it, which a page for this computer alone has no use for.

#include <microhttpd.h>

#include <cstdarg>
#include <cstdint>

#include "base/late_library.h"

#define LATE(result, name, parameters, arguments) \
  FURNISH_LATE("libmicrohttpd.so.12", result, name, parameters, arguments)

extern "C" {
LATE(MHD_Daemon*, MHD_start_daemon_va,
     (unsigned flags, std::uint16_t port, MHD_AcceptPolicyCallback accepts, void* of_accepts,
      MHD_AccessHandlerCallback takes, void* of_takes, va_list options),
     (flags, port, accepts, of_accepts, takes, of_takes, options))
MHD_Daemon* MHD_start_daemon(unsigned flags, std::uint16_t port, MHD_AcceptPolicyCallback accepts,
                             void* of_accepts, MHD_AccessHandlerCallback takes, void* of_takes,
                             ...) {
  va_list options;
  va_start(options, of_takes);
  MHD_Daemon* const daemon =
      MHD_start_daemon_va(flags, port, accepts, of_accepts, takes, of_takes, options);
  va_end(options);
  return daemon;
}
LATE(void, MHD_stop_daemon, (MHD_Daemon * daemon), (daemon))
LATE(MHD_Result, MHD_run, (MHD_Daemon * daemon), (daemon))
LATE(MHD_Result, MHD_get_timeout, (MHD_Daemon * daemon, MHD_UNSIGNED_LONG_LONG* timeout),
     (daemon, timeout))
// What may be asked for follows, but nothing that furnish asks has it.
const MHD_DaemonInfo* MHD_get_daemon_info(MHD_Daemon* daemon, MHD_DaemonInfoType type, ...) {
  static const auto there = reinterpret_cast<decltype(&MHD_get_daemon_info)>(
      furnish::late_function("libmicrohttpd.so.12", "MHD_get_daemon_info"));
  return there(daemon, type);
}
LATE(int, MHD_get_connection_values,
     (MHD_Connection * connection, MHD_ValueKind kind, MHD_KeyValueIterator visits,
      void* of_visits),
     (connection, kind, visits, of_visits))
LATE(void, MHD_suspend_connection, (MHD_Connection * connection), (connection))
LATE(void, MHD_resume_connection, (MHD_Connection * connection), (connection))
LATE(MHD_Response*, MHD_create_response_from_buffer,
     (std::size_t size, void* buffer, MHD_ResponseMemoryMode mode), (size, buffer, mode))
LATE(MHD_Response*, MHD_create_response_from_callback,
     (std::uint64_t size, std::size_t piece, MHD_ContentReaderCallback reads, void* of_reads,
      MHD_ContentReaderFreeCallback ends),
     (size, piece, reads, of_reads, ends))
LATE(MHD_Result, MHD_add_response_header,
     (MHD_Response * response, const char* name, const char* value), (response, name, value))
LATE(MHD_Result, MHD_queue_response,
     (MHD_Connection * connection, unsigned status, MHD_Response* response),
     (connection, status, response))
LATE(void, MHD_destroy_response, (MHD_Response * response), (response))
}
