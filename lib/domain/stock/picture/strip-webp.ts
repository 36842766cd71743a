/**
 * A WebP without what it says beside the picture: Exif, XMP and whatever else is no part of the picture. What is kept
 * is copied byte for byte.
 *
 * RFC 9649, 2: "RIFF", a length, "WEBP", then chunks of four letters, a length and data, padded to an even length. VP8X, if
 * there is one, says in its first byte what else there is: 8 for Exif, 4 for XMP.
 */
import { ascii, joined, startsWith, viewOf } from './bytes'
import { orientationOf, orientationRecord } from './orientation'

const HEAD_BYTES = 12
const PICTURES = ['VP8 ', 'VP8L', 'ANMF']
const KEPT = [...PICTURES, 'VP8X', 'ALPH', 'ICCP', 'ANIM']
const [HAS_EXIF, HAS_XMP] = [0x08, 0x04]

type Chunk = { readonly type: string; readonly data: Uint8Array }

/** Null: cut off. */
function chunksOf(bytes: Uint8Array): readonly Chunk[] | null {
  if (bytes.length < HEAD_BYTES) return null
  const view = viewOf(bytes)
  const end = 8 + view.getUint32(4, true)
  if (end > bytes.length) return null
  const chunks: Chunk[] = []
  for (let at = HEAD_BYTES; at + 8 <= end; ) {
    const length = view.getUint32(at + 4, true)
    if (at + 8 + length > end) return null
    const data = bytes.subarray(at + 8, at + 8 + length)
    chunks.push({ type: String.fromCharCode(...bytes.subarray(at, at + 4)), data })
    at += 8 + length + (length % 2)
  }
  return chunks
}

function written(type: string, data: Uint8Array): Uint8Array {
  const length = new Uint8Array(4)
  viewOf(length).setUint32(0, data.length, true)
  return joined([ascii(type), length, data, new Uint8Array(data.length % 2)])
}

function orientationIn(chunks: readonly Chunk[]): number {
  const data = chunks.find(({ type }) => type === 'EXIF')?.data
  if (!data) return 1
  // Some write the mark in front that a JPEG needs.
  return orientationOf(startsWith(data, 'Exif\0\0') ? data.subarray(6) : data)
}

/** Null: cut off or damaged. */
export function strippedWebp(bytes: Uint8Array): Uint8Array | null {
  const chunks = chunksOf(bytes)
  if (!chunks?.some(({ type }) => PICTURES.includes(type))) return null
  const isExtended = chunks[0]?.type === 'VP8X' && chunks[0].data.length === 10
  const orientation = isExtended ? orientationIn(chunks) : 1
  const said = (flags: number) => (flags & ~(HAS_EXIF | HAS_XMP)) | (orientation === 1 ? 0 : HAS_EXIF)
  const kept = chunks
    .filter(({ type }) => KEPT.includes(type))
    .map(({ type, data }) =>
      written(type, type === 'VP8X' ? data.map((byte, at) => (at === 0 ? said(byte) : byte)) : data),
    )
  if (orientation !== 1) kept.push(written('EXIF', orientationRecord(orientation)))
  const body = joined([ascii('WEBP'), ...kept])
  return written('RIFF', body)
}
