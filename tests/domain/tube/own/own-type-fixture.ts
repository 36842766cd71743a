/** An invented new-production output tube, and what a test changes about it. */
import type { OwnRow, OwnTypeEntry } from '@/lib/domain/tube/own/own-type-entry'

export const ownRow = (over: Partial<OwnRow> = {}): OwnRow => ({
  plateVolts: 350,
  screenVolts: 250,
  gridVolts: -17,
  plateMilliamps: 60,
  screenMilliamps: 3.2,
  gmMilliampsPerVolt: 5.4,
  plateResistanceKilohms: null,
  mu: null,
  ...over,
})

export const ownEntry = (over: Partial<OwnTypeEntry> = {}): OwnTypeEntry => ({
  designation: '6L6-QH25',
  otherNumbers: ['QH25'],
  family: '6L6',
  tubeClass: 'beam-tetrode',
  base: 'octal',
  basing: '7AC',
  pins: { 1: 'nc', 2: 'h', 3: 'a', 4: 'g2', 5: 'g1', 7: 'h', 8: 'k + beam plates' },
  heaterVolts: 6.3,
  heaterAmps: 0.9,
  system: 'design-maximum',
  limits: { plateVolts: 450, screenVolts: 400, plateWatts: 25, screenWatts: 4 },
  rows: [ownRow()],
  drop: null,
  curves: { typeId: '6L6', degree: 'similar' },
  sourceText: 'leaflet of the second issue',
  note: '',
  ...over,
})

export const triodeEntry = (over: Partial<OwnTypeEntry> = {}): OwnTypeEntry =>
  ownEntry({
    designation: '12AX7-QH',
    otherNumbers: [],
    family: '12AX7',
    tubeClass: 'twin-triode',
    base: 'noval',
    basing: '9A',
    pins: null,
    heaterVolts: 12.6,
    heaterAmps: 0.15,
    limits: { plateVolts: 300, plateWatts: 1 },
    rows: [
      ownRow({
        plateVolts: 250,
        screenVolts: null,
        gridVolts: -2,
        plateMilliamps: 1.1,
        screenMilliamps: null,
        gmMilliampsPerVolt: 1.5,
      }),
    ],
    curves: { typeId: '12AX7', degree: 'similar' },
    ...over,
  })

export const rectifierEntry = (over: Partial<OwnTypeEntry> = {}): OwnTypeEntry =>
  ownEntry({
    designation: '5U-QH',
    otherNumbers: [],
    family: '',
    tubeClass: 'rectifier',
    basing: '5T',
    pins: null,
    heaterVolts: 5,
    heaterAmps: 2,
    limits: { peakInverseVolts: 1400, outputMilliamps: 200 },
    rows: [],
    drop: { dropVolts: 40, milliamps: 200 },
    curves: null,
    ...over,
  })
