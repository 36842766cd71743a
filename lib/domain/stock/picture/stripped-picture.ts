/** A picture as it may be kept and shown: no place, camera, time, text or preview in it, only the way up it is to be shown. */
import type { PhotoFormat } from '../photo'
import { strippedJpeg } from './strip-jpeg'
import { strippedPng } from './strip-png'
import { strippedWebp } from './strip-webp'

const STRIPPERS: Readonly<Record<PhotoFormat, (bytes: Uint8Array) => Uint8Array | null>> = {
  jpg: strippedJpeg,
  png: strippedPng,
  webp: strippedWebp,
}

/** Null: cut off or damaged. Never throws, whatever the bytes. */
export const strippedPicture = (format: PhotoFormat, bytes: Uint8Array): Uint8Array | null => STRIPPERS[format](bytes)
