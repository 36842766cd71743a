/**
 * What a picture says beside itself. Formats: ITU-T T.81 annex B (JPEG), CIPA DC-008 (Exif), the PNG specification of
 * the W3C, RFC 9649 (WebP). Another reader of JPEG is asked what it sees: the one the papers are drawn with (pdfkit).
 */
import { crc32 } from 'node:zlib'
import fc from 'fast-check'
import PDFDocument from 'pdfkit'
import { describe, expect, test } from 'vitest'
import { type PhotoFormat, photoFormat } from '@/lib/domain/stock/photo'
import { orientationOf, orientationRecord } from '@/lib/domain/stock/picture/orientation'
import { strippedPicture } from '@/lib/domain/stock/picture/stripped-picture'
import {
  BASELINE_JPEG,
  LOSSLESS_WEBP,
  LOSSY_WEBP,
  PLAIN_WEBP,
  PNG,
  PROGRESSIVE_JPEG,
} from '@/tests/support/camera-pictures'

const stripped = (bytes: Uint8Array): Uint8Array =>
  strippedPicture(photoFormat(bytes) ?? expect.fail('no picture'), bytes) ?? expect.fail('refused')

const latin = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1')
const has = (bytes: Uint8Array, text: string) => latin(bytes).includes(text)
const of = (...parts: (string | readonly number[] | Uint8Array)[]): Uint8Array =>
  Uint8Array.from(
    Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : Buffer.from(part)))),
  )

/** 52 degrees of northern latitude as Exif writes it, in either order of bytes. */
const PLACES = [of([52, 0, 0, 0, 1, 0, 0, 0]), of([0, 0, 0, 52, 0, 0, 0, 1])].map(latin)
const SAID = ['Bench camera', 'Lantern Street', 'taken at home', 'xmpmeta', ...PLACES]

const PICTURES = [
  ['a JPEG', BASELINE_JPEG],
  ['a progressive JPEG', PROGRESSIVE_JPEG],
  ['a PNG', PNG],
  ['a lossy WebP', LOSSY_WEBP],
  ['a lossless WebP', LOSSLESS_WEBP],
] as const

describe.each(PICTURES)('%s', (_, bytes) => {
  test('with a camera’s name and a place in it comes out without either', () => {
    expect(SAID.filter((text) => has(bytes, text)).length).toBeGreaterThan(1)
    expect(SAID.filter((text) => has(stripped(bytes), text))).toEqual([])
    expect(stripped(bytes).length).toBeLessThan(bytes.length)
  })

  test('keeps the way it is to be shown, 6, in a record of 26 bytes', () => {
    expect(has(stripped(bytes), latin(orientationRecord(6)))).toBe(true)
    expect(orientationOf(orientationRecord(6))).toBe(6)
  })

  test('stripped once more, is the same', () => {
    expect(stripped(stripped(bytes))).toEqual(stripped(bytes))
  })

  test('cut off at any byte is refused, never half kept and never a crash', () => {
    const format = photoFormat(bytes) as PhotoFormat
    const ends = format === 'png' ? bytes.length : bytes.length - 1
    for (let length = 0; length < ends; length += 1)
      expect([length, strippedPicture(format, bytes.subarray(0, length))]).toEqual([length, null])
  })

  test('what hangs on behind its end is left off', () => {
    expect(stripped(of(bytes, 'Lantern Street 7', BASELINE_JPEG))).toEqual(stripped(bytes))
  })
})

describe('JPEG', () => {
  const sos = [0xff, 0xda, 0, 2]
  const frame = [0xff, 0xc0, 0, 2]
  const jpeg = (...parts: Parameters<typeof of>) => of([0xff, 0xd8], ...parts, [0xff, 0xd9])
  const picture = of(frame, sos, [1, 0xff, 0x00, 2, 0xff, 0xd3, 3])
  const segment = (marker: number, body: string | readonly number[]) => {
    const bytes = of(body)
    return of([0xff, marker, (bytes.length + 2) >> 8, (bytes.length + 2) & 0xff], bytes)
  }

  test('the scan is the same to the byte, in both kinds', () => {
    for (const bytes of [BASELINE_JPEG, PROGRESSIVE_JPEG]) {
      const scan = latin(bytes.subarray(latin(bytes).indexOf('\xff\xda')))
      expect(latin(stripped(bytes)).endsWith(scan)).toBe(true)
    }
  })

  test('another reader sees the same picture and the same way up', () => {
    const seen = (bytes: Uint8Array) => {
      const reader = new PDFDocument() as unknown as { openImage(data: Buffer): Record<string, number> }
      const { width, height, orientation } = reader.openImage(Buffer.from(bytes))
      return { width, height, orientation }
    }
    for (const bytes of [BASELINE_JPEG, PROGRESSIVE_JPEG]) {
      expect(seen(bytes)).toEqual({ width: 24, height: 16, orientation: 6 })
      expect(seen(stripped(bytes))).toEqual(seen(bytes))
    }
  })

  test('colour profile and Adobe’s own stay; IPTC, further pictures and comments go', () => {
    const icc = segment(0xe2, 'ICC_PROFILE\0\x01\x01abc')
    const adobe = segment(0xee, 'Adobe\0dxx')
    const others = [
      segment(0xed, 'Photoshop 3.0\0x'),
      segment(0xe2, 'MPF\0xx'),
      segment(0xfe, 'hello'),
      segment(0xe5, 'x'),
    ]
    expect(stripped(jpeg(icc, ...others, adobe, picture))).toEqual(jpeg(icc, adobe, picture))
  })

  test('the preview in the JFIF segment goes, the segment stays', () => {
    const head = 'JFIF\0\x01\x02\x01\0\x48\0\x48'
    const preview = segment(0xe0, of(head, [1, 1, 9, 9, 9]) as unknown as number[])
    expect(stripped(jpeg(preview, picture))).toEqual(
      jpeg(segment(0xe0, of(head, [0, 0]) as unknown as number[]), picture),
    )
  })

  test('a comment between two scans goes too', () => {
    expect(stripped(jpeg(frame, sos, [7], segment(0xfe, 'hello'), sos, [8]))).toEqual(jpeg(frame, sos, [7], sos, [8]))
  })

  test('upright, it gets no record at all', () => {
    const exif = segment(0xe1, of('Exif\0\0', orientationRecord(1)) as unknown as number[])
    expect(stripped(jpeg(exif, picture))).toEqual(jpeg(picture))
  })

  test.each([
    ['no frame', jpeg(sos, [1])],
    ['no scan', jpeg(frame)],
    ['a length below 2', jpeg([0xff, 0xe1, 0, 1], picture)],
    ['a length beyond the end', jpeg(frame, [0xff, 0xe1, 0xff, 0xff])],
    ['something between the segments', jpeg([0x00], picture)],
    ['nothing but FF', of([0xff, 0xd8], new Uint8Array(5000).fill(0xff))],
  ])('with %s is refused', (_, bytes) => {
    expect(strippedPicture('jpg', bytes)).toBeNull()
  })
})

describe('Exif records', () => {
  const record = (entry: readonly number[], from = 8) => of('MM\0*', [0, 0, 0, from], [0, 1], entry, [0, 0, 0, 0])

  test.each([
    ['little-endian', of('II*\0', [8, 0, 0, 0, 1, 0, 0x12, 1, 3, 0, 1, 0, 0, 0, 8, 0, 0, 0]), 8],
    ['a figure of 9', record([1, 0x12, 0, 3, 0, 0, 0, 1, 0, 9, 0, 0]), 1],
    ['a text instead of a figure', record([1, 0x12, 0, 2, 0, 0, 0, 1, 0, 6, 0, 0]), 1],
    ['a directory beyond the end', record([1, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0], 200), 1],
    ['a directory that says 65535 entries', of('MM\0*', [0, 0, 0, 8, 0xff, 0xff]), 1],
    ['no order of bytes', of('XX\0*', [0, 0, 0, 8]), 1],
    ['nothing', of(), 1],
  ])('%s', (_, bytes, orientation) => {
    expect(orientationOf(bytes)).toBe(orientation)
  })
})

describe('PNG', () => {
  const types = (bytes: Uint8Array) => {
    const found: string[] = []
    for (let at = 8; at < bytes.length; at += 12 + Buffer.from(bytes).readUInt32BE(at))
      found.push(latin(bytes.subarray(at + 4, at + 8)))
    return found
  }

  test('only the picture is left, and the record of its way up has a right check figure', () => {
    expect(types(PNG)).toEqual(expect.arrayContaining(['tEXt', 'iTXt', 'zTXt', 'eXIf']))
    expect(types(stripped(PNG))).toEqual(['IHDR', 'eXIf', 'IDAT', 'IEND'])
    const at = latin(stripped(PNG)).indexOf('eXIf')
    const own = Buffer.from(stripped(PNG))
    expect(own.readUInt32BE(at + 4 + 26)).toBe(crc32(own.subarray(at, at + 4 + 26)))
  })

  test('without a head first, or without a picture, it is refused', () => {
    const head = PNG.subarray(0, 8 + 25)
    const end = PNG.subarray(-12)
    expect(strippedPicture('png', of(head, end))).toBeNull()
    expect(strippedPicture('png', of(PNG.subarray(0, 8), PNG.subarray(33)))).toBeNull()
  })
})

describe('WebP', () => {
  test('without anything beside it, it is the same to the byte', () => {
    expect(stripped(PLAIN_WEBP)).toEqual(PLAIN_WEBP)
  })

  test('its head no longer speaks of XMP, and of Exif only for the way up', () => {
    for (const bytes of [LOSSY_WEBP, LOSSLESS_WEBP]) {
      expect([bytes[20] ?? 0, (stripped(bytes)[20] ?? 0) & 0x0c]).toEqual([expect.any(Number), 0x08])
      expect((bytes[20] ?? 0) & 0x0c).toBe(0x0c)
      expect(Buffer.from(stripped(bytes)).readUInt32LE(4)).toBe(stripped(bytes).length - 8)
    }
  })
})

test('whatever the bytes behind the first ones: stripped or refused, never an error, and never longer by more than a record', () => {
  const begin: Readonly<Record<PhotoFormat, Uint8Array>> = { jpg: BASELINE_JPEG, png: PNG, webp: LOSSY_WEBP }
  const format = fc.constantFrom<PhotoFormat>('jpg', 'png', 'webp')
  fc.assert(
    fc.property(format, fc.nat(), fc.uint8Array({ maxLength: 60 }), (kind, place, noise) => {
      const at = 4 + (place % (begin[kind].length - 4))
      const spoilt = Uint8Array.from(begin[kind])
      spoilt.set(noise.subarray(0, spoilt.length - at), at)
      const out = strippedPicture(kind, spoilt)
      if (out !== null) expect(out.length).toBeLessThanOrEqual(spoilt.length + 38)
    }),
    { numRuns: 2000 },
  )
})
