/**
 * The lines of the safety sign-off for one amplifier in one shop.
 *
 * The list and its order are common practice, no source; the figures are the
 * shop's settings or stand with their source in limits.ts.
 */
import type { Amp } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import { capital, type Words } from '@/lib/domain/words'
import { type Check, plainNumber, type ValueBox, valueText } from './check'
import {
  DISCHARGED_VOLTS,
  insulationLimit,
  leakageLimit,
  RATING_PERCENT,
  SCREEN_RESISTOR_PERCENT,
  type ShopLimits,
} from './limits'

export type CheckedAmp = {
  readonly amp: Pick<Amp, 'protectionClass' | 'fuse'>
  readonly sockets: readonly Pick<Socket, 'position' | 'role' | 'screenOhms'>[]
}

/** Reasons the program gives itself. A line signed with one is void as soon as it no longer holds. */
export const AUTOMATIC_REASONS = {
  classTwo: 'because class II: the amplifier has no protective conductor by design',
  noScreenResistors: 'because no screen resistor is noted on this amplifier’s sheet',
  noOutput: 'because no output socket is noted on this amplifier’s sheet',
} as const

const SHOP_FIGURE = 'the shop’s setting'

const BOXES = {
  discharge: { label: 'Highest reading left', unit: 'V', scale: 1, min: 0, max: 1200 },
  earthBond: { label: 'Resistance', unit: 'Ω', scale: 1, min: 0, max: 1000 },
  insulation: { label: 'Resistance', unit: 'MΩ', scale: 1e6, min: 0, max: 1_000_000 },
  leakage: { label: 'Current', unit: 'mA', scale: 0.001, min: 0, max: 1000 },
  fullPower: { label: 'Power into the load', unit: 'W', scale: 1, min: 0, max: 2000 },
  soak: { label: 'Soaked for', unit: 'min', scale: 60, min: 0, max: 10_000 },
} as const satisfies Record<string, ValueBox>

/** What most lines have in common. */
const PLAIN = {
  limit: { kind: 'note' },
  basis: 'common practice',
  detail: null,
  instrument: 'none',
  expected: '',
  doesNotApply: null,
  followsTubes: false,
} as const

export function safetyChecks({ amp, sockets }: CheckedAmp, shop: ShopLimits, words: Words): Check[] {
  return [
    ...deadChecks(amp, words),
    ...testerChecks(amp, shop, words),
    ...outputChecks(sockets, words),
    ...runningChecks(shop, words),
  ]
}

function deadChecks({ fuse }: CheckedAmp['amp'], words: Words): Check[] {
  return [
    {
      ...PLAIN,
      id: 'discharge',
      name: 'Discharge proved by meter',
      sentence: `Unplugged, the ${words.supply} and every reservoir capacitor were discharged and read with a meter, and read again a minute later.`,
      source: { kind: 'typed', box: BOXES.discharge },
      limit: { kind: 'at-most', value: DISCHARGED_VOLTS },
      limitText: `at most ${DISCHARGED_VOLTS} V d.c.`,
      basis: 'IEC 62368-1, class ES1, from memory',
      detail: {
        label: 'Read how long after',
        hint: 'After the plug was out: “40 s, again after 100 s”.',
        needed: true,
      },
      instrument: 'needed',
    },
    {
      ...PLAIN,
      id: 'fuse',
      name: 'Fuse, type and value',
      sentence: `The fuse in the holder is of the type and value marked${fuse === '' ? ' on the amplifier' : `: ${fuse}`}.`,
      source: { kind: 'looked-at' },
      limitText: fuse === '' ? 'as marked on the amplifier; not noted on its sheet' : `as marked: ${fuse}`,
      detail: {
        label: 'Fuse found in the holder',
        hint: 'Type and value, as printed on its cap: “T 2 A”.',
        needed: true,
      },
      expected: fuse,
    },
    {
      ...PLAIN,
      id: 'cord',
      name: `Cord and ${words.earth}`,
      sentence: `Plug, cord and strain relief are sound; the ${words.earth} conductor goes to a fixing of its own on the chassis and is longer than the others.`,
      source: { kind: 'looked-at' },
      limitText: 'sound, and fixed',
      detail: { label: 'Noted', hint: 'Two- or three-core, what was renewed.', needed: false },
    },
  ]
}

function testerChecks({ protectionClass }: CheckedAmp['amp'], shop: ShopLimits, words: Words): Check[] {
  const classTwo = protectionClass === 'II'
  const insulation = insulationLimit(shop, protectionClass)
  const leakage = leakageLimit(shop, protectionClass)
  const classFigure = (own: number, limit: number) =>
    own === limit ? SHOP_FIGURE : 'EN 50678 for class II, from memory'
  return [
    {
      ...PLAIN,
      id: 'earth-bond',
      name: `${capital(words.earth)} bond`,
      sentence: `From the ${words.earth} pin of the plug to bare chassis metal, the cord bent while reading.`,
      source: { kind: 'typed', box: BOXES.earthBond },
      limit: { kind: 'at-most', value: shop.earthBondMaxOhms },
      limitText: `at most ${valueText(BOXES.earthBond, shop.earthBondMaxOhms)}`,
      basis: SHOP_FIGURE,
      instrument: 'needed',
      doesNotApply: classTwo ? AUTOMATIC_REASONS.classTwo : null,
    },
    {
      ...PLAIN,
      id: 'insulation',
      name: 'Insulation',
      sentence: `Both ${words.mains} poles together against chassis metal, switch on, at 500 V d.c.`,
      source: { kind: 'typed', box: BOXES.insulation },
      limit: { kind: 'at-least', value: insulation },
      limitText: `at least ${valueText(BOXES.insulation, insulation)}`,
      basis: classFigure(shop.insulationMinOhms, insulation),
      instrument: 'needed',
    },
    {
      ...PLAIN,
      id: 'leakage',
      name: classTwo ? 'Touch current' : 'Protective conductor current',
      sentence: classTwo
        ? `From touchable metal to ${words.earth}, at ${words.mains} voltage, plug both ways round.`
        : `In the ${words.earth} conductor, at ${words.mains} voltage, switched on.`,
      source: { kind: 'typed', box: BOXES.leakage },
      limit: { kind: 'at-most', value: leakage },
      limitText: `at most ${valueText(BOXES.leakage, leakage)}`,
      basis: classFigure(shop.leakageMaxAmps, leakage),
      instrument: 'needed',
    },
  ]
}

function outputChecks(sockets: CheckedAmp['sockets'], words: Words): Check[] {
  const parts = sockets.flatMap(({ position, role, screenOhms }) =>
    role === 'output' && screenOhms !== null ? [{ name: position, sheetOhms: screenOhms }] : [],
  )
  return [
    {
      ...PLAIN,
      id: 'screen-resistors',
      name: 'Screen resistors',
      sentence: 'Each screen resistor was measured with the amplifier dead.',
      source: { kind: 'parts', parts },
      limit: { kind: 'at-most', value: SCREEN_RESISTOR_PERCENT },
      limitText: `within ${SCREEN_RESISTOR_PERCENT} % of the sheet`,
      instrument: 'needed',
      doesNotApply: parts.length === 0 ? AUTOMATIC_REASONS.noScreenResistors : null,
    },
    {
      ...PLAIN,
      id: 'idle',
      name: 'Idle within the rating',
      sentence: `By the readings after the work, no output ${words.tube} idles above its printed ${words.plate} rating.`,
      source: { kind: 'readings' },
      limit: { kind: 'at-most', value: RATING_PERCENT },
      limitText: `at most ${plainNumber(RATING_PERCENT)} % of the rating`,
      basis: 'the printed rating of the type',
      doesNotApply: sockets.some(({ role }) => role === 'output') ? null : AUTOMATIC_REASONS.noOutput,
      followsTubes: true,
    },
  ]
}

function runningChecks({ soakMinMinutes }: ShopLimits, words: Words): Check[] {
  return [
    {
      ...PLAIN,
      id: 'full-power',
      name: 'Full power into a dummy load',
      sentence: `Driven to clipping into a dummy load of the marked impedance: no red ${words.plate}, no arc, no smell, fuse holds.`,
      source: { kind: 'typed', box: BOXES.fullPower },
      limitText: 'as the amplifier is built for, no fault',
      detail: { label: 'Load and time', hint: '“8 Ω, 10 min, sine at 1 kHz”.', needed: true },
      instrument: 'needed',
      followsTubes: true,
    },
    {
      ...PLAIN,
      id: 'soak',
      name: 'Soak with a second reading',
      sentence: 'Left running on its load, then read once more; nothing had drifted away.',
      source: { kind: 'typed', box: BOXES.soak },
      limit: { kind: 'at-least', value: soakMinMinutes * 60 },
      limitText: `at least ${plainNumber(soakMinMinutes)} min, then read again`,
      basis: SHOP_FIGURE,
      detail: {
        label: 'Second reading',
        hint: 'What the meter showed at the end: “V3 38.1 mA, V4 38.6 mA”.',
        needed: true,
      },
      instrument: 'welcome',
      followsTubes: true,
    },
    {
      ...PLAIN,
      id: 'listening',
      name: 'Listening test',
      sentence:
        'Played through a speaker, every control and input tried, tapped for microphony; the customer’s fault is gone.',
      source: { kind: 'looked-at' },
      limitText: 'sounds as it should',
      detail: { label: 'Heard', hint: 'What was played through what, and anything left.', needed: false },
      followsTubes: true,
    },
  ]
}
