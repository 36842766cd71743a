/**
 * How the demo stock came into the drawers: deliveries, boxes from estates,
 * trade-ins, pulls. Old stock of one box is closely alike; current production
 * spreads; worn tubes are weak. Prices follow rarity and condition (invented,
 * in the range of the trade).
 */
import type { TubeCondition } from '@/lib/domain/stock/tube'
import type { Who } from '@/seed/shop/people'
import type { BookKey } from './book-values'
import type { Scatter } from './grow-tube'

export type Lot = Scatter & {
  readonly designation: string
  readonly book: BookKey
  /** Working days before the day of seeding. */
  readonly daysAgo: number
  readonly by: Who
  readonly tested: number
  readonly untested: number
  readonly condition: TubeCondition
  readonly acquired: string
  readonly construction: string
  readonly location: string
  /** Dollars; null when nobody knows. */
  readonly cost: number | null
  readonly price: number
}

type Source = Pick<Lot, 'condition' | 'strength' | 'spread'>

const NEW: Source = { condition: 'current-production', strength: 0.98, spread: 0.09 }
const BOXED: Source = { condition: 'new-old-stock-boxed', strength: 1.03, spread: 0.04 }
/** Bought and kept together as a set. */
const SET: Source = { condition: 'used-tested', strength: 0.88, spread: 0.015 }
const LOOSE: Source = { condition: 'new-old-stock-loose', strength: 1, spread: 0.07 }
const USED: Source = { condition: 'used-tested', strength: 0.87, spread: 0.09 }
const PULL: Source = { condition: 'pull', strength: 0.82, spread: 0.14 }
const FOUND: Source = { condition: 'as-found', strength: 0.9, spread: 0.1 }

type Row = readonly [daysAgo: number, by: Who, tested: number, untested: number]
type Money = readonly [cost: number | null, price: number]

function lot(
  book: BookKey,
  source: Source,
  [daysAgo, by, tested, untested]: Row,
  [acquired, construction, location]: readonly [string, string, string],
  [cost, price]: Money,
): Lot {
  const [designation] = book.split(' at ')
  return {
    ...source,
    designation: designation ?? book,
    book,
    daysAgo,
    by,
    tested,
    untested,
    acquired,
    construction,
    location,
    cost,
    price,
  }
}

const ORDER = 'regular order'
const ESTATE = 'estate of a radio repairman, box 3'

export const LOTS: readonly Lot[] = [
  lot('6V6GT', NEW, [72, 'tess', 6, 0], [ORDER, 'black glass base, gray plates', 'B1'], [14.5, 26]),
  lot('6V6GT', BOXED, [70, 'tess', 4, 0], [ESTATE, 'black plates, two D getters, brown base', 'B2'], [38, 82]),
  lot(
    '6V6GT',
    USED,
    [41, 'anselm', 3, 0],
    ['traded in with a parts chassis', 'black plates, one top getter', 'B2'],
    [9, 34],
  ),
  lot('6L6GC', NEW, [71, 'tess', 8, 0], [ORDER, 'gray plates, twin side getters', 'B3'], [19, 34]),
  lot('6L6GC at 400 V', NEW, [27, 'tess', 6, 0], [ORDER, 'gray plates, twin side getters', 'B3'], [19.5, 34]),
  lot('6L6GC at 400 V', BOXED, [70, 'tess', 4, 0], [ESTATE, 'black plates, foil getters, coin base', 'B4'], [62, 145]),
  lot(
    '6L6GC',
    USED,
    [44, 'anselm', 4, 0],
    ['pulled and tested, jukebox service stock', 'black plates, two halo getters', 'B4'],
    [16, 58],
  ),
  lot('5881', LOOSE, [70, 'anselm', 4, 0], [ESTATE, 'black plates, brown low-loss base, three micas', 'B5'], [28, 68]),
  lot('EL34', NEW, [73, 'tess', 8, 0], [ORDER, 'gray plates, twin halo getters', 'C1'], [18.5, 32]),
  lot(
    'EL34',
    { ...NEW, spread: 0.065 },
    [36, 'tess', 12, 0],
    [ORDER, 'gray plates, twin halo getters', 'C1'],
    [19, 33],
  ),
  lot(
    'EL34',
    SET,
    [52, 'tess', 4, 0],
    ['trade-in, a set of four', 'dark gray plates, one halo getter, etched code', 'C2'],
    [40, 95],
  ),
  lot('EL84', NEW, [68, 'anselm', 8, 0], [ORDER, 'ribbed gray plates, halo getter', 'C3'], [11, 22]),
  lot(
    '6BQ5',
    BOXED,
    [346, 'tess', 5, 0],
    ['closing sale of a television shop', 'smooth plates, halo getter', 'C4'],
    [12, 42],
  ),
  lot('EL84', PULL, [31, 'anselm', 2, 2], ['pulled from a console radio', 'ribbed plates, etched code', 'C4'], [4, 19]),
  lot('KT88', { ...NEW, spread: 0.06 }, [69, 'tess', 6, 0], [ORDER, 'gray plates, four getters', 'C5'], [41, 68]),
  lot(
    'KT88',
    USED,
    [48, 'tess', 2, 0],
    ['left by a customer in part payment', 'gray plates, two large side getters', 'C6'],
    [90, 210],
  ),
  lot('12AX7', NEW, [74, 'anselm', 8, 0], [ORDER, 'short plates, halo getter', 'A1'], [10.5, 21]),
  lot(
    '12AX7',
    BOXED,
    [345, 'tess', 4, 0],
    ['closing sale of a television shop', 'long gray plates, square getter', 'A2'],
    [34, 98],
  ),
  lot('12AX7', USED, [39, 'anselm', 5, 0], ['radio club sale, cigar box', 'long plates, halo getter', 'A2'], [6, 38]),
  lot(
    '12AX7',
    FOUND,
    [39, 'anselm', 0, 4],
    ['radio club sale, cigar box', 'mixed, not looked at yet', 'In tray'],
    [2, 15],
  ),
  lot('12AT7', LOOSE, [70, 'anselm', 5, 0], [ESTATE, 'black plates, three micas', 'A3'], [5, 19]),
  lot('12AT7', NEW, [66, 'anselm', 3, 0], [ORDER, 'short plates, halo getter', 'A3'], [10.5, 20]),
  lot('12AU7', BOXED, [70, 'anselm', 5, 0], [ESTATE, 'clear top, side getter', 'A4'], [8, 29]),
  lot(
    '12AY7',
    LOOSE,
    [343, 'tess', 3, 0],
    ['closing sale of a television shop', 'black plates, D getter', 'A4'],
    [18, 55],
  ),
  lot('EF86', NEW, [64, 'anselm', 3, 0], [ORDER, 'mesh shield, halo getter', 'A5'], [21, 37]),
  lot('EF86', LOOSE, [58, 'tess', 2, 1], ['organ repair estate', 'smooth shield, D getter', 'A5'], [30, 74]),
  lot('5Y3GT', LOOSE, [70, 'anselm', 4, 2], [ESTATE, 'black plates, bottom getter', 'D1'], [8, 29]),
  lot('5Y3GT', USED, [36, 'anselm', 2, 0], ['radio club sale', 'gray plates, hanging filaments', 'D1'], [3, 16]),
  lot('5AR4', NEW, [67, 'anselm', 4, 0], [ORDER, 'gray plates, four notches', 'D2'], [17, 33]),
  lot('5AR4', USED, [43, 'tess', 2, 0], ['trade-in', 'metal collar base', 'D2'], [45, 120]),
  lot('5U4GB', LOOSE, [70, 'anselm', 3, 2], [ESTATE, 'black plates, top getter', 'D3'], [9, 32]),
  lot(
    '6L6GC',
    FOUND,
    [5, 'milo', 0, 4],
    ['brought in over the counter, no boxes', 'mixed constructions, not looked at yet', 'In tray'],
    [null, 20],
  ),
  lot('6L6-QH25', NEW, [4, 'tess', 4, 0], ['sample order', 'gray plates, one halo getter', 'B3'], [15, 29]),
]
