import { join } from 'node:path'
import { renderAsync } from '@resvg/resvg-js'

/** The faces that drawings name: one file for each weight, TrueType, because no other kind draws. */
const FACES = [
  'source-serif-4/400Regular/SourceSerif4_400Regular.ttf',
  'source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf',
  'ibm-plex-mono/400Regular/IBMPlexMono_400Regular.ttf',
]

/**
 * What draws an SVG as PNG, with the project's own fonts and no other: the same picture
 * on every machine.
 *
 * @param fontsFolder - holds a folder for each font family
 */
export function pngDrawer(fontsFolder: string): (svg: string) => Promise<Uint8Array<ArrayBuffer>> {
  const font = {
    fontFiles: FACES.map((face) => join(fontsFolder, face)),
    loadSystemFonts: false,
    defaultFontFamily: 'Source Serif 4',
  }
  return async (svg) => new Uint8Array((await renderAsync(svg, { font })).asPng())
}
