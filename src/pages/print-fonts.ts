import type { PrintFonts } from './pdf-pen.ts'

/** Noughts behind a font's end, bytes. */
const PADDING = 64

/**
 * The faces of printed sheets.
 *
 * @param read - gives a file below the folder that holds a folder for each font family
 */
export function printFonts(read: (path: string) => Uint8Array): PrintFonts {
  return {
    serif: padded(read('source-serif-4/400Regular/SourceSerif4_400Regular.ttf')),
    strong: padded(read('source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf')),
    mono: padded(read('ibm-plex-mono/400Regular/IBMPlexMono_400Regular.ttf')),
  }
}

/**
 * The PDF library reads the box of a space even where that glyph is empty and lies at the very end
 * of the file; noughts behind it are an empty box.
 */
function padded(font: Uint8Array): Uint8Array {
  const longer = new Uint8Array(font.length + PADDING)
  longer.set(font)
  return longer
}
