using Workerd = import "/workerd/workerd.capnp";

# The guide on an edge runtime. Address and folder of assets are given when it is started.
const config :Workerd.Config = (
  services = [
    (name = "guide", worker = .guide),
    (name = "assets", disk = (path = "dist/assets", writable = false)),
  ],
  sockets = [(name = "http", address = "127.0.0.1:3000", http = (), service = "guide")],
);

const guide :Workerd.Worker = (
  modules = [(name = "worker.js", esModule = embed "../../dist/edge/worker.js")],
  compatibilityDate = "2026-11-01",
  bindings = [
    (name = "ASSETS", service = "assets"),
    (name = "ORIGIN", fromEnvironment = "ORIGIN"),
    (name = "DEMO_ORIGIN", fromEnvironment = "DEMO_ORIGIN"),
    (name = "RATE_PER_MINUTE", fromEnvironment = "RATE_PER_MINUTE"),
    (name = "TRUSTED_PROXIES", fromEnvironment = "TRUSTED_PROXIES"),
  ],
  # Nothing is asked of any other machine.
  globalOutbound = "assets",
);
