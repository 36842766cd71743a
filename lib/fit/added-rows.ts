/**
 * Operating rows beyond the handbook files of lib/domain/tube, for fitting and judging the model.
 *
 * Written down before the first fit was run. Each row: voltages as printed, currents
 * in mA, for the number of tubes named. Recalled rows are from memory, how sure the
 * memory is stands beside them; none of "low" sureness was taken. Near doubles of a
 * handbook row (the same currents printed for cathode bias and for fixed bias) were left out.
 */
import type { OperatingRow } from '@/lib/domain/tube/handbook-type'

type Printed = {
  readonly plate?: number
  readonly supply?: number
  readonly screen?: number
  readonly grid?: number
  readonly cathodeOhms?: number
  readonly commonCathodeOhms?: number
  readonly commonScreenOhms?: number
  /** mA, for `currentsFor` tubes. */
  readonly ia: number
  readonly ig2?: number
  /** mA/V, per tube. */
  readonly gm?: number
  /** kΩ, per tube. */
  readonly rp?: number
  readonly mu?: number
  readonly screenGridMu?: number
}

export type AddedRow = {
  readonly typeId: string
  readonly label: string
  readonly connection: OperatingRow['connection']
  readonly currentsFor: 1 | 2
  readonly printed: Printed
  readonly source: string
  readonly sure: 'published' | 'high' | 'medium'
}

const US = 'from memory: US receiving-tube handbooks'
const EU = 'from memory: European valve data handbooks'
const UK = 'from memory: original British sheets of the KT series'

type Connection = OperatingRow['connection']
const row =
  (connection: Connection, currentsFor: 1 | 2) =>
  (typeId: string, label: string, printed: Printed, source: string, sure: AddedRow['sure']): AddedRow => ({
    typeId,
    label,
    connection,
    currentsFor,
    printed,
    source,
    sure,
  })

const single = row('pentode', 1)
const pair = row('pentode', 2)
const strapped = row('triode', 1)
const strappedPair = row('triode', 2)

export const ADDED_ROWS: readonly AddedRow[] = [
  pair('6V6', 'push-pull AB1, 285 V', { plate: 285, screen: 285, grid: -19, ia: 70, ig2: 4 }, US, 'high'),
  strapped(
    '6AQ5',
    'triode-connected A1',
    { plate: 250, grid: -12.5, ia: 49.5, mu: 9.5, rp: 1.97, gm: 4.8 },
    US,
    'high',
  ),

  single(
    '6L6',
    'class A1 single, 300/200 V',
    { plate: 300, screen: 200, grid: -12.5, ia: 48, ig2: 2.5, gm: 5.3, rp: 35 },
    US,
    'high',
  ),
  single(
    '6L6',
    'class A1 single, 300/200 V cathode bias',
    { plate: 300, screen: 200, cathodeOhms: 220, ia: 51, ig2: 3 },
    US,
    'high',
  ),
  pair(
    '6L6',
    'push-pull A1, 250 V',
    { plate: 250, screen: 250, grid: -16, ia: 120, ig2: 10, gm: 5.5, rp: 24.5 },
    US,
    'high',
  ),
  pair(
    '6L6',
    'push-pull A1, 270 V',
    { plate: 270, screen: 270, grid: -17.5, ia: 134, ig2: 11, gm: 5.7, rp: 23.5 },
    US,
    'high',
  ),
  pair('6L6', 'push-pull AB2, 360/225 V', { plate: 360, screen: 225, grid: -18, ia: 78, ig2: 3.5 }, US, 'high'),

  pair(
    'KT66',
    'push-pull AB1, 415/300 V cathode bias',
    { plate: 415, screen: 300, grid: -27, ia: 104, ig2: 5 },
    UK,
    'medium',
  ),

  single(
    'EL34',
    'push-pull AB, 375 V supply, cathode bias (per valve)',
    { supply: 375, commonCathodeOhms: 130, commonScreenOhms: 470, ia: 75, ig2: 11.5 },
    EU,
    'medium',
  ),
  single(
    'EL34',
    'push-pull distributed load, 430 V supply, cathode bias (per valve)',
    { supply: 430, cathodeOhms: 470, commonScreenOhms: 500, ia: 62.5, ig2: 10 },
    EU,
    'medium',
  ),

  single(
    'EL84',
    'class A single, 7 k load',
    { plate: 250, screen: 250, grid: -8.4, ia: 36, ig2: 4.1, gm: 10, rp: 40 },
    EU,
    'medium',
  ),
  single(
    'EL84',
    'class A single, 210 V screen',
    { plate: 250, screen: 210, grid: -6.4, ia: 36, ig2: 3.9, gm: 10.4, rp: 40 },
    EU,
    'medium',
  ),
  pair(
    'EL84',
    'push-pull AB1, 300 V cathode bias',
    { plate: 300, screen: 300, commonCathodeOhms: 130, ia: 72, ig2: 8 },
    EU,
    'high',
  ),
  pair('EL84', 'push-pull B, 250 V fixed', { plate: 250, screen: 250, grid: -11.6, ia: 20, ig2: 2.2 }, EU, 'high'),
  strapped('EL84', 'triode-connected single', { plate: 250, cathodeOhms: 270, ia: 34 }, EU, 'high'),

  pair(
    'KT88',
    'push-pull AB1 fixed, 552/300 V',
    { plate: 552, screen: 300, grid: -34, ia: 120, ig2: 3.4 },
    UK,
    'medium',
  ),
  strappedPair('KT88', 'push-pull distributed load fixed, 453 V', { plate: 453, grid: -59, ia: 100 }, UK, 'medium'),
  strappedPair('KT88', 'push-pull distributed load fixed, 552 V', { plate: 552, grid: -75, ia: 100 }, UK, 'medium'),
  strappedPair(
    'KT88',
    'push-pull distributed load, 328 V cathode bias',
    { plate: 328, cathodeOhms: 400, ia: 174 },
    UK,
    'medium',
  ),

  strappedPair(
    'KT88',
    'triode-connected push-pull AB1, 349 V cathode bias',
    { plate: 349, cathodeOhms: 525, ia: 152 },
    UK,
    'medium',
  ),
  strappedPair(
    'KT88',
    'triode-connected push-pull AB1, 422 V cathode bias',
    { plate: 422, cathodeOhms: 560, ia: 188 },
    UK,
    'medium',
  ),

  pair('7591', 'push-pull AB1, 350 V', { plate: 350, screen: 350, grid: -15.5, ia: 92, ig2: 13 }, US, 'medium'),

  single(
    '6973',
    'class A1 characteristic, 250 V',
    { plate: 250, screen: 250, grid: -15, ia: 46, ig2: 3.5, gm: 4.8, rp: 73 },
    US,
    'medium',
  ),
  pair('6973', 'push-pull AB1, 350/280 V', { plate: 350, screen: 280, grid: -22, ia: 58, ig2: 3.5 }, US, 'medium'),

  single(
    '6K6GT',
    'class A1 single, 100 V',
    { plate: 100, screen: 100, grid: -7, ia: 9, ig2: 1.6, gm: 1.5, rp: 104 },
    US,
    'high',
  ),
  single(
    '6K6GT',
    'class A1 single, 315/250 V',
    { plate: 315, screen: 250, grid: -21, ia: 25.5, ig2: 4, gm: 2.1, rp: 110 },
    US,
    'high',
  ),
  strapped('6K6GT', 'triode-connected A1', { plate: 250, grid: -18, ia: 37.5, mu: 6.8, rp: 2.5, gm: 2.7 }, US, 'high'),

  single(
    '6F6',
    'class A1 single, 285 V',
    { plate: 285, screen: 285, grid: -20, ia: 38, ig2: 7, gm: 2.55, rp: 78 },
    US,
    'high',
  ),
  pair('6F6', 'push-pull AB2 fixed, 375/250 V', { plate: 375, screen: 250, grid: -26, ia: 34, ig2: 5 }, US, 'high'),
  pair(
    '6F6',
    'push-pull AB2, 375/250 V cathode bias',
    { plate: 375, screen: 250, commonCathodeOhms: 340, ia: 54, ig2: 8 },
    US,
    'high',
  ),
  strappedPair('6F6', 'triode-connected push-pull AB2 fixed, 350 V', { plate: 350, grid: -38, ia: 45 }, US, 'medium'),
  strappedPair(
    '6F6',
    'triode-connected push-pull AB2, 350 V cathode bias',
    { plate: 350, commonCathodeOhms: 730, ia: 50 },
    US,
    'medium',
  ),

  single(
    'ECL82',
    'pentode, 100 V',
    { plate: 100, screen: 100, grid: -6, ia: 26, ig2: 5, gm: 6.8, rp: 15, screenGridMu: 10 },
    EU,
    'medium',
  ),
  single(
    'ECL82',
    'pentode, 200/170 V',
    { plate: 200, screen: 170, grid: -12.5, ia: 35, ig2: 6.5, gm: 6.8, rp: 20.5, screenGridMu: 9.5 },
    EU,
    'medium',
  ),

  strapped('45', 'class A1, 250 V', { plate: 250, grid: -50, ia: 34, mu: 3.5, rp: 1.61, gm: 2.175 }, US, 'high'),
  strapped('300B', '200 V, -42 V', { plate: 200, grid: -42, ia: 30 }, US, 'medium'),
  strapped('300B', '350 V, -74 V', { plate: 350, grid: -74, ia: 60 }, US, 'medium'),
  strapped('300B', '350 V, -71 V', { plate: 350, grid: -71, ia: 80 }, US, 'medium'),
  strapped('300B', '400 V, -87 V', { plate: 400, grid: -87, ia: 60 }, US, 'medium'),
  strapped('300B', '450 V, -97 V', { plate: 450, grid: -97, ia: 80 }, US, 'medium'),
  strapped('300B', '450 V, -104 V', { plate: 450, grid: -104, ia: 40 }, US, 'medium'),
  strapped(
    '300B',
    '425 V, -93 V',
    { plate: 425, grid: -93, ia: 65 },
    'the data sheet of January 1950, as quoted in an amplifier kit’s user manual',
    'published',
  ),

  strapped('12AT7', '100 V, -1 V', { plate: 100, grid: -1, ia: 3, gm: 3.75, mu: 62 }, EU, 'medium'),
  strapped('12AT7', '170 V, -1 V', { plate: 170, grid: -1, ia: 8.5, gm: 5.9, mu: 66 }, EU, 'medium'),
  strapped('12AT7', '200 V, -1 V', { plate: 200, grid: -1, ia: 11.5, gm: 6.7, mu: 70 }, EU, 'medium'),
]
