/**
 * Which grid voltages a curve sheet shows, and where each curve's label stands.
 *
 * The family goes in round steps from near cutoff up to zero. A curve stays when it
 * can be told from the axis at the right edge. Where hot curves leave through the top
 * edge they crowd together: of those only as many stay as can be labelled.
 */
import { roundStep, shareOf } from './axis'
import { type Frame, linesIn, type PlotLine, type PlotPoint } from './frame'

export type GridCurve = {
  /** Grid to cathode, V; zero or negative. */
  readonly gridVolts: number
  readonly line: PlotLine
  readonly end: PlotPoint
  /** `right`: runs to the right edge; `top`: leaves through the upper one. */
  readonly leaves: 'right' | 'top'
}

/** Plate current, mA, at plate-to-cathode and grid-to-cathode volts. */
export type MilliampsAt = (plate: number, grid: number) => number

/** Shares of the frame. */
const LOWEST_END = 0.02
const TOP_LABEL = 0.075
const HALVINGS = 60

/** Grid volts at which the curve ends at this current at the right edge; zero when even zero volts stay below it. */
function gridAt(milliampsAt: MilliampsAt, plate: number, milliamps: number): number {
  if (milliampsAt(plate, 0) <= milliamps) return 0
  let [hot, cold] = [0, -1]
  while (milliampsAt(plate, cold) > milliamps && cold > -1e5) cold *= 2
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (hot + cold) / 2
    if (milliampsAt(plate, middle) > milliamps) hot = middle
    else cold = middle
  }
  return cold
}

function curveAt(frame: Frame, milliampsAt: MilliampsAt, gridVolts: number): GridCurve | null {
  const line = linesIn(frame, (plate) => milliampsAt(plate, gridVolts))[0]
  const end = line?.at(-1)
  if (!line || !end) return null
  return { gridVolts, line, end, leaves: end.across < frame.across.to ? 'top' : 'right' }
}

export type FamilySize = {
  /** Curves, at the most. */
  readonly most: number
  /** Shown however crowded: the curve a load line ends on. */
  readonly always: readonly number[]
}

/** From the coldest to the hottest. */
export function gridFamily(frame: Frame, milliampsAt: MilliampsAt, { most, always }: FamilySize): GridCurve[] {
  const { across, up } = frame
  const coldest = gridAt(milliampsAt, across.to, up.from + LOWEST_END * (up.to - up.from))
  const hottest = gridAt(milliampsAt, across.to, up.to)
  let step = roundStep(Math.max(hottest - coldest, 0.05 * Math.abs(coldest), 1e-3) / most)
  let family = familyInSteps(frame, milliampsAt, { coldest, step, always })
  while (family.length > most) {
    step = roundStep(1.5 * step)
    family = familyInSteps(frame, milliampsAt, { coldest, step, always })
  }
  return family
}

type Steps = { readonly coldest: number; readonly step: number; readonly always: readonly number[] }

function familyInSteps(frame: Frame, milliampsAt: MilliampsAt, { coldest, step, always }: Steps): GridCurve[] {
  const family: GridCurve[] = []
  const fixed = (curve: GridCurve) => always.includes(curve.gridVolts)
  for (let count = Math.floor(-coldest / step + 1e-9); count >= 0; count--) {
    // Adding zero turns −0 into 0.
    const curve = curveAt(frame, milliampsAt, Number((-count * step).toPrecision(12)) + 0)
    if (curve && (fixed(curve) || hasRoom(frame, family.at(-1), curve))) family.push(curve)
  }
  return family.filter((curve, i) => fixed(curve) || !crowdsNext(frame, curve, family.slice(i + 1).find(fixed)))
}

const acrossShare = ({ across }: Frame, { end }: GridCurve): number => shareOf(across, end.across)

function hasRoom(frame: Frame, colder: GridCurve | undefined, curve: GridCurve): boolean {
  if (curve.leaves === 'right') return true
  const place = acrossShare(frame, curve)
  const edge = colder?.leaves === 'top' ? acrossShare(frame, colder) : 1
  return place >= TOP_LABEL / 2 && edge - place >= TOP_LABEL
}

/** A curve gives way to one that is always shown and leaves the top beside it. */
function crowdsNext(frame: Frame, curve: GridCurve, fixed: GridCurve | undefined): boolean {
  if (!fixed || fixed.leaves === 'right' || curve.leaves === 'right') return false
  return acrossShare(frame, curve) - acrossShare(frame, fixed) < TOP_LABEL
}
