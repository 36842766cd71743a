/** What the chassis drawing is told about one amplifier; all words ready to show. */
import type { ChassisRole, SocketBase } from '@/lib/domain/amp/chassis-layout'

export type SocketState = 'not-measured' | 'within' | 'over' | 'under' | 'uncertain'

export type ChassisSocketView = {
  readonly id: string
  /** "V1". */
  readonly position: string
  /** Decides the automatic place only. */
  readonly role: ChassisRole
  readonly roleWord: string
  /** "12AX7A / 7025"; empty when not known. */
  readonly typeFitted: string
  readonly base: SocketBase
  /** 0–100 left to right, controls in front; null: automatic. */
  readonly across: number | null
  /** 0–100 front to rear; null: automatic. */
  readonly depth: number | null
  /** The tube's own mark in the stock book. */
  readonly mark?: string | null
  readonly state: SocketState
  readonly stateWord: string
  /** "38.2 mA", "17.1 W · 68 % ±3"; a line that is too long is broken at the dot. */
  readonly readingLines: readonly string[]
  /** Dissipation in per cent of the rating; null draws no heat. */
  readonly percentOfRating: number | null
  /** Where the scale has its limit tick, in per cent of the rating; 100 when not given. */
  readonly limitPercent?: number
  readonly href?: string
}

export type ChassisWords = {
  /** "Tube" or "Valve". */
  readonly tube: string
  readonly front: string
  readonly rear: string
  readonly mainsTransformer: string
  readonly outputTransformer: string
  readonly choke?: string
  readonly capacitorCan?: string
  readonly fromAbove?: string
  readonly pinOne?: string
  readonly heatScale?: string
  readonly noType?: string
  readonly markWord?: string
  readonly asTable?: string
  readonly position?: string
  readonly role?: string
  readonly state?: string
  readonly reading?: string
}

const USUAL_WORDS = {
  choke: 'choke',
  capacitorCan: 'filter can',
  fromAbove: 'seen from above',
  pinOne: 'pin 1, counted from above',
  heatScale: 'dissipation, tick at the limit',
  noType: 'type not noted',
  markWord: 'mark',
  asTable: 'As a table',
  position: 'Position',
  role: 'Role',
  state: 'State',
  reading: 'Reading',
} as const

export type AllChassisWords = Required<ChassisWords>

export const withUsualWords = (words: ChassisWords): AllChassisWords => ({ ...USUAL_WORDS, ...words })

export const typeOrNone = (socket: ChassisSocketView, words: AllChassisWords): string =>
  socket.typeFitted.trim() === '' ? words.noType : socket.typeFitted

/** The whole socket in one sentence, for reading aloud. */
export function spokenSocket(socket: ChassisSocketView, words: AllChassisWords): string {
  const mark = socket.mark ? [`${words.markWord} ${socket.mark}`] : []
  const parts = [typeOrNone(socket, words), socket.roleWord, ...mark, socket.stateWord, ...socket.readingLines]
  return `${words.tube} ${socket.position}: ${parts.join(', ')}`
}
