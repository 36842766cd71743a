/**
 * Miniature and noval full-wave rectifiers.
 *
 * Each figure is [value, source, remark]; the unit is in the field's name, sources
 * are spelled out in handbook-sources.ts. Currents of a row are zero-signal unless named otherwise.
 */
import type { HandbookType } from '../handbook-type'

export const SMALL_BASE_RECTIFIERS: readonly HandbookType[] = [
  {
    id: '6X4',
    family: '6X4',
    role: 'rectifier',
    tubeClass: 'rectifier',
    className: 'full-wave, indirectly heated',
    base: {
      name: 'miniature-7',
      eia: '5BS',
      eiaSource: 'us-high',
      pins: { 1: 'a', 3: 'h', 4: 'h', 6: 'a', 7: 'k' },
      pinsSource: 'us-high',
    },
    heaters: [{ volts: [6.3, 'us-high'], amps: [0.6, 'us-high'], use: null }],
    variants: [
      {
        designations: ['6X4', 'EZ90'],
        ratings: {
          appliesTo: '6X4, EZ90',
          system: 'design-centre',
          systemNote: null,
          limits: {
            peakInverseVolts: [1250, 'us-high'],
            peakPlateMilliamps: [210, 'us-high', '245 design-maximum'],
            outputMilliamps: [70, 'us-high'],
            capacitorInputRmsVolts: [325, 'us-high'],
            chokeInputRmsVolts: [450, 'us-high'],
            sourceOhmsPerPlate: [525, 'us-medium', 'per plate, 325 V'],
            reservoirMicrofarads: [10, 'us-medium'],
            heaterCathodeVolts: [450, 'us-high'],
          },
          note: null,
        },
      },
    ],
    otherSection: null,
    rows: [
      {
        label: 'voltage drop',
        currentsFor: 1,
        connection: 'diode',
        figures: { dropVolts: [22, 'us-high'], dropMilliampsPerPlate: [70, 'us-high'] },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'CV493', kind: 'other-number', of: '6X4', source: 'lists-medium', note: null },
      { number: 'U78', kind: 'other-number', of: '6X4', source: 'lists-medium', note: null },
      { number: '6202', kind: 'special-quality', of: '6X4', source: 'lists-medium', note: null },
      { number: '6X4W', kind: 'special-quality', of: '6X4', source: 'lists-medium', note: null },
    ],
    similar: [{ number: '6X5GT', source: 'lists-medium', note: null }],
    notes: [],
  },
  {
    id: 'EZ80',
    family: 'EZ80',
    role: 'rectifier',
    tubeClass: 'rectifier',
    className: 'full-wave, indirectly heated',
    base: {
      name: 'noval',
      eia: '9M',
      eiaSource: 'eu-high',
      pins: { 1: 'a', 2: 'ic', 3: 'k', 4: 'h', 5: 'h', 6: 'ic', 7: 'a', 8: 'ic', 9: 'ic' },
      pinsSource: 'eu-high',
    },
    heaters: [{ volts: [6.3, 'eu-high'], amps: [0.6, 'eu-high'], use: null }],
    variants: [
      {
        designations: ['EZ80', '6V4'],
        ratings: {
          appliesTo: 'EZ80',
          system: 'design-centre',
          systemNote: null,
          limits: {
            transformerRmsVolts: [350, 'eu-medium'],
            peakInverseVolts: [1000, 'eu-medium'],
            peakPlateMilliamps: [270, 'eu-medium'],
            outputMilliamps: [90, 'eu-medium'],
            reservoirMicrofarads: [50, 'eu-medium'],
            sourceOhmsPerPlateAt250Volts: [125, 'eu-medium'],
            sourceOhmsPerPlateAt300Volts: [215, 'eu-medium'],
            sourceOhmsPerPlateAt350Volts: [300, 'eu-medium'],
            heaterCathodeVolts: [500, 'eu-medium'],
          },
          note: null,
        },
      },
    ],
    otherSection: null,
    rows: [],
    otherNumbers: [{ number: 'CV1535', kind: 'other-number', of: 'EZ80', source: 'lists-medium', note: null }],
    similar: [],
    notes: [],
  },
  {
    id: 'EZ81',
    family: 'EZ81',
    role: 'rectifier',
    tubeClass: 'rectifier',
    className: 'full-wave, indirectly heated',
    base: {
      name: 'noval',
      eia: '9M',
      eiaSource: 'eu-high',
      pins: { 1: 'a', 2: 'ic', 3: 'k', 4: 'h', 5: 'h', 6: 'ic', 7: 'a', 8: 'ic', 9: 'ic' },
      pinsSource: 'eu-high',
    },
    heaters: [{ volts: [6.3, 'eu-high'], amps: [1, 'eu-high'], use: null }],
    variants: [
      {
        designations: ['EZ81', '6CA4'],
        ratings: {
          appliesTo: 'EZ81',
          system: 'design-centre',
          systemNote: null,
          limits: {
            transformerRmsVolts: [350, 'eu-medium', '150 mA; 450 V at 100 mA'],
            peakInverseVolts: [1300, 'eu-medium'],
            peakPlateMilliamps: [450, 'eu-medium', '500 in some'],
            outputMilliamps: [150, 'eu-medium'],
            reservoirMicrofarads: [50, 'eu-medium'],
            sourceOhmsPerPlateAt250Volts: [150, 'eu-low'],
            sourceOhmsPerPlateAt300Volts: [200, 'eu-low'],
            sourceOhmsPerPlateAt350Volts: [240, 'eu-low'],
            heaterCathodeVolts: [500, 'eu-medium'],
          },
          note: null,
        },
      },
    ],
    otherSection: null,
    rows: [
      {
        label: 'voltage drop',
        currentsFor: 1,
        connection: 'diode',
        figures: { dropVolts: [20, 'us-medium'], dropMilliampsPerPlate: [150, 'us-medium'] },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'CV5072', kind: 'other-number', of: 'EZ81', source: 'lists-medium', note: null },
      { number: 'U709', kind: 'other-number', of: 'EZ81', source: 'lists-medium', note: null },
    ],
    similar: [],
    notes: [],
  },
]
