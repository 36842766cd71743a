/**
 * The smallest thing that is never split, and how pieces fill pages.
 *
 * A piece that keeps the next one stays on its page, as far as the whole chain
 * fits a page at all. A piece of a table draws the table's head again when it
 * opens a new page.
 */
import type { Sheet, Tag } from './sheet'

export type Piece = {
  readonly height: number
  /** Dropped at the top of a page. */
  readonly spaceBefore: number
  readonly keepsNext: boolean
  readonly draw: (y: number, parent: Tag) => void
  readonly repeats?: { readonly height: number; readonly draw: (y: number) => void }
}
export type DrawnBlock = {
  /** Standard structure type: "P", "H2", "L", "Table", "Figure" … */
  readonly structure: string
  readonly pieces: readonly Piece[]
}

const chainHeight = (pieces: readonly Piece[], from: number): number => {
  let height = 0
  for (let i = from; i < pieces.length; i++) {
    const piece = pieces[i]
    if (piece === undefined) break
    height += piece.height + (i === from ? 0 : piece.spaceBefore)
    if (!piece.keepsNext) break
  }
  return height
}

export type Pages = { readonly startY: number; readonly nextPage: () => void }

export function fillPages(sheet: Sheet, blocks: readonly DrawnBlock[], root: Tag, pages: Pages): void {
  const { doc } = sheet
  const all = blocks.flatMap(({ pieces }) => pieces)
  const room = sheet.bottom - sheet.top
  let y = pages.startY
  let fresh = false
  let index = 0
  for (const block of blocks) {
    const parent = doc.struct(block.structure)
    root.add(parent)
    for (const piece of block.pieces) {
      const chain = chainHeight(all, index)
      const needed = chain <= room ? chain : piece.height
      if (!fresh && y + piece.spaceBefore + needed > sheet.bottom) {
        pages.nextPage()
        y = sheet.top
        fresh = true
        if (piece.repeats !== undefined) {
          piece.repeats.draw(y)
          y += piece.repeats.height
        }
      }
      if (!fresh) y += piece.spaceBefore
      piece.draw(y, parent)
      y += piece.height
      fresh = false
      index += 1
    }
    parent.end()
  }
}
