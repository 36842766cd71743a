/**
 * Which way up a picture is to be shown: the one entry of its Exif record that is kept.
 *
 * Exif (CIPA DC-008) is a TIFF file of its own: "II" or "MM" for the order of bytes, the figure 42, the place of the
 * first directory; a directory is a count and entries of 12 bytes (tag, type, count, value). Orientation is tag 0x0112,
 * a 16-bit figure from 1 (upright) to 8.
 */
import { startsWith, viewOf } from './bytes'

const ORIENTATION = 0x0112
const SHORT = 3
const ENTRY_BYTES = 12

/** 1 where the record says nothing of it, or is damaged. */
export function orientationOf(tiff: Uint8Array): number {
  const isLittle = startsWith(tiff, 'II')
  if (tiff.length < 8 || !(isLittle || startsWith(tiff, 'MM'))) return 1
  const view = viewOf(tiff)
  const directory = view.getUint32(4, isLittle)
  if (directory + 2 > tiff.length) return 1
  const count = view.getUint16(directory, isLittle)
  for (let entry = 0; entry < count; entry += 1) {
    const at = directory + 2 + entry * ENTRY_BYTES
    if (at + ENTRY_BYTES > tiff.length) return 1
    if (view.getUint16(at, isLittle) !== ORIENTATION || view.getUint16(at + 2, isLittle) !== SHORT) continue
    const value = view.getUint16(at + 8, isLittle)
    return value >= 1 && value <= 8 ? value : 1
  }
  return 1
}

/** A record with this one entry and nothing else. */
export function orientationRecord(orientation: number): Uint8Array {
  const bytes = new Uint8Array(8 + 2 + ENTRY_BYTES + 4)
  const view = viewOf(bytes)
  view.setUint32(0, 0x4d4d002a)
  view.setUint32(4, 8)
  view.setUint16(8, 1)
  view.setUint16(10, ORIENTATION)
  view.setUint16(12, SHORT)
  view.setUint32(14, 1)
  view.setUint16(18, orientation)
  return bytes
}
