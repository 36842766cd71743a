/** A whole paper as plain text: for mail, previews, and reading by ear. Says all that the page says. */
import type { Block, Letterhead, Paper } from './paper'

const plain = (text: string): string => text.replace(/\u00a0/g, ' ')
const joined = (cells: readonly string[]): string => cells.filter((cell) => cell !== '').join(' | ')

export function letterheadLines({ name, addressLines, phone, email }: Letterhead): string[] {
  return [name, ...addressLines, phone, email].filter((line) => line.trim() !== '').map(plain)
}

export function paperLines(paper: Paper): string[] {
  const head = [...letterheadLines(paper.letterhead), '', `${paper.title} ${paper.number}`, `Issued ${paper.issuedOn}`]
  return [...head, ...paper.blocks.flatMap((block) => ['', ...blockLines(block)])].map(plain)
}

export const paperText = (paper: Paper): string => `${paperLines(paper).join('\n')}\n`

function blockLines(block: Block): string[] {
  switch (block.type) {
    case 'heading':
      return [block.text.toUpperCase()]
    case 'facts':
      return block.items.map(({ label, value }) => `${label}: ${value}`)
    case 'paragraph':
      return block.tone === 'quoted' ? block.text.split('\n').map((line) => `> ${line}`) : [block.text]
    case 'note':
      return [block.text]
    case 'table':
      return [
        ...[joined(block.columns.map(({ label }) => label))].filter((line) => line !== ''),
        ...block.groups.flatMap(({ label, rows }) => [
          ...(label === '' ? [] : [`${label}:`]),
          ...rows.flatMap(({ cells, detail }) => [joined(cells), ...(detail ? [`  ${detail}`] : [])]),
        ]),
        ...block.totals.map(({ label, value }) => `${label}: ${value}`),
      ]
    case 'cautions':
      return [block.title, ...block.items.map((item) => `- ${item}`)]
    case 'checklist':
      return block.items.map(({ text, detail, ticked }) => `[${ticked ? 'x' : ' '}] ${joined([text, detail])}`)
    case 'sign-off':
      return block.lines.map((line) =>
        joined([line.line, line.limit, line.value, line.instrument, line.name, line.time, line.result || 'open']),
      )
    case 'signatures':
      return block.lines.map(({ label, name, date }) => `${label}: ${name || '________'}, date: ${date || '________'}`)
    case 'qr':
      return [`${block.caption}: ${block.text}`]
    case 'plot':
      return [block.title, block.spoken]
    case 'chassis':
      return [block.caption, ...block.sockets.map(({ position, lines }) => `${position}: ${lines.join(', ')}`)]
  }
}
