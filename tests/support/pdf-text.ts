/** What a reader finds in a PDF: its words with their places, its tags, its title and language. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

export type PdfWords = {
  readonly text: string
  readonly x: number
  /** Base line, from the bottom of the page. */
  readonly y: number
  readonly width: number
  readonly size: number
}
export type PdfPage = {
  readonly width: number
  readonly height: number
  readonly words: readonly PdfWords[]
  readonly text: string
  /** Structure types in reading order, a page at a time. */
  readonly tags: readonly string[]
  readonly alternatives: readonly string[]
}
export type ReadPdf = {
  readonly pages: readonly PdfPage[]
  readonly text: string
  readonly title: string
  readonly language: string
  readonly tagged: boolean
  readonly created: string
}

type Node = { readonly role?: string; readonly alt?: string; readonly children?: readonly Node[] }
type Item = { readonly str: string; readonly transform: readonly number[]; readonly width: number }

/** µ is read back as the Greek letter, ligatures as one character: NFKC makes them what was written. */
const plain = (text: string): string => text.normalize('NFKC')

/** For comparing with a text that was broken into lines. */
export const squeezed = (text: string): string => plain(text).replace(/\s+/g, '')

function tagsOf(node: Node | null): Node[] {
  return node === null ? [] : [node, ...(node.children ?? []).flatMap(tagsOf)]
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const file = await getDocument({ data: bytes.slice(), verbosity: 0, isEvalSupported: false, useSystemFonts: false })
    .promise
  const pages: PdfPage[] = []
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number)
    const { width, height } = page.getViewport({ scale: 1 })
    const { items } = await page.getTextContent()
    const words = (items as unknown as Item[])
      .filter(({ str }) => str?.trim())
      .map(({ str, transform, width: wide }) => ({
        text: plain(str),
        x: transform[4] ?? 0,
        y: transform[5] ?? 0,
        width: wide,
        size: transform[3] ?? 0,
      }))
    const nodes = tagsOf((await page.getStructTree()) as Node | null)
    pages.push({
      width,
      height,
      words,
      text: words.map(({ text }) => text).join('\n'),
      tags: nodes.flatMap(({ role }) => (role === undefined ? [] : [role])),
      alternatives: nodes.flatMap(({ alt }) => (alt === undefined ? [] : [plain(alt)])),
    })
  }
  const { info } = (await file.getMetadata()) as unknown as { info: Record<string, string | boolean | undefined> }
  const marks = await file.getMarkInfo()
  const read: ReadPdf = {
    pages,
    text: pages.map(({ text }) => text).join('\n'),
    title: String(info.Title ?? ''),
    language: String(info.Language ?? ''),
    tagged: (marks as { Marked?: boolean } | null)?.Marked === true,
    created: String(info.CreationDate ?? ''),
  }
  await file.loadingTask.destroy()
  return read
}

/** Words that leave the printed area: there must be none. */
export function cutWords(pdf: ReadPdf, margin: number): string[] {
  return pdf.pages.flatMap(({ words, width, height }) =>
    words
      .filter(
        ({ x, y, width: wide, size }) =>
          x < margin - 0.5 || x + wide > width - margin + 0.5 || y < 20 || y + size > height - 20,
      )
      .map(({ text }) => text),
  )
}

/** Pairs of words printed over each other: there must be none. */
export function overprinted(pdf: ReadPdf): string[] {
  return pdf.pages.flatMap(({ words }) =>
    words.flatMap((a, i) =>
      words
        .slice(i + 1)
        .filter(
          (b) =>
            a.x + 0.3 < b.x + b.width &&
            b.x + 0.3 < a.x + a.width &&
            Math.abs(a.y - b.y) < 0.6 * Math.min(a.size, b.size),
        )
        .map((b) => `${a.text} / ${b.text}`),
    ),
  )
}
