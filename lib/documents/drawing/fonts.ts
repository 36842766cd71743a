/**
 * The two faces of the papers, read once for each process.
 *
 * They are found from the working directory, which is the project root under
 * `npm start` and in tests: a bundler rewrites module addresses but follows a
 * joined path that starts at the working directory, so the files travel along.
 * The digits of this family share one width, so figures line up without tricks.
 */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'

export type Fonts = { readonly regular: Buffer; readonly bold: Buffer }

let reading: Promise<Fonts> | null = null

async function read(): Promise<Fonts> {
  const [regular, bold] = await Promise.all([
    readFile(join(process.cwd(), 'node_modules/dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')),
    readFile(join(process.cwd(), 'node_modules/dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf')),
  ])
  return { regular, bold }
}

export function paperFonts(): Promise<Fonts> {
  reading ??= read().catch((error: unknown) => {
    reading = null
    throw new Error('The fonts of the papers are missing: run npm install in the project folder', { cause: error })
  })
  return reading
}
