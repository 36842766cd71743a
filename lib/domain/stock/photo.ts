/** Pictures of a tube. What a file is, is read from its first bytes and not from its name. */
export const MOST_PHOTO_BYTES = 8_000_000
export const MOST_PHOTOS = 12

export type PhotoFormat = 'jpg' | 'png' | 'webp'

export type TubePhoto = {
  readonly id: string
  readonly tubeId: string
  readonly name: string
  readonly format: PhotoFormat
  readonly bytes: number
  readonly addedAt: Date
  readonly addedBy: string
}

/** Null: any byte. */
const SIGNATURES: Readonly<Record<PhotoFormat, readonly (number | null)[]>> = {
  jpg: [0xff, 0xd8, 0xff],
  // PNG specification (W3C), 5.2.
  png: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
  // RFC 9649, 2.4: RIFF, a length of four bytes, WEBP.
  webp: [0x52, 0x49, 0x46, 0x46, null, null, null, null, 0x57, 0x45, 0x42, 0x50],
}

const FORMATS: readonly PhotoFormat[] = ['jpg', 'png', 'webp']

/** Null: none of them. */
export function photoFormat(bytes: Uint8Array): PhotoFormat | null {
  const starts = (format: PhotoFormat) =>
    SIGNATURES[format].every((byte, place) => (byte === null ? place < bytes.length : bytes[place] === byte))
  return FORMATS.find(starts) ?? null
}

const LONGEST_NAME = 60

/** Without its folders and anything but letters, digits, points and hyphens: safe in a header and on a page. */
export function strippedFileName(typed: string): string {
  const own = typed.split(/[\\/]/).at(-1) ?? ''
  const plain = own
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9.-]+/g, '-')
    .replace(/^[.-]+|[.-]+$/g, '')
  return plain.slice(-LONGEST_NAME) || 'picture'
}
