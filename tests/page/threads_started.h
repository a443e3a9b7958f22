#pragma once

namespace furnish::test {
/// How many threads this program has started, whoever asked for them.
int threads_started();
}  // namespace furnish::test
