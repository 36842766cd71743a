/** Byte arrays: joining them, and reading figures of two or four bytes out of them. */

export function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}

export const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

export const startsWith = (bytes: Uint8Array, text: string): boolean =>
  [...text].every((letter, at) => bytes[at] === letter.charCodeAt(0))

/** Of the whole array; reads beyond its end throw, so the caller asks for the length first. */
export const viewOf = ({ buffer, byteOffset, byteLength }: Uint8Array): DataView =>
  new DataView(buffer, byteOffset, byteLength)
