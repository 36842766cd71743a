/**
 * An output stage as a netlist for ngspice, a general-purpose circuit simulator.
 *
 * The tubes are behavioural current sources that hold the published equations as they
 * are printed (Koren, "Improved vacuum tube models for SPICE simulations", Glass Audio
 * 5/96, for the triode and the soft cutoff; Child–Langmuir's 3/2 law; a current-division
 * law), written out here from the paper and not from the program's own code. A source of
 * 0 V in each plate, screen and supply lead reads its current; a wire of no resistance is
 * another. `max(…)` and `min(…)` keep the equations defined on the way; at a solution with
 * plates above 1 mV, screens above 1 V and a grid that does not pass hundreds of cutoff
 * widths they do nothing, so the netlist is the published form.
 *
 * The program widens the cutoff, w = √(Vg2² + floor²)/kp, to stay defined with the screen at
 * its cathode (lib/domain/model/plate-curves.ts). The netlist does not, unless a comparison
 * wants to see what such a floor would cost.
 */
import type { OutputStage, OutputTube } from '@/lib/domain/circuit/output-stage'

const number = (value: number) => value.toExponential(16)

function resistor(name: string, from: string, to: string, ohms: number): string {
  return ohms === 0 ? `v${name} ${from} ${to} dc 0` : `r${name} ${from} ${to} ${number(ohms)}`
}

type Pentode = Extract<OutputTube['tube'], { kind: 'pentode' }>
type Triode = Extract<OutputTube['tube'], { kind: 'triode' }>

function pentodeSources(n: number, { p, mu, muA, r, kp }: Pentode, floorVolts: number): string[] {
  const va = `max(v(p${n})-v(k${n}),1m)`
  const vs = `max(v(s${n})-v(k${n}),1m)`
  const vg = `(v(g${n})-v(k${n}))`
  const screen = `max(v(s${n})-v(k${n}),1)`
  const widened = floorVolts === 0 ? screen : `sqrt(${screen}*${screen}+${number(floorVolts ** 2)})`
  const w = `(${widened}/${number(kp)})`
  const inner = `min((${vg}+${vs}/${number(mu)}+${va}/${number(muA)})/${w},500)`
  const total = `${number(p)}*pow(${w}*ln(1+exp(${inner})),1.5)`
  const ratio = `(${number(r)}*${vs}/${va})`
  return [`bp${n} pa${n} k${n} i=${total}/(1+${ratio})`, `bs${n} sa${n} k${n} i=${total}*${ratio}/(1+${ratio})`]
}

function triodeSources(n: number, { mu, x, kg, kp, kvb }: Triode): string[] {
  const va = `max(v(p${n})-v(k${n}),1m)`
  const inner = `${number(kp)}*(1/${number(mu)}+(v(g${n})-v(k${n}))/sqrt(${number(kvb)}+${va}*${va}))`
  const e = `(${va}/${number(kp)}*ln(1+exp(${inner})))`
  // Koren's (1 + sgn E1) is 2 for the positive E1 of this form.
  return [`bp${n} pa${n} k${n} i=2*pow(${e},${number(x)})/${number(kg)}`, `bs${n} sa${n} k${n} i=0`]
}

/** A strapped screen hangs on its plate, past no winding: the netlist has no tap then. */
function screenSource({ screenFeed }: OutputStage, side: OutputTube['side']): string {
  if (screenFeed.kind === 'triode-strapped') return `plate${side}`
  return screenFeed.kind === 'primary-tap' ? `tap${side}` : 'snode'
}

function tubeLines(stage: OutputStage, tube: OutputTube, n: number, floorVolts: number): string[] {
  const { side, gridSupply, gridLeak, reverseGridCurrent, biasResistor } = tube
  const screenFrom = screenSource(stage, side)
  return [
    `vp${n} plate${side} p${n} dc 0`,
    `vpa${n} p${n} pa${n} dc 0`,
    resistor(`s${n}`, screenFrom, `s${n}`, tube.screenResistance),
    `vsa${n} s${n} sa${n} dc 0`,
    resistor(`k${n}`, `k${n}`, biasResistor === null ? '0' : `bias${biasResistor}`, tube.senseResistance),
    resistor(`g${n}`, `g${n}`, gridSupply === null ? '0' : `grid${gridSupply}`, gridLeak),
    `ig${n} 0 g${n} dc ${number(reverseGridCurrent)}`,
    ...(tube.tube.kind === 'pentode' ? pentodeSources(n, tube.tube, floorVolts) : triodeSources(n, tube.tube)),
  ]
}

function supplyLines({ supply, mainsFactor }: OutputStage): string[] {
  const { openCircuit, sourceResistance, rectifier, drawn } = supply
  return [
    `vsupply mains 0 dc ${number(openCircuit * mainsFactor)}`,
    `vmeter mains source dc 0`,
    resistor('source', 'source', rectifier ? 'rect' : 'res', sourceResistance),
    ...(rectifier ? [`brect rect res i=${number(rectifier.k)}*pow(max(v(rect)-v(res),0),1.5)`] : []),
    `idrawn res 0 dc ${number(drawn)}`,
  ]
}

function screenLines({ screenFeed, mainsFactor }: OutputStage): string[] {
  if (screenFeed.kind === 'primary-tap' || screenFeed.kind === 'triode-strapped') return []
  const drawn = `iscreens snode 0 dc ${number(screenFeed.drawn)}`
  if (screenFeed.kind === 'dropper') return [resistor('dropper', 'res', 'snode', screenFeed.resistance), drawn]
  return [
    `vscreens sopen 0 dc ${number(screenFeed.openCircuit * mainsFactor)}`,
    resistor('dropper', 'sopen', 'snode', screenFeed.sourceResistance),
    drawn,
  ]
}

/** A side without a tube still has its nodes, at the reservoir. */
function primaryLines({ halfPrimary, screenFeed }: OutputStage): string[] {
  const tap = screenFeed.kind === 'primary-tap' ? screenFeed.tap : 0
  return (['a', 'b'] as const).flatMap((side) => [
    resistor(`upper${side}`, 'res', `tap${side}`, tap * halfPrimary[side]),
    resistor(`lower${side}`, `tap${side}`, `plate${side}`, (1 - tap) * halfPrimary[side]),
  ])
}

/** Only parts that a tube hangs on: an unused resistor would be a node to nowhere. */
function biasLines(stage: OutputStage): string[] {
  const { gridSupplies, biasResistors, tubes, mainsFactor } = stage
  return [
    ...gridSupplies
      .filter(({ id }) => tubes.some(({ gridSupply }) => gridSupply === id))
      .map(({ id, voltage }) => `vgrid${id} grid${id} 0 dc ${number(voltage * mainsFactor)}`),
    ...biasResistors
      .filter(({ id }) => tubes.some(({ biasResistor }) => biasResistor === id))
      .map(({ id, resistance }) => resistor(`bias${id}`, `bias${id}`, '0', resistance)),
  ]
}

export type StartingVoltages = Readonly<Record<string, number>>

export type NetlistOptions = {
  /** Under the cutoff's width; 0, the equations as printed, where none is given. */
  readonly floorVolts?: number
  /** `tight` is far below the 1e-6 that a comparison asks for; the defaults stop at 1e-3. */
  readonly tolerances?: 'tight' | 'defaults'
}

/** `near`: where ngspice starts looking. */
export function ngspiceNetlist(stage: OutputStage, near: StartingVoltages, options: NetlistOptions = {}): string {
  const { floorVolts = 0, tolerances = 'tight' } = options
  const nodes = Object.entries(near).map(([node, volts]) => `.nodeset v(${node})=${number(volts)}`)
  return [
    'output stage at idle',
    ...supplyLines(stage),
    ...primaryLines(stage),
    ...screenLines(stage),
    ...biasLines(stage),
    ...stage.tubes.flatMap((tube, place) => tubeLines(stage, tube, place + 1, floorVolts)),
    ...nodes,
    ...(tolerances === 'tight' ? ['.options reltol=1e-9 abstol=1e-15 vntol=1e-11 itl1=500 gmin=1e-18'] : []),
    '.op',
    '.end',
  ].join('\n')
}
