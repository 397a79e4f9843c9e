/** Lets the guide open again without a network. In a shop's frame it is the shop's page that counts. */
if ('serviceWorker' in navigator && window.top === window) {
  addEventListener('load', () => {
    // Refused in a private window, for one: then everything works as long as there is a network.
    navigator.serviceWorker.register('/service-worker.js').catch(() => undefined)
  })
}
