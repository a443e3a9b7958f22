#pragma once

namespace CLI {
class App;
}

namespace furnish {
struct Options;

/// `import CLIENTS.csv`.
CLI::App* add_import(CLI::App&, Options&);
/// Of `new pet`: --from a client list, and how to read it.
void add_client_list(CLI::App&, Options&);
}  // namespace furnish
