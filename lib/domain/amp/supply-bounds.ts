/** Bounds of the boxes of the supply sheet, in the unit shown: a figure outside them is a slip of the pen. */
import type { SupplyFacts } from './supply-facts'

export type SupplyNumber = {
  [Key in keyof SupplyFacts]: SupplyFacts[Key] extends number | null ? Key : never
}[keyof SupplyFacts]

export type SupplyBound = {
  readonly label: string
  readonly unit: string
  readonly min: number
  readonly max: number
  /** Of the unit shown, in the unit of the field's name. */
  readonly scale?: number
}

export const SUPPLY_BOUNDS: Readonly<Record<SupplyNumber, SupplyBound>> = {
  openSupplyVolts: { label: 'Supply with nothing drawn', unit: 'V', min: 20, max: 2000 },
  sourceOhms: { label: 'Source resistance', unit: 'Ω', min: 0, max: 5000 },
  reservoirMicrofarads: { label: 'Reservoir', unit: 'µF', min: 0.1, max: 5000 },
  ultralinearTapPercent: { label: 'Screen tap', unit: '%', min: 0, max: 100 },
  screenDropperOhms: { label: 'Screen dropper', unit: 'Ω', min: 0, max: 100_000 },
  gridSupplyVolts: { label: 'Grid supply now', unit: 'V', min: -300, max: 0 },
  gridColdestVolts: { label: 'Grid supply, coldest', unit: 'V', min: -300, max: 0 },
  gridHottestVolts: { label: 'Grid supply, hottest', unit: 'V', min: -300, max: 0 },
  gridLeakOhms: { label: 'Grid leak', unit: 'kΩ', min: 1, max: 10_000, scale: 1000 },
  heaterWindingVolts: { label: 'Heater winding', unit: 'V', min: 1, max: 60 },
  heaterWindingAmps: { label: 'Heater winding, most', unit: 'A', min: 0.1, max: 60 },
  dischargeOhms: { label: 'Discharge resistor', unit: 'kΩ', min: 0.1, max: 10_000, scale: 1000 },
}

export const SUPPLY_NUMBERS = Object.keys(SUPPLY_BOUNDS) as readonly SupplyNumber[]
