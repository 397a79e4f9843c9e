/**
 * How long a client may take, milliseconds: for the headers, for a whole request, and between two
 * requests. One that is slower is let go, since it would hold a connection for ever. Node looks
 * for them only now and then, every 30 seconds unless told: as late as that they would go.
 */
export const PATIENCE = {
  headersTimeout: 10_000,
  requestTimeout: 30_000,
  keepAliveTimeout: 5_000,
  connectionsCheckingInterval: 1_000,
} as const
