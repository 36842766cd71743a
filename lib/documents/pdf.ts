/**
 * A paper as PDF: tagged, in the paper's language, with the faces embedded.
 *
 * The same paper and the same `createdAt` give the same bytes, so a frozen paper
 * can be drawn again at any time and compared with what was sent.
 */
import PDFDocument from 'pdfkit'
import { drawnCautions } from './drawing/cautions-block'
import { drawnChassis } from './drawing/chassis-block'
import { paperFonts } from './drawing/fonts'
import { drawLetterhead, drawPageNumbers, drawRunningHead } from './drawing/page-frame'
import { type DrawnBlock, fillPages } from './drawing/piece'
import { drawnPlot } from './drawing/plot-block'
import { drawnQr } from './drawing/qr-block'
import type { Sheet } from './drawing/sheet'
import { drawnChecklist, drawnSignatures, drawnSignOff } from './drawing/sign-blocks'
import { drawnTable } from './drawing/table-block'
import { drawTakenBack } from './drawing/taken-back'
import { drawnFacts, drawnHeading, drawnNote, drawnParagraph } from './drawing/text-blocks'
import type { Block, Paper, QrBlock } from './paper'

const MARGIN = 48

export type Drawing = {
  readonly createdAt: Date
  /** Why the paper no longer holds, in a sentence that is printed across every page. Left out, or null: it holds. */
  readonly takenBack?: string | null
}

export async function renderPdf(paper: Paper, { createdAt, takenBack = null }: Drawing): Promise<Uint8Array> {
  const fonts = await paperFonts()
  const doc = new PDFDocument({
    size: paper.size,
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    tagged: true,
    lang: paper.language,
    displayTitle: true,
    pdfVersion: '1.7',
    info: {
      Title: `${paper.title} ${paper.number}`,
      Author: paper.letterhead.name,
      CreationDate: createdAt,
      ModDate: createdAt,
    },
  })
  doc.registerFont('regular', fonts.regular).registerFont('bold', fonts.bold)
  const bytes = collected(doc)
  drawPaper(doc, paper, takenBack)
  doc.end()
  return bytes
}

export function collected(doc: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = []
    doc.on('data', (chunk: Buffer) => chunks.push(chunk))
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))))
    doc.on('error', reject)
  })
}

function drawPaper(doc: PDFKit.PDFDocument, paper: Paper, takenBack: string | null): void {
  doc.addPage()
  const { width, height } = doc.page
  const sheet: Sheet = { doc, left: MARGIN, width: width - 2 * MARGIN, top: 56, bottom: height - 42 }
  const root = doc.struct('Document')
  doc.addStructure(root)
  const [first, ...others] = paper.blocks
  // A QR code that comes first stands beside the letterhead; anywhere else it stands in its place.
  const headQr: QrBlock | null = first?.type === 'qr' ? first : null
  const blocks = headQr === null ? paper.blocks : others
  const startY = drawLetterhead(sheet, paper, headQr, root)
  const nextPage = (): void => {
    doc.addPage()
    drawRunningHead(sheet, paper)
  }
  const drawn = blocks.map((block, i) => {
    const own = drawnBlock(sheet, block)
    return blocks[i + 1]?.type === 'signatures' ? keptWithNext(own) : own
  })
  fillPages(sheet, drawn, root, { startY, nextPage })
  if (takenBack !== null) drawTakenBack(sheet, takenBack, root)
  root.end()
  drawPageNumbers(sheet, paper)
}

/** A signature alone on a page would sign nothing. */
function keptWithNext(block: DrawnBlock): DrawnBlock {
  const last = block.pieces.length - 1
  return { ...block, pieces: block.pieces.map((piece, i) => (i === last ? { ...piece, keepsNext: true } : piece)) }
}

function drawnBlock(sheet: Sheet, block: Block): DrawnBlock {
  switch (block.type) {
    case 'heading':
      return drawnHeading(sheet, block)
    case 'facts':
      return drawnFacts(sheet, block)
    case 'paragraph':
      return drawnParagraph(sheet, block)
    case 'note':
      return drawnNote(sheet, block)
    case 'table':
      return drawnTable(sheet, block)
    case 'cautions':
      return drawnCautions(sheet, block)
    case 'checklist':
      return drawnChecklist(sheet, block)
    case 'sign-off':
      return drawnSignOff(sheet, block)
    case 'signatures':
      return drawnSignatures(sheet, block)
    case 'qr':
      return drawnQr(sheet, block)
    case 'chassis':
      return drawnChassis(sheet, block)
    case 'plot':
      return drawnPlot(sheet, block)
  }
}
