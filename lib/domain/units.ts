/**
 * Physical quantities of the core, SI only, one brand per unit.
 *
 * The only casts to a unit are in the constructors below. They refuse NaN and
 * infinity, so a quantity that exists is a finite number.
 */
declare const unit: unique symbol

export type Quantity<Unit extends string> = number & { readonly [unit]: Unit }

export type Volts = Quantity<'V'>
export type Amps = Quantity<'A'>
export type Ohms = Quantity<'ohm'>
export type Watts = Quantity<'W'>
export type Siemens = Quantity<'S'>
export type Seconds = Quantity<'s'>
/** A share of one, dimensionless: 0.7 is 70 %. */
export type Ratio = Quantity<'1'>

function finite<Unit extends string>(value: number, symbol: Unit): Quantity<Unit> {
  if (!Number.isFinite(value)) throw new Error(`A quantity in ${symbol} must be finite, got ${value}`)
  return value as Quantity<Unit>
}

export const volts = (value: number): Volts => finite(value, 'V')
export const amps = (value: number): Amps => finite(value, 'A')
export const ohms = (value: number): Ohms => finite(value, 'ohm')
export const watts = (value: number): Watts => finite(value, 'W')
export const siemens = (value: number): Siemens => finite(value, 'S')
export const seconds = (value: number): Seconds => finite(value, 's')
export const ratio = (value: number): Ratio => finite(value, '1')
