/**
 * A JPEG without what it says beside the picture: Exif with its place and camera, XMP, comments, preview
 * pictures, other pictures behind the end. Nothing is decoded: what is kept is copied byte for byte.
 *
 * ITU-T T.81, annex B: FF, a marker byte, and for most markers a length of two bytes that counts itself. In the scan
 * behind SOS every FF is followed by 00 or by a restart marker D0 to D7. Kept of the application segments: JFIF (without
 * its preview), ICC colour profiles, and Adobe's APP14, without which colours are read wrongly.
 */
import { ascii, joined, startsWith, viewOf } from './bytes'
import { orientationOf, orientationRecord } from './orientation'

const EXIF = 'Exif\0\0'
const JFIF_BYTES = 14

type Segment = { readonly marker: number; readonly body: Uint8Array; readonly next: number }

/** Null: no marker stands here, or its length leads beyond the end. */
function segmentAt(bytes: Uint8Array, from: number): Segment | null {
  if (bytes[from] !== 0xff) return null
  let at = from + 1
  // Any count of FF may stand before a marker.
  while (bytes[at] === 0xff) at += 1
  const marker = bytes[at]
  if (marker === undefined) return null
  if (marker === 0xd9) return { marker, body: new Uint8Array(), next: at + 1 }
  if (at + 3 > bytes.length) return null
  const length = viewOf(bytes).getUint16(at + 1)
  const next = at + 1 + length
  return length >= 2 && next <= bytes.length ? { marker, body: bytes.subarray(at + 3, next), next } : null
}

/** Where the scan ends: at the next marker. Null: the file ends first. */
function scanEnd(bytes: Uint8Array, from: number): number | null {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const behind = bytes[at + 1]
    if (behind === undefined) return null
    const isOfScan = behind === 0x00 || (behind >= 0xd0 && behind <= 0xd7)
    if (!isOfScan && behind !== 0xff) return at
  }
  return null
}

const isFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)

/** Frames and tables, scans, and of the application segments those named in the head. */
function isKept({ marker, body }: Segment): boolean {
  if (marker === 0xe2) return startsWith(body, 'ICC_PROFILE\0')
  if (marker === 0xee) return startsWith(body, 'Adobe')
  return (marker >= 0xc0 && marker <= 0xcf) || (marker >= 0xda && marker <= 0xdf)
}

function written(marker: number, body: Uint8Array): Uint8Array {
  const length = body.length + 2
  return joined([Uint8Array.of(0xff, marker, length >> 8, length & 0xff), body])
}

/** No preview: its width and height are nought. */
const bareJfif = (body: Uint8Array): Uint8Array => Uint8Array.of(...body.subarray(0, JFIF_BYTES - 2), 0, 0)

type Kept = { jfif: Uint8Array | null; orientation: number; hasFrame: boolean; hasScan: boolean; rest: Uint8Array[] }

function keep(kept: Kept, segment: Segment): void {
  const { marker, body } = segment
  if (marker === 0xe1 && startsWith(body, EXIF)) kept.orientation = orientationOf(body.subarray(EXIF.length))
  if (marker === 0xe0 && startsWith(body, 'JFIF\0') && body.length >= JFIF_BYTES) kept.jfif ??= bareJfif(body)
  if (!isKept(segment)) return
  kept.hasFrame ||= isFrame(marker)
  kept.rest.push(written(marker, body))
}

function assembled({ jfif, orientation, rest }: Kept): Uint8Array {
  const exif = joined([ascii(EXIF), orientationRecord(orientation)])
  return joined([
    Uint8Array.of(0xff, 0xd8),
    ...(jfif ? [written(0xe0, jfif)] : []),
    ...(orientation === 1 ? [] : [written(0xe1, exif)]),
    ...rest,
    Uint8Array.of(0xff, 0xd9),
  ])
}

/** Null: cut off or damaged. */
export function strippedJpeg(bytes: Uint8Array): Uint8Array | null {
  const kept: Kept = { jfif: null, orientation: 1, hasFrame: false, hasScan: false, rest: [] }
  let at = 2
  for (;;) {
    const segment = segmentAt(bytes, at)
    if (!segment) return null
    if (segment.marker === 0xd9) return kept.hasFrame && kept.hasScan ? assembled(kept) : null
    keep(kept, segment)
    at = segment.next
    if (segment.marker !== 0xda) continue
    const end = scanEnd(bytes, at)
    if (end === null) return null
    kept.hasScan = true
    kept.rest.push(bytes.subarray(at, end))
    at = end
  }
}
