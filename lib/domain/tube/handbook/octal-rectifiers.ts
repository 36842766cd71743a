/**
 * Octal full-wave rectifiers.
 *
 * Each figure is [value, source, remark]; the unit is in the field's name, sources
 * are spelled out in handbook-sources.ts. Currents of a row are zero-signal unless named otherwise.
 */
import type { HandbookType } from '../handbook-type'

export const OCTAL_RECTIFIERS: readonly HandbookType[] = [
  {
    id: '5Y3GT',
    family: '5Y3',
    role: 'rectifier',
    tubeClass: 'rectifier',
    className: 'full-wave, directly heated',
    base: {
      name: 'octal',
      eia: '5T',
      eiaSource: 'us-high',
      pins: { 2: 'f', 4: 'a', 6: 'a', 8: 'f' },
      pinsSource: 'us-high',
    },
    heaters: [{ volts: [5, 'us-high'], amps: [2, 'us-high'], use: null }],
    variants: [
      {
        designations: ['5Y3GT', '5Y3G'],
        ratings: {
          appliesTo: '5Y3G, 5Y3GT',
          system: 'design-centre',
          systemNote: 'Peak figures are design-maximum in later books.',
          limits: {
            peakInverseVolts: [1400, 'us-high'],
            peakPlateMilliamps: [400, 'us-high', '440 design-maximum'],
            transientPlateAmps: [2.5, 'us-medium'],
            outputMilliamps: [125, 'us-high'],
            capacitorInputRmsVolts: [350, 'us-high'],
            chokeInputRmsVolts: [500, 'us-high'],
            sourceOhmsPerPlate: [50, 'us-medium', 'per plate, 350 V, capacitor input'],
            reservoirMicrofarads: [20, 'us-medium', '10 in the typical row'],
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
        figures: { dropVolts: [60, 'us-high', '50 on some lists'], dropMilliampsPerPlate: [125, 'us-high'] },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'VT-197A', kind: 'other-number', of: '5Y3GT', source: 'lists-medium', note: null },
      { number: 'CV1856', kind: 'other-number', of: '5Y3GT', source: 'lists-medium', note: null },
      { number: 'CV1854', kind: 'other-number', of: '5Y3G', source: 'lists-low', note: null },
      { number: 'U50', kind: 'other-number', of: '5Y3G', source: 'lists-medium', note: null },
      { number: '6087', kind: 'special-quality', of: '5Y3GT', source: 'lists-medium', note: null },
    ],
    similar: [
      { number: '80', source: 'lists-medium', note: null },
      { number: '5Ts4S', source: 'lists-medium', note: null },
      { number: '5Ц4С', source: 'lists-medium', note: null },
    ],
    notes: [],
  },
  {
    id: '5U4G',
    family: '5U4',
    role: 'rectifier',
    tubeClass: 'rectifier',
    className: 'full-wave, directly heated',
    base: {
      name: 'octal',
      eia: '5T',
      eiaSource: 'us-high',
      pins: { 2: 'f', 4: 'a', 6: 'a', 8: 'f' },
      pinsSource: 'sheet-5u4g',
    },
    heaters: [{ volts: [5, 'sheet-5u4g'], amps: [3, 'sheet-5u4g'], use: null }],
    variants: [
      {
        designations: ['5U4G'],
        ratings: {
          appliesTo: '5U4G',
          system: 'design-centre',
          systemNote: null,
          limits: {
            peakInverseVolts: [1550, 'us-high'],
            peakPlateMilliamps: [675, 'us-high', 'an article says 1 A: that is the 5U4GB figure'],
            outputMilliamps: [225, 'sheet-5u4g', 'capacitor input; a present-day maker allows 265 with choke input'],
            capacitorInputRmsVolts: [450, 'us-high'],
            chokeInputRmsVolts: [550, 'sheet-5u4g'],
            sourceOhmsPerPlate: [
              75,
              'us-medium',
              'per plate; a present-day maker: total winding >= 170 Ohm (230 at high voltage)',
            ],
            reservoirMicrofarads: [40, 'sheet-5u4g', 'a second article gives the same'],
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
        figures: { dropVolts: [44, 'us-high', '58 in early books'], dropMilliampsPerPlate: [225, 'us-high'] },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'VT-244', kind: 'other-number', of: '5U4G', source: 'lists-medium', note: null },
      { number: 'U52', kind: 'other-number', of: '5U4G', source: 'lists-medium', note: null },
      { number: 'CV575', kind: 'other-number', of: '5U4G', source: 'lists-medium', note: null },
    ],
    similar: [
      { number: '5Z3', source: 'sheet-5u4g', note: null },
      { number: '5X4G', source: 'article-5u4g', note: null },
    ],
    notes: ['A present-day maker states that its 5U4G cannot replace 5U4GA/GB.'],
  },
  {
    id: '5U4GB',
    family: '5U4',
    role: 'rectifier',
    tubeClass: 'rectifier',
    className: 'full-wave, directly heated',
    base: {
      name: 'octal',
      eia: '5T',
      eiaSource: 'us-high',
      pins: { 2: 'f', 4: 'a', 6: 'a', 8: 'f' },
      pinsSource: 'us-high',
    },
    heaters: [{ volts: [5, 'us-high'], amps: [3, 'us-high'], use: null }],
    variants: [
      {
        designations: ['5U4GB'],
        ratings: {
          appliesTo: '5U4GB',
          system: 'design-maximum',
          systemNote: null,
          limits: {
            peakInverseVolts: [1550, 'us-high'],
            peakPlateMilliamps: [1000, 'us-high'],
            transientPlateAmps: [4.6, 'us-high'],
            outputMilliamps: [275, 'us-medium', 'capacitor input 450 V; about 160-175 mA at 550 V'],
            reservoirMicrofarads: [40, 'us-high'],
            sourceOhmsPerPlateAt300Volts: [21, 'us-medium'],
            sourceOhmsPerPlateAt450Volts: [67, 'us-medium'],
            sourceOhmsPerPlateAt550Volts: [97, 'us-medium'],
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
        figures: { dropVolts: [50, 'us-high'], dropMilliampsPerPlate: [275, 'us-high'] },
        note: null,
      },
    ],
    otherNumbers: [],
    similar: [
      { number: '5AS4A', source: 'lists-medium', note: null },
      { number: '5U4GA', source: 'lists-medium', note: null },
    ],
    notes: [],
  },
  {
    id: '5V4G',
    family: '5V4',
    role: 'rectifier',
    tubeClass: 'rectifier',
    className: 'full-wave, indirectly heated',
    base: {
      name: 'octal',
      eia: '5L',
      eiaSource: 'us-high',
      pins: { 2: 'h', 4: 'a', 6: 'a', 8: 'h + k' },
      pinsSource: 'us-high',
    },
    heaters: [{ volts: [5, 'us-high'], amps: [2, 'us-high'], use: null }],
    variants: [
      {
        designations: ['5V4G', '5V4GA'],
        ratings: {
          appliesTo: '5V4G, 5V4GA',
          system: 'design-centre',
          systemNote: null,
          limits: {
            peakInverseVolts: [1400, 'us-high'],
            peakPlateMilliamps: [525, 'us-high'],
            outputMilliamps: [175, 'us-high'],
            capacitorInputRmsVolts: [375, 'us-high'],
            chokeInputRmsVolts: [500, 'us-high'],
            sourceOhmsPerPlate: [100, 'us-medium', '65 in earlier books'],
            reservoirMicrofarads: [40, 'us-low'],
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
        figures: { dropVolts: [25, 'us-high'], dropMilliampsPerPlate: [175, 'us-high'] },
        note: null,
      },
    ],
    otherNumbers: [{ number: 'CV729', kind: 'other-number', of: '5V4G', source: 'lists-medium', note: null }],
    similar: [
      { number: 'GZ32', source: 'eu-medium', note: null },
      { number: '83-V', source: 'lists-medium', note: null },
    ],
    notes: [],
  },
  {
    id: '5AR4',
    family: '5AR4',
    role: 'rectifier',
    tubeClass: 'rectifier',
    className: 'full-wave, indirectly heated',
    base: {
      name: 'octal',
      eia: '5DA',
      eiaSource: 'eu-high',
      pins: { 1: 'nc (metal base sleeve on early ones)', 2: 'h', 4: 'a', 6: 'a', 8: 'h + k' },
      pinsSource: 'eu-high',
    },
    heaters: [{ volts: [5, 'eu-high'], amps: [1.9, 'eu-high'], use: null }],
    variants: [
      {
        designations: ['GZ34'],
        ratings: {
          appliesTo: 'GZ34',
          system: 'design-centre',
          systemNote: null,
          limits: {
            peakInverseVolts: [1500, 'eu-high'],
            peakPlateMilliamps: [750, 'eu-high'],
            outputMilliamps: [250, 'eu-high', 'to 2x450 V; 200 mA at 2x500; 160 mA at 2x550'],
            reservoirMicrofarads: [60, 'eu-high'],
            sourceOhmsPerPlateAt300Volts: [50, 'eu-medium'],
            sourceOhmsPerPlateAt350Volts: [75, 'eu-medium'],
            sourceOhmsPerPlateAt400Volts: [100, 'eu-medium'],
            sourceOhmsPerPlateAt450Volts: [125, 'eu-medium'],
            sourceOhmsPerPlateAt500Volts: [150, 'eu-medium'],
            sourceOhmsPerPlateAt550Volts: [175, 'eu-medium'],
          },
          note: 'Rt = minimum total source resistance in EACH anode lead: secondary half + (turns ratio)^2 x primary + added resistor',
        },
      },
      {
        designations: ['5AR4'],
        ratings: {
          appliesTo: '5AR4 (US)',
          system: 'design-maximum',
          systemNote: null,
          limits: {
            peakInverseVolts: [1700, 'us-medium'],
            peakPlateMilliamps: [825, 'us-medium'],
            transientPlateAmps: [3.7, 'us-medium'],
            outputMilliamps: [250, 'us-medium'],
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
        figures: { dropVolts: [17, 'us-high'], dropMilliampsPerPlate: [225, 'us-high'] },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'CV1377', kind: 'other-number', of: 'GZ34', source: 'alias-table', note: null },
      { number: 'U77', kind: 'other-number', of: 'GZ34', source: 'alias-table', note: null },
    ],
    similar: [
      { number: 'GZ37', source: 'eu-medium', note: null },
      { number: '53KU', source: 'eu-medium', note: null },
      { number: 'CV378', source: 'eu-medium', note: null },
    ],
    notes: [],
  },
  {
    id: '5R4GY',
    family: '5R4',
    role: 'rectifier',
    tubeClass: 'rectifier',
    className: 'full-wave, directly heated',
    base: {
      name: 'octal',
      eia: '5T',
      eiaSource: 'us-high',
      pins: { 2: 'f', 4: 'a', 6: 'a', 8: 'f' },
      pinsSource: 'us-high',
    },
    heaters: [{ volts: [5, 'us-high'], amps: [2, 'us-high'], use: null }],
    variants: [
      {
        designations: ['5R4GY'],
        ratings: {
          appliesTo: '5R4GY',
          system: 'not-stated',
          systemNote: 'Design-centre or absolute, depending on the edition.',
          limits: {
            peakInverseVolts: [2800, 'us-medium'],
            peakPlateMilliamps: [650, 'us-medium'],
            outputMilliamps: [250, 'us-medium'],
            reservoirMicrofarads: [4, 'us-medium'],
          },
          note: 'current and PIV are linked: the higher the PIV, the lower the current (2800 V at 150 mA)',
        },
      },
    ],
    otherSection: null,
    rows: [
      {
        label: 'voltage drop',
        currentsFor: 1,
        connection: 'diode',
        figures: { dropVolts: [67, 'us-high'], dropMilliampsPerPlate: [250, 'us-high'] },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'CV717', kind: 'other-number', of: '5R4GY', source: 'lists-medium', note: null },
      { number: '5R4WGY', kind: 'special-quality', of: '5R4GY', source: 'lists-medium', note: null },
      { number: '5R4WGA', kind: 'special-quality', of: '5R4GY', source: 'lists-medium', note: null },
      { number: '5R4WGB', kind: 'special-quality', of: '5R4GY', source: 'lists-medium', note: null },
    ],
    similar: [],
    notes: ['Y = low-loss base.'],
  },
]
