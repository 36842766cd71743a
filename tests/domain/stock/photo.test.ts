import { expect, it } from 'vitest'
import { photoFormat, strippedFileName } from '@/lib/domain/stock/photo'

// PNG specification (W3C), 5.2: 137 80 78 71 13 10 26 10. JPEG (ITU-T T.81): SOI is FF D8, then a marker FF. WebP (RFC 9649,
// 2.4): RIFF, a length of four bytes, WEBP.
it.each([
  ['png', [137, 80, 78, 71, 13, 10, 26, 10, 0]],
  ['jpg', [0xff, 0xd8, 0xff, 0xe0]],
  [null, [0xff, 0xd8, 0x00, 0xe0]],
  ['webp', [...Buffer.from('RIFF\0\0\0\0WEBP')]],
  [null, [...Buffer.from('RIFF\0\0\0\0WAVE')]],
  [null, [...Buffer.from('RIFF')]],
  [null, [71, 73, 70, 56, 57, 97]],
  [null, []],
])('%s is told by its first bytes', (format, bytes) => {
  expect(photoFormat(new Uint8Array(bytes))).toBe(format)
})

it.each([
  ['../../etc/passwd', 'passwd'],
  ['C:\\pictures\\Röhre 6L6 "GC".jpg', 'Rohre-6L6-GC-.jpg'],
  ['.htaccess', 'htaccess'],
  ['\r\nset-cookie: x', 'set-cookie-x'],
  ['…', 'picture'],
])('the name %j is stripped to %j', (typed, stripped) => {
  expect(strippedFileName(typed)).toBe(stripped)
})
