/**
 * The model every paper of the shop is drawn from.
 *
 * A view turns facts into a `Paper` once, with every value labelled and
 * formatted. PDF, screen and mail draw that same value, so they cannot
 * disagree. It is plain JSON: an issued paper is stored as it is and drawn
 * again later, byte for byte.
 */
export type PaperKind = 'receipt' | 'quote' | 'work-order' | 'pickup-sheet'
export type PaperSize = 'A4' | 'LETTER'
export type PaperLanguage = 'en-US' | 'en-GB'

export type Letterhead = {
  readonly name: string
  readonly addressLines: readonly string[]
  readonly phone: string
  readonly email: string
}

export type Paper = {
  readonly kind: PaperKind
  readonly title: string
  /** As it is said over the phone: "1047-0". */
  readonly number: string
  readonly letterhead: Letterhead
  readonly issuedOn: string
  readonly size: PaperSize
  readonly language: PaperLanguage
  readonly blocks: readonly Block[]
}

export type Block =
  | HeadingBlock
  | FactsBlock
  | ParagraphBlock
  | TableBlock
  | CautionsBlock
  | ChecklistBlock
  | SignOffBlock
  | SignaturesBlock
  | QrBlock
  | ChassisBlock
  | PlotBlock
  | NoteBlock

export type HeadingBlock = { readonly type: 'heading'; readonly text: string }

export type Fact = { readonly label: string; readonly value: string }
export type FactsBlock = { readonly type: 'facts'; readonly columns: 1 | 2; readonly items: readonly Fact[] }

/** `quoted` is someone else's words, set apart. */
export type ParagraphBlock = { readonly type: 'paragraph'; readonly text: string; readonly tone: 'plain' | 'quoted' }

export type TableColumn = {
  readonly label: string
  readonly align: 'start' | 'end'
  /** Share of the width, against the sum of all weights. */
  readonly weight: number
}
export type TableRow = {
  /** As many as there are columns; an empty string is an empty cell. */
  readonly cells: readonly string[]
  /** A line under the cells, over the whole width of the table. */
  readonly detail?: string
  /** Stays on one page with the row after it, and no rule between them. */
  readonly keepsNext?: boolean
}
export type TableGroup = { readonly label: string; readonly rows: readonly TableRow[] }
export type TableTotal = { readonly label: string; readonly value: string; readonly strong: boolean }
export type TableBlock = {
  readonly type: 'table'
  /** With no label at all the head is left out. */
  readonly columns: readonly TableColumn[]
  /** A group with an empty label has no line of its own. */
  readonly groups: readonly TableGroup[]
  readonly totals: readonly TableTotal[]
}

/** `danger` is the one box nobody may overlook: an amplifier that must not be connected. */
export type CautionsBlock = {
  readonly type: 'cautions'
  readonly level: 'caution' | 'danger'
  readonly title: string
  readonly items: readonly string[]
}

export type ChecklistItem = { readonly text: string; readonly detail: string; readonly ticked: boolean }
export type ChecklistBlock = { readonly type: 'checklist'; readonly items: readonly ChecklistItem[] }

/** An empty string is a blank rule to write on. */
export type SignOffLine = {
  readonly line: string
  readonly limit: string
  readonly value: string
  /** With its calibration date. */
  readonly instrument: string
  readonly name: string
  readonly time: string
  /** "pass", "FAIL", "not tested". */
  readonly result: string
  readonly state: 'open' | 'passed' | 'failed' | 'not-tested'
}
export type SignOffBlock = { readonly type: 'sign-off'; readonly lines: readonly SignOffLine[] }

/** An empty name or date is a blank rule to write on. */
export type SignatureLine = { readonly label: string; readonly name: string; readonly date: string }
export type SignaturesBlock = { readonly type: 'signatures'; readonly lines: readonly SignatureLine[] }

export type QrBlock = { readonly type: 'qr'; readonly text: string; readonly caption: string }

/** Places on the chassis seen from above: 0–100 from left to right, 0–100 from rear to front. */
export type ChassisSocket = {
  readonly position: string
  readonly across: number
  readonly depth: number
  readonly lines: readonly string[]
}
export type ChassisLandmark = {
  readonly label: string
  /** Middle of the part. */
  readonly across: number
  readonly depth: number
  readonly width: number
  readonly height: number
}
export type ChassisBlock = {
  readonly type: 'chassis'
  readonly caption: string
  readonly sockets: readonly ChassisSocket[]
  readonly landmarks: readonly ChassisLandmark[]
}

/** Shares of the frame: 0 to 1 from its left and from its foot. */
export type PlotPlace = readonly [across: number, up: number]
export type PlotTick = { readonly at: number; readonly label: string }
export type PlotCurve = {
  readonly label: string
  readonly line: readonly PlotPlace[]
  /** Where it leaves the frame: its label stands there. */
  readonly leaves: 'right' | 'top'
}
/** Names of points that lie close together. */
export type PlotName = { readonly label: string; readonly at: PlotPlace; readonly side: 'above' | 'below' }
export type PlotMark = {
  readonly shape: 'open' | 'filled'
  readonly at: PlotPlace
  /** Lower left and upper right corner of the 95 % box. */
  readonly box: readonly [PlotPlace, PlotPlace]
}
export type PlotLegendLine = {
  readonly kind: 'curve' | 'heat' | 'point-before' | 'point' | 'box' | 'load'
  readonly text: string
}
/** Plate curves with idle points on them. */
export type PlotBlock = {
  readonly type: 'plot'
  readonly title: string
  /** All of it in sentences, for reading aloud. */
  readonly spoken: string
  readonly acrossTitle: string
  readonly upUnit: string
  readonly curvesTitle: string
  readonly acrossTicks: readonly PlotTick[]
  readonly upTicks: readonly PlotTick[]
  /** From the coldest to the hottest. */
  readonly curves: readonly PlotCurve[]
  readonly limit: { readonly line: readonly PlotPlace[]; readonly region: readonly PlotPlace[] } | null
  /** Empty: no load is known. */
  readonly load: readonly PlotPlace[]
  readonly marks: readonly PlotMark[]
  readonly names: readonly PlotName[]
  readonly legend: readonly PlotLegendLine[]
}

export type NoteBlock = { readonly type: 'note'; readonly text: string }
