import { crc32, deflateSync } from 'node:zlib'

/** A picture of at most 256 colours, one byte for each pixel. */
export interface PalettePicture {
  readonly width: number
  readonly height: number
  /** Red, green, blue of each colour, 0–255. */
  readonly palette: Uint8Array
  /** Place in the palette of each pixel, row by row. */
  readonly pixels: Uint8Array
}

const MOST_COLOURS = 256
/** Colours that differ only below this many bits of a channel count as one. */
const KEPT_BITS = 5
const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])

/** Reduce pixels of red, green, blue and alpha to the colours that occur most. */
export function reduceColours(
  rgba: Uint8ClampedArray | Uint8Array,
  width: number,
  height: number,
): PalettePicture {
  const bins = countBins(rgba)
  const kept = [...bins.entries()].sort((a, b) => b[1][3] - a[1][3]).slice(0, MOST_COLOURS)
  const colours = kept.map(([, [red, green, blue, count]]) => [
    Math.round(red / count),
    Math.round(green / count),
    Math.round(blue / count),
  ])
  const places = new Map(kept.map(([bin], place) => [bin, place]))
  const pixels = new Uint8Array(width * height)
  for (let at = 0; at < pixels.length; at++) {
    const bin = binOf(rgba, at * 4)
    const place = places.get(bin) ?? nearest(colours, rgba, at * 4)
    places.set(bin, place)
    pixels[at] = place
  }
  return { width, height, palette: Uint8Array.from(colours.flat()), pixels }
}

type Bin = [red: number, green: number, blue: number, count: number]

function countBins(rgba: Uint8ClampedArray | Uint8Array): Map<number, Bin> {
  const bins = new Map<number, Bin>()
  for (let at = 0; at < rgba.length; at += 4) {
    const key = binOf(rgba, at)
    const bin = bins.get(key) ?? [0, 0, 0, 0]
    bin[0] += rgba[at] ?? 0
    bin[1] += rgba[at + 1] ?? 0
    bin[2] += rgba[at + 2] ?? 0
    bin[3] += 1
    bins.set(key, bin)
  }
  return bins
}

function binOf(rgba: Uint8ClampedArray | Uint8Array, at: number): number {
  const shift = 8 - KEPT_BITS
  const channel = (offset: number): number => (rgba[at + offset] ?? 0) >> shift
  return (channel(0) << (2 * KEPT_BITS)) | (channel(1) << KEPT_BITS) | channel(2)
}

function nearest(colours: readonly number[][], rgba: ArrayLike<number>, at: number): number {
  const distance = (colour: readonly number[]): number =>
    colour.reduce((sum, value, channel) => sum + (value - (rgba[at + channel] ?? 0)) ** 2, 0)
  return colours.reduce(
    (best, colour, place) => (distance(colour) < distance(colours[best] ?? []) ? place : best),
    0,
  )
}

/**
 * A palette picture as a PNG file.
 *
 * @see ISO/IEC 15948:2004, Portable Network Graphics, 11.2: IHDR, PLTE, IDAT, IEND
 */
export function encodePng({ width, height, palette, pixels }: PalettePicture): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  // Eight bits a pixel, indexed colour; no interlace.
  header.set([8, 3, 0, 0, 0], 8)
  const rows = Buffer.alloc(height * (width + 1))
  for (let row = 0; row < height; row++) {
    rows.set(pixels.subarray(row * width, (row + 1) * width), row * (width + 1) + 1)
  }
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header),
    chunk('PLTE', Buffer.from(palette)),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const sum = Buffer.alloc(4)
  sum.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, sum])
}
