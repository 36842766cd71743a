/**
 * One operating row as the model sees it: electrode voltages against the cathode and
 * currents of one tube, in V, A, S and Ω.
 *
 * How a printed row becomes one:
 *   currents of a push-pull pair are halved;
 *   grid volts are taken as printed; where only a cathode resistor is printed,
 *     Vg1 = −Vk = −Rk·(Ia + Ig2), of both tubes where the resistor is common;
 *   triode connection of a screen tube: Vg2 = Va, and the printed current, gm and rp
 *     are those of plate and screen together;
 *   supply volts: Va = supply − Vk, Vg2 = (screen) supply − Vk − drop over the screen
 *     resistor. The drop in the output transformer is not printed and taken as nil.
 *
 * Printed plate volts on a cathode-resistor row: `printedTo` says what was taken.
 *   'cathode' for power tubes: from 72 mA and 6 mA/V at 250/250/−14 V (µ 8) a 6L6 on
 *     170 Ω would draw 75 mA with 250 V to the cathode and 70 with 250 V to the chassis;
 *     the handbook prints 75. European books print Va apart from the supply voltage Vb.
 *   'ground' for small-signal tubes, where US books head the column "plate supply
 *     voltage", the difference being 1 to 2 V; and for one EL34 row, see TO_CHASSIS.
 *
 * Left out: figures recalled with low confidence, rows without a current, and rows
 * that repeat the idle point of an earlier row.
 */
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import { provenanceOf } from '@/lib/domain/tube/handbook-sources'
import type { HandbookType, OperatingRow, RowKey } from '@/lib/domain/tube/handbook-type'
import { ADDED_ROWS, type AddedRow } from './added-rows'

export type SelfBias = {
  /** Ω that one tube's cathode current sees: twice a resistor that a pair shares. */
  readonly ohms: number
  /** True: plate and screen volts are printed against chassis and shrink as the cathode rises. */
  readonly movesElectrodes: boolean
}

export type ModelRow = {
  /** Key of the fitted curves: a type's id, or id and section. */
  readonly key: string
  readonly typeId: string
  readonly label: string
  /** 'triode': plate and screen tied, or a triode proper. */
  readonly connection: 'pentode' | 'triode'
  /** Against the cathode, at the printed current. */
  readonly plate: number
  readonly screen: number
  readonly grid: number
  /** Set where the row prints a resistor and no grid volts: then the grid follows from the current. */
  readonly selfBias: SelfBias | null
  readonly ia: number
  readonly ig2: number | null
  readonly gm: number | null
  readonly rp: number | null
  readonly mu: number | null
  readonly screenGridMu: number | null
  /** Volts printed against chassis were reduced by Vk only where this says 'ground' or 'supply'. */
  readonly printedTo: 'fixed-bias' | 'cathode' | 'ground' | 'supply'
  readonly source: string
  readonly sure: 'published' | 'high' | 'medium'
}

type Plain = {
  readonly typeId: string
  readonly label: string
  readonly connection: 'pentode' | 'triode'
  readonly currentsFor: 1 | 2
  readonly get: (key: RowKey) => number | null
  readonly againstChassis: boolean
  readonly source: string
  readonly sure: ModelRow['sure']
}

/**
 * Rows of one tube under several numbers are fitted together. From memory: 7189 is an EL84
 * with higher limits, the units of the 12DW7 are one of a 12AX7 and one of a 12AU7.
 * Unlike sections of one bulb are fitted apart.
 */
function curveKey(typeId: string, label: string, connection: 'pentode' | 'triode'): string {
  if (typeId === '7189') return 'EL84'
  if (typeId === '12DW7') return label.startsWith('high-mu') ? '12AX7' : '12AU7'
  if (typeId === 'ECL82' && connection === 'triode') return 'ECL82:triode'
  return typeId
}

type Bias = { readonly grid: number; readonly cathode: number; readonly ohms: number | null }

function biasOf(row: Plain, cathodeCurrent: number): Bias | null {
  const grid = row.get('gridVolts')
  if (grid !== null) return { grid, cathode: 0, ohms: null }
  const common = row.get('commonCathodeOhms')
  const ohms = common === null ? row.get('cathodeOhms') : common * 2
  return ohms === null ? null : { grid: -ohms * cathodeCurrent, cathode: ohms * cathodeCurrent, ohms }
}

type Electrodes = { readonly plate: number; readonly screen: number; readonly printedTo: ModelRow['printedTo'] }

function electrodesOf(row: Plain, bias: Bias, ig2: number): Electrodes | null {
  const strapped = row.connection === 'triode'
  const supply = row.get('supplyVolts')
  if (supply !== null) {
    const plate = supply - bias.cathode
    const screenDrop = (row.get('commonScreenOhms') ?? 0) * 2 * ig2
    const screen = strapped ? plate : (row.get('screenSupplyVolts') ?? supply) - bias.cathode - screenDrop
    return { plate, screen, printedTo: 'supply' }
  }
  const printed = row.get('plateVolts')
  const printedScreen = strapped ? printed : row.get('screenVolts')
  if (printed === null || printedScreen === null) return null
  const printedTo = bias.ohms === null ? 'fixed-bias' : row.againstChassis ? 'ground' : 'cathode'
  const lift = printedTo === 'ground' ? bias.cathode : 0
  return { plate: printed - lift, screen: printedScreen - lift, printedTo }
}

const scaled = (value: number | null, factor: number): number | null => (value === null ? null : value * factor)

function modelRow(row: Plain): ModelRow | null {
  const milliamps = row.get('plateMilliamps')
  if (milliamps === null) return null
  const ia = milliamps / 1000 / row.currentsFor
  const ig2 = scaled(row.get('screenMilliamps'), 1 / 1000 / row.currentsFor)
  const bias = biasOf(row, ia + (ig2 ?? 0))
  const electrodes = bias && electrodesOf(row, bias, ig2 ?? 0)
  if (!bias || !electrodes) return null
  return {
    key: curveKey(row.typeId, row.label, row.connection),
    typeId: row.typeId,
    label: row.label,
    connection: row.connection,
    ...electrodes,
    grid: bias.grid,
    selfBias: bias.ohms === null ? null : { ohms: bias.ohms, movesElectrodes: electrodes.printedTo !== 'cathode' },
    ia,
    ig2: row.connection === 'pentode' ? ig2 : null,
    gm: scaled(row.get('gmMilliampsPerVolt'), 1 / 1000),
    rp: scaled(row.get('plateResistanceKilohms'), 1000),
    mu: row.get('mu'),
    screenGridMu: row.get('screenGridMu'),
    source: row.source,
    sure: row.sure,
  }
}

/**
 * EL34 on 370 Ω, 375 V, 70 mA: beside it the book prints 400 V supply, 220 Ω common, 65 mA,
 * that is 371 V and −28.6 V against the cathode. With some 8 mA/V and a µ of 10.5 that
 * row asks for 70 mA at 349 V and −25.9 V (375 V against chassis), for 90 mA at 375 V.
 */
const TO_CHASSIS = new Set(['EL34 triode-connected single'])

const againstChassis = (type: HandbookType, label: string): boolean =>
  type.role === 'small-signal' || TO_CHASSIS.has(`${type.id} ${label}`)

/** The published remark on this row says that its current includes the screen's and the screen is tied. */
const STRAPPED_AS_PRINTED = new Set(['KT66 push-pull, cathode bias (per valve)'])

function plainHandbookRow(type: HandbookType, row: OperatingRow): Plain | null {
  if (row.connection === 'diode') return null
  const current = row.figures.plateMilliamps
  const provenance = provenanceOf(current?.[1] ?? 'us-low')
  if (provenance.confidence === 'low') return null
  return {
    typeId: type.id,
    label: row.label,
    connection: STRAPPED_AS_PRINTED.has(`${type.id} ${row.label}`) ? 'triode' : row.connection,
    currentsFor: row.currentsFor,
    get: (key) => {
      const figure = row.figures[key]
      return figure && provenanceOf(figure[1]).confidence !== 'low' ? figure[0] : null
    },
    againstChassis: againstChassis(type, row.label),
    source: provenance.text,
    sure: provenance.confidence ?? 'published',
  }
}

const ADDED_KEYS: Readonly<Partial<Record<RowKey, keyof AddedRow['printed']>>> = {
  plateVolts: 'plate',
  supplyVolts: 'supply',
  screenVolts: 'screen',
  gridVolts: 'grid',
  cathodeOhms: 'cathodeOhms',
  commonCathodeOhms: 'commonCathodeOhms',
  commonScreenOhms: 'commonScreenOhms',
  plateMilliamps: 'ia',
  screenMilliamps: 'ig2',
  gmMilliampsPerVolt: 'gm',
  plateResistanceKilohms: 'rp',
  mu: 'mu',
  screenGridMu: 'screenGridMu',
}

function plainAddedRow(added: AddedRow, type: HandbookType): Plain {
  return {
    ...added,
    connection: added.connection === 'pentode' ? 'pentode' : 'triode',
    get: (key) => {
      const name = ADDED_KEYS[key]
      return (name && added.printed[name]) ?? null
    },
    againstChassis: againstChassis(type, added.label),
  }
}

function samePoint(a: ModelRow, b: ModelRow): boolean {
  return (
    a.key === b.key &&
    a.connection === b.connection &&
    a.plate === b.plate &&
    a.screen === b.screen &&
    a.grid === b.grid &&
    a.ia === b.ia
  )
}

/** Every usable row, in handbook order, added ones of a type after its own. */
export function modelRows(): readonly ModelRow[] {
  const rows: ModelRow[] = []
  for (const type of HANDBOOK) {
    const own = type.rows.map((row) => plainHandbookRow(type, row)).filter((row) => row !== null)
    const added = ADDED_ROWS.filter((row) => row.typeId === type.id).map((row) => plainAddedRow(row, type))
    for (const plain of [...own, ...added]) {
      const row = modelRow(plain)
      if (row && !rows.some((other) => samePoint(other, row))) rows.push(row)
    }
  }
  return rows
}
