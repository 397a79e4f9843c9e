declare const ASSET_MANIFEST: Readonly<Record<string, string>> | undefined

/**
 * Address of a built asset. The build puts the table of hashed names into the server
 * bundle; without a build (unit tests) the plain name stands.
 */
export function assetHref(name: string): string {
  const hashed = typeof ASSET_MANIFEST === 'undefined' ? undefined : ASSET_MANIFEST[name]
  return `/assets/${hashed ?? name}`
}
