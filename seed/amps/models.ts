/**
 * Six invented models by invented makers, each with the circuit values an
 * amplifier of its kind has (common practice, no source). Resistors are marked
 * values as measured; the halves of an output transformer differ, as they do. Of two of
 * the models nothing is noted of the supplies, as of most amplifiers that come in; a tube
 * rectifier is told by its socket, and where the grid supply stands is read each time.
 */
import { SOLID_STATE } from '@/lib/domain/amp/supply-facts'
import { type DemoModel, outputSocket, smallSocket } from './model'

const SINGLE = { biasKind: 'cathode-resistor' } as const
const GRID = { biasKind: 'grid-supplied' } as const

/** Single-ended, five watts, tube rectifier. */
const pipit5: DemoModel = {
  make: 'Corvane',
  model: 'Pipit 5',
  outputClass: 'single-ended',
  plateLoadOhms: 5_000,
  mainsVolts: 117,
  protectionClass: 'I',
  fuse: 'T 1 A 250 V',
  sockets: [
    smallSocket('V1', 'preamp', '12AX7', [6, 24]),
    outputSocket('V2', '6V6GT', [36, 100], { ...SINGLE, cathodeOhms: 468 }),
    smallSocket('V3', 'rectifier', '5Y3GT', [80, 100]),
  ],
}

/** A pair of EL84, each on its own cathode resistor; pentode input stage, solid-state rectifier. */
const tansy18: DemoModel = {
  make: 'Corvane',
  model: 'Tansy 18',
  outputClass: 'push-pull',
  plateLoadOhms: 8_000,
  mainsVolts: 120,
  protectionClass: 'I',
  fuse: 'T 1.6 A 250 V',
  sockets: [
    smallSocket('V1', 'preamp', 'EF86', [2, 24]),
    smallSocket('V2', 'preamp', '12AX7', [22, 24]),
    smallSocket('V3', 'phase-inverter', '12AX7', [44, 24]),
    outputSocket('V4', 'EL84', [36, 100], { ...SINGLE, side: 'A', cathodeOhms: 271, screenOhms: 470 }),
    outputSocket('V5', 'EL84', [60, 100], { ...SINGLE, side: 'B', cathodeOhms: 269, screenOhms: 468 }),
  ],
}

/** A grid-supplied pair with reverb and tube rectifier. No sense resistors: read over the half primaries. */
const foreman40: DemoModel = {
  make: 'Brindlecote',
  model: 'Foreman 40',
  outputClass: 'push-pull',
  plateLoadOhms: 4_200,
  mainsVolts: 117,
  protectionClass: 'I',
  fuse: 'T 2.5 A 250 V',
  sockets: [
    smallSocket('V1', 'preamp', '12AX7', [0, 24]),
    smallSocket('V2', 'preamp', '12AX7', [19, 24]),
    smallSocket('V3', 'reverb', '12AT7', [38, 24]),
    smallSocket('V4', 'phase-inverter', '12AT7', [60, 24]),
    outputSocket('V5', '6L6GC', [27, 100], { ...GRID, side: 'A', screenOhms: 472, halfPrimaryOhms: 74 }),
    outputSocket('V6', '6L6GC', [48, 100], { ...GRID, side: 'B', screenOhms: 468, halfPrimaryOhms: 81.6 }),
    smallSocket('V7', 'rectifier', '5AR4', [80, 100]),
  ],
  supply: {
    openSupplyVolts: 470,
    sourceOhms: 220,
    reservoirMicrofarads: 40,
    screenFeed: 'own-supply',
    screenDropperOhms: 110,
    gridColdestVolts: -58,
    gridHottestVolts: -38,
    gridLeakOhms: 220_000,
    heaterWindingVolts: 6.3,
    heaterWindingAmps: 4.5,
    dischargeOhms: 220_000,
  },
}

/** A hundred watts from a grid-supplied quad, a sense resistor in each cathode. */
const millstone100: DemoModel = {
  make: 'Lodestead',
  model: 'Millstone 100',
  outputClass: 'push-pull',
  plateLoadOhms: 1_700,
  mainsVolts: 120,
  protectionClass: 'I',
  fuse: 'T 4 A 250 V',
  sockets: [
    smallSocket('V1', 'preamp', '12AX7', [2, 24]),
    smallSocket('V2', 'preamp', '12AX7', [22, 24]),
    smallSocket('V3', 'phase-inverter', '12AX7', [44, 24]),
    ...(['V4', 'V5', 'V6', 'V7'] as const).map((position, at) =>
      outputSocket(position, 'EL34', [16 + 22 * at, 100], {
        ...GRID,
        side: at < 2 ? 'A' : 'B',
        senseOhms: 1,
        screenOhms: [1010, 998, 1004, 1001][at] ?? null,
        halfSharedBy: 2,
      }),
    ),
  ],
  supply: {
    openSupplyVolts: 505,
    sourceOhms: 200,
    rectifierType: SOLID_STATE,
    reservoirMicrofarads: 50,
    screenFeed: 'own-supply',
    screenDropperOhms: 100,
    gridColdestVolts: -52,
    gridHottestVolts: -30,
    gridLeakOhms: 150_000,
    heaterWindingVolts: 6.3,
    heaterWindingAmps: 8,
    dischargeOhms: 100_000,
  },
}

/** Stereo hi-fi: a pair of KT88 to each channel, taps for the screens, 10 Ω in each cathode. */
const type240: DemoModel = {
  make: 'Ansmere',
  model: 'Type 240',
  outputClass: 'push-pull',
  plateLoadOhms: 5_000,
  mainsVolts: 120,
  protectionClass: 'I',
  fuse: 'T 3.15 A 250 V',
  sockets: [
    smallSocket('V1', 'preamp', '12AX7', [33, 24]),
    smallSocket('V2', 'phase-inverter', '12AU7', [11, 24]),
    smallSocket('V3', 'phase-inverter', '12AU7', [55, 24]),
    ...(['V4', 'V5', 'V6', 'V7'] as const).map((position, at) =>
      outputSocket(position, 'KT88', [16 + 22 * at, 100], {
        ...GRID,
        matchGroup: at < 2 ? 'left' : 'right',
        side: at % 2 === 0 ? 'A' : 'B',
        senseOhms: 10,
        screenOhms: 220,
      }),
    ),
  ],
  supply: {
    rectifierType: SOLID_STATE,
    reservoirMicrofarads: 100,
    screenFeed: 'ultralinear-tap',
    ultralinearTapPercent: 40,
    gridColdestVolts: -75,
    gridHottestVolts: -45,
    gridLeakOhms: 100_000,
    heaterWindingVolts: 6.3,
    heaterWindingAmps: 8,
  },
}

/** A pair of 6V6GT on one cathode resistor, tremolo, tube rectifier. */
const drover15: DemoModel = {
  make: 'Brindlecote',
  model: 'Drover 15',
  outputClass: 'push-pull',
  plateLoadOhms: 8_000,
  mainsVolts: 117,
  protectionClass: 'I',
  fuse: 'T 2 A 250 V',
  sockets: [
    smallSocket('V1', 'preamp', '12AY7', [2, 24]),
    smallSocket('V2', 'tremolo', '12AX7', [22, 24]),
    smallSocket('V3', 'phase-inverter', '12AX7', [42, 24]),
    outputSocket('V4', '6V6GT', [27, 100], { ...SINGLE, side: 'A', cathodeOhms: 252, cathodeSharedBy: 2 }),
    outputSocket('V5', '6V6GT', [49, 100], { ...SINGLE, side: 'B', cathodeOhms: 252, cathodeSharedBy: 2 }),
    smallSocket('V6', 'rectifier', '5Y3GT', [80, 100]),
  ],
  supply: {
    openSupplyVolts: 388,
    sourceOhms: 250,
    reservoirMicrofarads: 20,
    screenFeed: 'own-supply',
    screenDropperOhms: 2200,
    gridLeakOhms: 220_000,
    heaterWindingVolts: 6.3,
    heaterWindingAmps: 3,
  },
}

export const DEMO_MODELS = { pipit5, tansy18, foreman40, millstone100, type240, drover15 } as const

export type ModelKey = keyof typeof DEMO_MODELS
