/**
 * A PNG without what it says beside the picture: texts, Exif, times, and whatever else is no part of the picture.
 * What is kept is copied byte for byte.
 *
 * PNG specification (W3C, third edition), 5 and 11: behind the signature come chunks of length, type of four letters,
 * data and check figure; IHDR first, IEND last. What follows IEND is left off. An animation keeps its first picture.
 */
import { ascii, joined, viewOf } from './bytes'
import { orientationOf, orientationRecord } from './orientation'

const SIGNATURE_BYTES = 8
/** The picture, its colours, its transparency and the shape of its points. */
const KEPT = ['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS', 'gAMA', 'cHRM', 'sRGB', 'iCCP', 'cICP', 'sBIT', 'bKGD', 'pHYs']

type Chunk = { readonly type: string; readonly data: Uint8Array; readonly whole: Uint8Array }

/** Null: its length leads beyond the end. */
function chunkAt(bytes: Uint8Array, at: number): Chunk | null {
  if (at + 12 > bytes.length) return null
  const length = viewOf(bytes).getUint32(at)
  if (at + 12 + length > bytes.length) return null
  const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8))
  return { type, data: bytes.subarray(at + 8, at + 8 + length), whole: bytes.subarray(at, at + 12 + length) }
}

const CHECK_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1
  return value
})

/** CRC-32 of the type and the data, as annex D of the specification works it out. */
const checkOf = (bytes: Uint8Array): number =>
  (bytes.reduce((value, byte) => (CHECK_TABLE[(value ^ byte) & 0xff] ?? 0) ^ (value >>> 8), 0xffffffff) ^
    0xffffffff) >>>
  0

function exifChunk(orientation: number): Uint8Array {
  const data = orientationRecord(orientation)
  const typed = joined([ascii('eXIf'), data])
  const frame = new Uint8Array(8)
  viewOf(frame).setUint32(0, data.length)
  viewOf(frame).setUint32(4, checkOf(typed))
  return joined([frame.subarray(0, 4), typed, frame.subarray(4)])
}

/** Null where no whole picture is there. */
function chunksOf(bytes: Uint8Array): readonly Chunk[] | null {
  const chunks: Chunk[] = []
  for (let at = SIGNATURE_BYTES; ; at += chunks.at(-1)?.whole.length ?? 0) {
    const chunk = chunkAt(bytes, at)
    if (!chunk) return null
    chunks.push(chunk)
    if (chunk.type === 'IEND') return chunks
  }
}

/** Null: cut off or damaged. */
export function strippedPng(bytes: Uint8Array): Uint8Array | null {
  const chunks = chunksOf(bytes)
  const [head, ...others] = chunks ?? []
  if (head?.type !== 'IHDR' || head.data.length !== 13 || !others.some(({ type }) => type === 'IDAT')) return null
  const exif = others.find(({ type }) => type === 'eXIf')
  const orientation = exif ? orientationOf(exif.data) : 1
  return joined([
    bytes.subarray(0, SIGNATURE_BYTES),
    head.whole,
    ...(orientation === 1 ? [] : [exifChunk(orientation)]),
    ...others.filter(({ type }) => KEPT.includes(type)).map(({ whole }) => whole),
  ])
}
