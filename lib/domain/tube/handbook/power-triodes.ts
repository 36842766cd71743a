/**
 * Directly heated output triodes.
 *
 * Each figure is [value, source, remark]; the unit is in the field's name, sources
 * are spelled out in handbook-sources.ts. Currents of a row are zero-signal unless named otherwise.
 */
import type { HandbookType } from '../handbook-type'

export const POWER_TRIODES: readonly HandbookType[] = [
  {
    id: '2A3',
    family: '2A3',
    role: 'output',
    tubeClass: 'power-triode',
    className: 'directly heated triode',
    base: {
      name: 'four-pin',
      eia: '4D',
      eiaSource: 'us-high',
      pins: { 1: 'f+', 2: 'a', 3: 'g1', 4: 'f-' },
      pinsSource: 'museum-2a3',
    },
    heaters: [{ volts: [2.5, 'museum-2a3'], amps: [2.5, 'museum-2a3'], use: null }],
    variants: [
      {
        designations: ['2A3'],
        ratings: {
          appliesTo: '2A3',
          system: 'design-centre',
          systemNote: null,
          limits: {
            plateVolts: [300, 'us-high'],
            plateWatts: [15, 'us-high'],
            gridLeakGridSuppliedMegohms: [0.05, 'us-high'],
            gridLeakCathodeBiasMegohms: [0.5, 'us-high'],
          },
          note: null,
        },
      },
    ],
    otherSection: null,
    rows: [
      {
        label: 'class A1 single',
        currentsFor: 1,
        connection: 'triode',
        figures: {
          plateVolts: [
            250,
            'museum-2a3',
            "page files this row under 'absolute maximum operating conditions': it is the typical row",
          ],
          gridVolts: [-45, 'museum-2a3'],
          cathodeOhms: [750, 'museum-2a3'],
          plateMilliamps: [60, 'museum-2a3'],
          mu: [4.2, 'us-high'],
          plateResistanceKilohms: [0.8, 'museum-2a3'],
          gmMilliampsPerVolt: [5.25, 'us-high', 'page: 5.2'],
          loadKilohms: [2.5, 'museum-2a3'],
          distortionPercent: [5, 'museum-2a3'],
          outputWatts: [3.5, 'museum-2a3'],
        },
        note: null,
      },
      {
        label: 'push-pull AB1 cathode bias (two)',
        currentsFor: 2,
        connection: 'triode',
        figures: {
          plateVolts: [300, 'us-high'],
          commonCathodeOhms: [780, 'us-high'],
          plateMilliamps: [80, 'us-high'],
          plateMilliampsFullSignal: [100, 'us-high'],
          plateToPlateKilohms: [5, 'us-high'],
          distortionPercent: [5, 'us-high'],
          outputWatts: [10, 'us-high'],
        },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'CV1831', kind: 'other-number', of: '2A3', source: 'museum-2a3', note: null },
      { number: 'VT-95', kind: 'other-number', of: '2A3', source: 'lists-medium', note: null },
    ],
    similar: [
      { number: '6B4G', source: 'lists-medium', note: null },
      { number: '6A3', source: 'lists-medium', note: null },
    ],
    notes: [],
  },
  {
    id: '45',
    family: '45',
    role: 'output',
    tubeClass: 'power-triode',
    className: 'directly heated triode',
    base: {
      name: 'four-pin',
      eia: '4D',
      eiaSource: 'us-high',
      pins: { 1: 'f', 2: 'a', 3: 'g', 4: 'f' },
      pinsSource: 'us-high',
    },
    heaters: [{ volts: [2.5, 'us-high'], amps: [1.5, 'us-high'], use: null }],
    variants: [
      {
        designations: ['45'],
        ratings: {
          appliesTo: '45',
          system: 'design-centre',
          systemNote: null,
          limits: { plateVolts: [275, 'us-high'], plateWatts: [10, 'us-medium'] },
          note: null,
        },
      },
    ],
    otherSection: null,
    rows: [
      {
        label: 'class A1, 180 V',
        currentsFor: 1,
        connection: 'triode',
        figures: {
          plateVolts: [180, 'us-high'],
          gridVolts: [-31.5, 'us-high'],
          plateMilliamps: [31, 'us-high'],
          mu: [3.5, 'us-high'],
          plateResistanceKilohms: [1.65, 'us-high'],
          gmMilliampsPerVolt: [2.125, 'us-high'],
          loadKilohms: [2.7, 'us-high'],
          outputWatts: [0.825, 'us-high'],
        },
        note: null,
      },
      {
        label: 'class A1, 275 V',
        currentsFor: 1,
        connection: 'triode',
        figures: {
          plateVolts: [275, 'us-high'],
          gridVolts: [-56, 'us-high'],
          plateMilliamps: [36, 'us-high'],
          mu: [3.5, 'us-high'],
          plateResistanceKilohms: [1.7, 'us-high'],
          gmMilliampsPerVolt: [2.05, 'us-high'],
          loadKilohms: [4.6, 'us-high'],
          distortionPercent: [5, 'us-high'],
          outputWatts: [2, 'us-high'],
        },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'VT-45', kind: 'other-number', of: '45', source: 'lists-medium', note: null },
      { number: '245', kind: 'other-number', of: '45', source: 'lists-medium', note: null },
      { number: '345', kind: 'other-number', of: '45', source: 'lists-medium', note: null },
    ],
    similar: [],
    notes: [],
  },
  {
    id: '300B',
    family: '300B',
    role: 'output',
    tubeClass: 'power-triode',
    className: 'directly heated triode',
    base: {
      name: 'four-pin',
      eia: '4D',
      eiaSource: 'us-medium',
      pins: { 1: 'f', 2: 'a', 3: 'g', 4: 'f' },
      pinsSource: 'us-medium',
    },
    heaters: [{ volts: [5, 'sheet-300b'], amps: [1.2, 'sheet-300b'], use: null }],
    variants: [
      {
        designations: ['300B'],
        ratings: {
          appliesTo: '300B, present-day sheet',
          system: 'absolute',
          systemNote: 'Limiting conditions of the present-day sheet, absolute style, not all at once.',
          limits: {
            plateVolts: [450, 'sheet-300b'],
            plateWatts: [40, 'sheet-300b'],
            plateMilliampsGridSupplied: [70, 'sheet-300b'],
            plateMilliampsCathodeBias: [100, 'sheet-300b'],
          },
          note: null,
        },
      },
      {
        designations: ['300B (1950 sheet)'],
        ratings: {
          appliesTo: '300B, 1950 sheet',
          system: 'not-stated',
          systemNote: 'Limiting conditions of the 1950 sheet.',
          limits: {
            plateVolts: [400, 'us-medium'],
            plateWatts: [36, 'us-medium', 'an amplifier manual quoting the 1950 sheet says 35 W'],
          },
          note: null,
        },
      },
    ],
    otherSection: null,
    rows: [
      {
        label: 'average characteristics',
        currentsFor: 1,
        connection: 'triode',
        figures: {
          plateVolts: [300, 'sheet-300b'],
          gridVolts: [-61, 'sheet-300b'],
          plateMilliamps: [60, 'sheet-300b'],
          mu: [3.85, 'sheet-300b'],
          plateResistanceKilohms: [0.7, 'sheet-300b'],
          gmMilliampsPerVolt: [5.5, 'sheet-300b'],
        },
        note: null,
      },
    ],
    otherNumbers: [],
    similar: [{ number: '300A', source: 'lists-medium', note: null }],
    notes: [],
  },
]
