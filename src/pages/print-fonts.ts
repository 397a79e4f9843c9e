import type { PrintFonts } from './pdf-pen.ts'

/**
 * The faces of printed sheets.
 *
 * @param read - gives a file below the folder that holds a folder for each font family
 */
export function printFonts(read: (path: string) => Uint8Array): PrintFonts {
  return {
    serif: read('source-serif-4/400Regular/SourceSerif4_400Regular.ttf'),
    strong: read('source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf'),
    mono: read('ibm-plex-mono/400Regular/IBMPlexMono_400Regular.ttf'),
  }
}
