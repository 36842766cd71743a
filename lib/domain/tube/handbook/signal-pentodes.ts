/**
 * Small-signal pentodes.
 *
 * Each figure is [value, source, remark]; the unit is in the field's name, sources
 * are spelled out in handbook-sources.ts. Currents of a row are zero-signal unless named otherwise.
 */
import type { HandbookType } from '../handbook-type'

export const SIGNAL_PENTODES: readonly HandbookType[] = [
  {
    id: 'EF86',
    family: 'EF86',
    role: 'small-signal',
    tubeClass: 'signal-pentode',
    className: 'pentode, low noise',
    base: {
      name: 'noval',
      eia: '9CQ',
      eiaSource: 'eu-high',
      pins: { 1: 'g2', 2: 'shield', 3: 'k', 4: 'h', 5: 'h', 6: 'a', 7: 'shield', 8: 'g3', 9: 'g1' },
      pinsSource: 'eu-high',
    },
    heaters: [{ volts: [6.3, 'encyclopaedia-ef86'], amps: [0.2, 'encyclopaedia-ef86'], use: null }],
    variants: [
      {
        designations: ['EF86', '6267'],
        ratings: {
          appliesTo: 'EF86, 6267',
          system: 'design-centre',
          systemNote: null,
          limits: {
            plateVolts: [300, 'eu-high'],
            screenVolts: [200, 'encyclopaedia-ef86'],
            plateWatts: [1, 'encyclopaedia-ef86'],
            screenWatts: [0.2, 'eu-high'],
            cathodeMilliamps: [6, 'encyclopaedia-ef86'],
            gridLeakMegohms: [3, 'eu-medium', 'pa > 0.2 W; 10 M below; 22 M grid-current bias'],
            heaterCathodeVolts: [50, 'eu-medium', '100 V with heater negative'],
          },
          note: null,
        },
      },
    ],
    otherSection: null,
    rows: [
      {
        label: '250 V',
        currentsFor: 1,
        connection: 'pentode',
        figures: {
          plateVolts: [250, 'encyclopaedia-ef86'],
          screenVolts: [140, 'encyclopaedia-ef86'],
          suppressorVolts: [0, 'encyclopaedia-ef86'],
          gridVolts: [-2.2, 'encyclopaedia-ef86', 'other European sheets: -2.0'],
          plateMilliamps: [3, 'encyclopaedia-ef86'],
          screenMilliamps: [0.6, 'encyclopaedia-ef86'],
          gmMilliampsPerVolt: [2.2, 'encyclopaedia-ef86', 'other books 2.0 at Vg1 -2.0; give both'],
          plateResistanceKilohms: [2500, 'eu-high'],
          screenGridMu: [38, 'eu-high'],
        },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'CV2901', kind: 'other-number', of: 'EF86', source: 'lists-medium', note: null },
      { number: 'CV4085', kind: 'special-quality', of: 'EF86', source: 'lists-medium', note: null },
      { number: 'M8195', kind: 'special-quality', of: 'EF86', source: 'lists-medium', note: null },
      { number: 'Z729', kind: 'other-number', of: 'EF86', source: 'lists-medium', note: null },
      { number: 'EF806S', kind: 'special-quality', of: 'EF86', source: 'lists-medium', note: null },
      { number: '6Zh32P', kind: 'other-number', of: 'EF86', source: 'encyclopaedia-ef86', note: null },
      { number: '6Ж32П', kind: 'other-number', of: 'EF86', source: 'encyclopaedia-ef86', note: null },
    ],
    similar: [
      { number: 'EF37A', source: 'encyclopaedia-ef86', note: null },
      { number: 'EF40', source: 'encyclopaedia-ef86', note: null },
    ],
    notes: ["Basing 'EIA 9CQ (or 9BJ)' on a published page."],
  },
  {
    id: '6AU6',
    family: '6AU6',
    role: 'small-signal',
    tubeClass: 'signal-pentode',
    className: 'pentode, sharp cut-off',
    base: {
      name: 'miniature-7',
      eia: '7BK',
      eiaSource: 'us-high',
      pins: { 1: 'g1', 2: 'g3 + shield', 3: 'h', 4: 'h', 5: 'a', 6: 'g2', 7: 'k' },
      pinsSource: 'us-high',
    },
    heaters: [{ volts: [6.3, 'us-high'], amps: [0.3, 'us-high'], use: null }],
    variants: [
      {
        designations: ['6AU6'],
        ratings: {
          appliesTo: '6AU6',
          system: 'design-centre',
          systemNote: null,
          limits: {
            plateVolts: [300, 'us-high'],
            screenVolts: [150, 'us-high', 'supply up to 300 V, derated'],
            plateWatts: [3, 'us-high'],
            screenWatts: [0.65, 'us-high'],
            heaterCathodeVolts: [90, 'us-medium'],
          },
          note: null,
        },
      },
      {
        designations: ['6AU6A'],
        ratings: {
          appliesTo: '6AU6A',
          system: 'design-maximum',
          systemNote: null,
          limits: {
            plateVolts: [330, 'us-medium'],
            plateWatts: [3.5, 'us-medium'],
            screenWatts: [0.75, 'us-medium'],
            heaterCathodeVolts: [200, 'us-medium'],
          },
          note: null,
        },
      },
    ],
    otherSection: null,
    rows: [
      {
        label: '250/150 V',
        currentsFor: 1,
        connection: 'pentode',
        figures: {
          plateVolts: [250, 'us-high'],
          screenVolts: [150, 'us-high'],
          cathodeOhms: [68, 'us-high'],
          plateMilliamps: [10.6, 'us-high', '10.8 in early books (-1 V)'],
          screenMilliamps: [4.3, 'us-high'],
          gmMilliampsPerVolt: [5.2, 'us-high'],
          plateResistanceKilohms: [1000, 'us-high'],
        },
        note: null,
      },
      {
        label: '100/100 V',
        currentsFor: 1,
        connection: 'pentode',
        figures: {
          plateVolts: [100, 'us-medium'],
          screenVolts: [100, 'us-medium'],
          cathodeOhms: [150, 'us-medium'],
          plateMilliamps: [5, 'us-medium'],
          screenMilliamps: [2.1, 'us-medium'],
          gmMilliampsPerVolt: [3.9, 'us-medium'],
          plateResistanceKilohms: [500, 'us-medium'],
        },
        note: null,
      },
    ],
    otherNumbers: [
      { number: 'EF94', kind: 'other-number', of: '6AU6', source: 'lists-medium', note: null },
      { number: 'CV2524', kind: 'other-number', of: '6AU6', source: 'lists-medium', note: null },
      { number: '6136', kind: 'special-quality', of: '6AU6', source: 'lists-medium', note: null },
      { number: '6AU6WA', kind: 'special-quality', of: '6AU6', source: 'lists-medium', note: null },
      { number: 'CV4023', kind: 'special-quality', of: '6AU6', source: 'lists-low', note: null },
    ],
    similar: [],
    notes: [],
  },
]
